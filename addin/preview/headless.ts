import { LocaleType, LogLevel, Univer, type IWorkbookData } from "@univerjs/core";
import { FUniver } from "@univerjs/core/lib/facade";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import "@univerjs/engine-formula/lib/facade";
import "@univerjs/sheets/lib/facade";
import "@univerjs/sheets-formula/lib/facade";
import "@univerjs/sheets-numfmt/lib/facade";
import "@univerjs/sheets-data-validation/lib/facade";
import "@univerjs/sheets-conditional-formatting/lib/facade";
import "@univerjs/sheets-note/lib/facade";
import type { AnyDefinition } from "../../functions/define";
import { readNetworkBy } from "../network/load";
import { readNetworkFromDisk } from "../network/readFromDisk";
import { hints } from "./bind";
import { anyWord } from "./patches";
import { register, UNTITLED, type Engine } from "./engine";

/** An engine without a page, with one workbook: an empty one, or the one that is given. */
export const startHeadless = (catalogue: readonly AnyDefinition[], workbook: Partial<IWorkbookData> = {}): Engine => {
  readNetworkBy(readNetworkFromDisk);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  });
  univer.registerPlugin(UniverDocsPlugin);
  univer.registerPlugin(UniverFormulaEnginePlugin);
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin, { description: hints(catalogue) });
  univer.registerPlugin(UniverDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  univer.registerPlugin(UniverSheetsNotePlugin);
  const api = FUniver.newAPI(univer);
  anyWord(univer.__getInjector());
  api.createWorkbook({ name: UNTITLED, ...workbook });
  return register(univer, api, catalogue);
};
