import { BooleanNumber, type ICellData, type IStyleData, type IWorksheetData } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/lib/facade";
import { WorkbookError } from "../../taskpane/workbook";
import { filledIn, type Book, type FileCell, type FileSheet, type ReadFile } from "../file/book";
import { readCsv } from "../file/csv";
import type { Form } from "../../taskpane/text/form";
import type { Engine } from "./engine";
import { clearedFor } from "./clearedFor";
import { ROOM } from "./room";
import { placeNames, placeSheet } from "./insert";
import { contentOf, FONT_SIZE, LINE, pixelsOfWidth, rangeOf, styleOf } from "./sheetData";

const PIXELS = 4 / 3; // a point

const cellData = (
  { value, formula, format, look, link }: FileCell,
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
  const data = {
    ...content,
    ...(Object.keys(style).length > 0 ? { s: style } : {}),
    ...(link === undefined ? {} : { custom: { link } }),
  };
  return Object.keys(data).length > 0 ? data : undefined;
};

/** What is kept of rows or columns, with those that are not shown marked. */
const joined = <T extends object>(
  measures: readonly (readonly [number, T])[],
  hidden: readonly number[] = [],
): Record<number, T & { hd?: BooleanNumber }> => {
  const data: Record<number, T & { hd?: BooleanNumber }> = Object.fromEntries(measures);
  for (const one of hidden) data[one - 1] = { ...(data[one - 1] as T), hd: BooleanNumber.TRUE };
  return data;
};

const dataOf = (sheet: FileSheet, own: (formula: string) => string): Partial<IWorksheetData> => {
  const filled = filledIn(sheet.cells);
  return {
    rowCount: sheet.cells.length + ROOM.rows,
    columnCount: Math.max(sheet.widths.length, ...sheet.cells.map((row) => row.length), 10) + ROOM.columns,
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    defaultStyle: { fs: FONT_SIZE },
    defaultRowHeight: LINE,
    cellData: Object.fromEntries(
      sheet.cells.map((row, i) => [
        i,
        Object.fromEntries(
          row.flatMap((cell, j) => {
            // What a formula fills comes out of the formula again.
            const data = cellData(filled.has(`${i},${j}`) ? { ...cell, value: null } : cell, own);
            return data ? [[j, data] as const] : [];
          }),
        ),
      ]),
    ),
    columnData: joined(
      sheet.widths.flatMap((width, i) => (width === undefined ? [] : [[i, { w: pixelsOfWidth(width) }] as const])),
      sheet.hiddenColumns,
    ),
    rowData: joined(
      sheet.heights.map(
        ({ row, points }) => [row - 1, { h: Math.round(points * PIXELS), ia: BooleanNumber.FALSE }] as const,
      ),
      sheet.hiddenRows,
    ),
    custom: {
      ...(sheet.template === undefined ? {} : { template: sheet.template }),
      ...(sheet.page === undefined ? {} : { page: sheet.page }),
    },
    mergeData: sheet.merges.map(rangeOf),
    freeze: {
      startRow: sheet.freeze.rows > 0 ? sheet.freeze.rows : -1,
      startColumn: sheet.freeze.columns > 0 ? sheet.freeze.columns : -1,
      ySplit: sheet.freeze.rows,
      xSplit: sheet.freeze.columns,
    },
  };
};

/** The sheets of a keeper's own file. A WorkbookError says what is wrong with it. */
export const readFile = async (name: string, bytes: Uint8Array, said?: Partial<Form>): Promise<ReadFile> => {
  if (/\.csv$/i.test(name)) return readCsv(name, bytes, said);
  if (!/\.xls[xm]$/i.test(name)) throw new WorkbookError(`"${name}" is neither .xlsx nor CSV. Nothing was changed.`);
  const { readXlsx } = await import("../file/read");
  try {
    return await readXlsx(bytes, name);
  } catch (cause) {
    if (cause instanceof WorkbookError) throw cause;
    // For whoever looks for the reason: the keeper has no use for it.
    console.warn(`"${name}" can't be read:`, cause);
    throw new WorkbookError(
      `"${name}" can't be read as an .xlsx file. Open it in its own program, save it anew as .xlsx, and try again. Nothing was changed.`,
    );
  }
};

/** Puts a workbook in the place of the one that is open; answers in words what of it did not find its place. */
export const replaceSheets = (
  engine: Engine,
  workbook: FWorkbook,
  title: string,
  { sheets, manner }: Book,
): string[] => {
  const left: string[] = [];
  const taken = sheets.map(({ name }) => name);
  clearedFor(engine, workbook, { title, taken, manner }, () => {
    const owns = sheets.map(({ name, names }) =>
      placeNames(engine, workbook, name, names, (words) => left.push(words)),
    );
    sheets.forEach((sheet, i) => {
      const own = owns[i] ?? ((formula: string) => formula);
      placeSheet(engine, workbook, sheet.name, dataOf(sheet, own), sheet);
    });
    const first = sheets.find(({ hidden }) => !hidden) ?? sheets[0];
    return first && workbook.getSheetByName(first.name)?.getSheetId();
  });
  return left;
};
