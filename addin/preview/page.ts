import { LocaleType, LogLevel, Univer, merge, type PluginCtor } from "@univerjs/core";
import { FUniver } from "@univerjs/core/lib/facade";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import rules from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import core from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import validation from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsDrawingPreset } from "@univerjs/preset-sheets-drawing";
import drawing from "@univerjs/preset-sheets-drawing/locales/en-US";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import notes from "@univerjs/preset-sheets-note/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sorting from "@univerjs/preset-sheets-sort/locales/en-US";
import "@univerjs/preset-sheets-sort/lib/index.css";
import type { AnyDefinition } from "../../functions/define";
import { hints } from "./bind";
import { copySpills } from "./copySpills";
import { drawFigures } from "./drawnFigures";
import { register, UNTITLED, type Engine } from "./engine";
import { enterAsTyped } from "./enterKey";
import { drawNoGoneSheet } from "./goneSheets";
import { readAsTyped } from "./typed";

/** An engine that draws its spreadsheet into an element of the page, with one empty workbook. */
export const startPage = (container: HTMLElement, dark: boolean, catalogue: readonly AnyDefinition[]): Engine => {
  drawNoGoneSheet();
  const join = merge as (...parts: object[]) => typeof core;
  const words = join({}, core, validation, rules, notes, drawing, sorting);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: words },
    logLevel: LogLevel.ERROR,
    darkMode: dark,
  });
  const presets = [
    UniverSheetsCorePreset({
      container,
      ribbonType: "simple",
      formula: { description: hints(catalogue) },
    }),
    UniverSheetsDataValidationPreset({ showEditOnDropdown: false }),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsNotePreset(),
    UniverSheetsDrawingPreset(),
    UniverSheetsSortPreset(),
  ];
  // Two presets may bring the same plugin: the later one's settings count.
  const plugins = new Map<string, readonly [PluginCtor, object | undefined]>();
  for (const plugin of presets.flatMap((preset) => preset.plugins)) {
    const [kind, settings]: readonly [PluginCtor, object?] = Array.isArray(plugin)
      ? [plugin[0], plugin[1] as object | undefined]
      : [plugin];
    plugins.delete(kind.pluginName);
    plugins.set(kind.pluginName, [kind, settings]);
  }
  for (const [kind, settings] of plugins.values()) univer.registerPlugin(kind, settings);
  const api = FUniver.newAPI(univer);
  api.createWorkbook({ name: UNTITLED });
  const engine = register(univer, api, catalogue);
  readAsTyped(engine);
  drawFigures(engine);
  copySpills(engine);
  enterAsTyped(engine);
  return engine;
};
