import { BooleanNumber, type ICellData, type IStyleData, type IWorksheetData } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/lib/facade";
import { WorkbookError } from "../../taskpane/workbook";
import type { FileCell, FileSheet, ReadFile } from "../file/book";
import { readCsv } from "../file/csv";
import type { Form } from "../../taskpane/text/form";
import type { Engine } from "./engine";
import { placeNames, placeSheet } from "./insert";
import { freeName } from "../freeName";
import { contentOf, FONT_SIZE, LINE, pixelsOfWidth, rangeOf, styleOf } from "./sheetData";

const PIXELS = 4 / 3; // a point

/** Rows and columns below and right of a file's own, to go on working in. */
const SPARE = { rows: 200, columns: 10 };

const cellData = (
  { value, formula, format, look }: FileCell,
  own: (formula: string) => string,
): ICellData | undefined => {
  const style: IStyleData = {
    ...(look ? styleOf(look) : {}),
    ...(format === undefined ? {} : { n: { pattern: format } }),
  };
  const content =
    formula !== undefined
      ? { f: own(formula) }
      : value === null
        ? {}
        : typeof value === "object"
          ? contentOf(value.error)
          : contentOf(value, true);
  const data = { ...content, ...(Object.keys(style).length > 0 ? { s: style } : {}) };
  return Object.keys(data).length > 0 ? data : undefined;
};

const dataOf = (sheet: FileSheet, own: (formula: string) => string): Partial<IWorksheetData> => ({
  rowCount: sheet.cells.length + SPARE.rows,
  columnCount: Math.max(sheet.widths.length, ...sheet.cells.map((row) => row.length), 10) + SPARE.columns,
  hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
  defaultStyle: { fs: FONT_SIZE },
  defaultRowHeight: LINE,
  cellData: Object.fromEntries(
    sheet.cells.map((row, i) => [
      i,
      Object.fromEntries(
        row.flatMap((cell, j) => {
          const data = cellData(cell, own);
          return data ? [[j, data] as const] : [];
        }),
      ),
    ]),
  ),
  columnData: Object.fromEntries(
    sheet.widths.flatMap((width, i) => (width === undefined ? [] : [[i, { w: pixelsOfWidth(width) }] as const])),
  ),
  rowData: Object.fromEntries(
    sheet.heights.map(({ row, points }) => [row - 1, { h: Math.round(points * PIXELS), ia: BooleanNumber.FALSE }]),
  ),
  mergeData: sheet.merges.map(rangeOf),
  freeze: {
    startRow: sheet.freeze.rows > 0 ? sheet.freeze.rows : -1,
    startColumn: sheet.freeze.columns > 0 ? sheet.freeze.columns : -1,
    ySplit: sheet.freeze.rows,
    xSplit: sheet.freeze.columns,
  },
});

/** The sheets of a keeper's own file. A WorkbookError says what is wrong with it. */
export const readFile = async (name: string, bytes: Uint8Array, said?: Partial<Form>): Promise<ReadFile> => {
  if (/\.csv$/i.test(name)) return readCsv(name, bytes, said);
  if (!/\.xlsx$/i.test(name)) throw new WorkbookError(`"${name}" is neither .xlsx nor CSV. Nothing was changed.`);
  const { readXlsx } = await import("../file/read");
  try {
    return await readXlsx(bytes);
  } catch {
    throw new WorkbookError(
      `"${name}" can't be read as an .xlsx file. Open it in its own program, save it anew as .xlsx, and try again. Nothing was changed.`,
    );
  }
};

/** Puts sheets in the place of all that are there. */
export const replaceSheets = (engine: Engine, workbook: FWorkbook, sheets: readonly FileSheet[]): void => {
  const old = workbook.getSheets();
  // The old ones step aside first, so that the file's sheets keep their names.
  const taken = [...old, ...sheets].map((one) => ("name" in one ? one.name : one.getSheetName()));
  for (const sheet of old) {
    const aside = freeName("Old", taken);
    taken.push(aside);
    sheet.setName(aside);
  }
  for (const name of workbook.getDefinedNames()) name.delete();
  const owns = sheets.map(({ name, names }) => placeNames(workbook, name, names));
  sheets.forEach((sheet, i) => {
    const own = owns[i] ?? ((formula: string) => formula);
    placeSheet(engine, workbook, sheet.name, dataOf(sheet, own), sheet);
  });
  for (const sheet of old) if (!workbook.deleteSheet(sheet)) throw new Error("a sheet that was open stays");
  const first = sheets.find(({ hidden }) => !hidden) ?? sheets[0];
  const shown = first && workbook.getSheetByName(first.name);
  if (shown) workbook.setActiveSheet(shown);
  // Sheets that speak of one another came one by one: everything is worked out once more.
  engine.api.getFormula().executeCalculation();
};
