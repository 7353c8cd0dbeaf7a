import { extractPureTextFromCell } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "./engine";

/**
 * Copies what formulas spill as plain text too. The engine writes there what its cells hold, and a spilled cell holds
 * nothing; what it hands to another program as a table, and to itself, is whole.
 */
export const copySpills = ({ api, univer }: Engine): void => {
  const injector = univer.__getInjector();
  const clipboard = injector.get(ISheetClipboardService);
  const model = injector.get(FormulaDataModel);
  const generate = clipboard.generateCopyContent.bind(clipboard);
  clipboard.generateCopyContent = (unit, id, range, options) => {
    const content = generate(unit, id, range, options);
    const spilled = model.getArrayFormulaCellData()[unit]?.[id];
    const sheet = api.getActiveWorkbook()?.getSheetBySheetId(id)?.getSheet();
    if (!content || !spilled || !sheet) return content;
    const { rows, cols } = content.discreteRange;
    if (!rows.some((row) => cols.some((column) => spilled[row]?.[column]))) return content;
    const text = (row: number, column: number): string => {
      const cell = sheet.getCell(row, column);
      return cell ? extractPureTextFromCell(cell) : "";
    };
    return { ...content, plain: rows.map((row) => cols.map((column) => text(row, column)).join("\t")).join("\n") };
  };
};
