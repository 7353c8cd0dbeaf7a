import {
  BooleanNumber,
  BorderStyleTypes,
  CellValueType,
  VerticalAlign,
  WrapStrategy,
  type ICellData,
  type IRange,
  type IStyleData,
  type IWorksheetData,
} from "@univerjs/core";
import { lookOf, roleLooks, type CellLook } from "../../taskpane/sheets/look";
import { ROOM } from "./room";
import { areaOf, type Area } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { formats, type Content, type Sheet } from "../../taskpane/sheets/sheet";

export const FONT_SIZE = 10; // pt
const LETTER = 7.6; // px, a digit of the engine's own font at that size
const PADDING = 9; // px, left and right of a cell's text together
export const LINE = 20; // px, a row of one line

export const pixelsOfWidth = (characters: number): number => Math.round(characters * LETTER + PADDING);
export const widthOfPixels = (pixels: number): number => Math.round(((pixels - PADDING) / LETTER) * 10) / 10;
export const pixelsOfLines = (lines: number): number => lines * LINE;

export const rangeOf = (address: string): IRange => {
  const { top, left, bottom, right } = areaOf(address);
  return { startRow: top - 1, startColumn: left - 1, endRow: bottom - 1, endColumn: right - 1 };
};

const line = (colour: string) => ({ s: BorderStyleTypes.THIN, cl: { rgb: colour } });

export const styleOf = (look: CellLook): IStyleData => {
  const edge = look.frame && line(look.frameColour ?? "#000000");
  return {
    ...(look.bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(look.size === undefined ? {} : { fs: look.size }),
    ...(look.colour === undefined ? {} : { cl: { rgb: look.colour } }),
    ...(look.fill === undefined ? {} : { bg: { rgb: look.fill } }),
    ...(edge ? { bd: look.frame === "box" ? { t: edge, r: edge, b: edge, l: edge } : { b: edge } } : {}),
    ...(look.wraps ? { tb: WrapStrategy.WRAP, vt: VerticalAlign.TOP } : {}),
  };
};

/** What a cell holds, as the engine keeps it. Text that starts with "=" is a formula, unless it is said to be plain. */
export const contentOf = (content: Exclude<Content, null>, isPlain = false): ICellData => {
  if (typeof content === "number") return { v: content, t: CellValueType.NUMBER };
  if (typeof content === "boolean") return { v: content ? 1 : 0, t: CellValueType.BOOLEAN };
  return content.startsWith("=") && !isPlain ? { f: content } : { v: content, t: CellValueType.STRING };
};

const eachCell = ({ top, left, bottom, right }: Area, visit: (row: number, column: number) => void): void => {
  for (let row = top - 1; row < bottom; row++) for (let column = left - 1; column < right; column++) visit(row, column);
};

/** Heights of rows of several lines, and of large letters; fixed, because the engine would else fit rows to their words. */
const heights = ({ blocks, lines }: Sheet): IWorksheetData["rowData"] =>
  Object.fromEntries([
    ...blocks.flatMap(({ at, role }) => {
      const { size } = roleLooks[role];
      const tall = size !== undefined && size > FONT_SIZE;
      return tall ? [[areaOf(at).top - 1, { h: Math.ceil(size * 1.9), ia: BooleanNumber.FALSE }] as const] : [];
    }),
    ...lines.map(({ row, lines: count }) => [row - 1, { h: pixelsOfLines(count), ia: BooleanNumber.FALSE }] as const),
  ]);

/** A templated sheet as the engine's own data, but for what it keeps beside a sheet: validation, rules, notes, names. */
export const sheetDataOf = (
  sheet: Sheet,
): Partial<IWorksheetData> & Pick<IWorksheetData, "rowCount" | "columnCount"> => {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const styles: Record<number, Record<number, IStyleData>> = {};
  let rowCount = 0;
  let columnCount = sheet.widths.length;
  const styled = (area: Area, style: IStyleData): void =>
    eachCell(area, (row, column) => {
      const line = (styles[row] ??= {});
      line[column] = { ...line[column], ...style };
      rowCount = Math.max(rowCount, row + 1);
      columnCount = Math.max(columnCount, column + 1);
    });
  for (const block of sheet.blocks) {
    const area = areaOfBlock(block);
    styled(area, styleOf(lookOf(block, sheet)));
    block.rows.forEach((row, i) =>
      row.forEach((content, j) => {
        if (content !== null && content !== "")
          (cellData[area.top - 1 + i] ??= {})[area.left - 1 + j] = contentOf(content);
      }),
    );
  }
  for (const { range, format } of sheet.formats) styled(areaOf(range), { n: { pattern: formats[format] } });
  for (const { area } of sheet.charts) styled(areaOf(area), {});
  for (const [row, line] of Object.entries(styles)) {
    for (const [column, style] of Object.entries(line)) {
      if (Object.keys(style).length === 0) continue;
      const cells = (cellData[Number(row)] ??= {});
      cells[Number(column)] = { ...cells[Number(column)], s: style };
    }
  }
  return {
    rowCount: rowCount + ROOM.rows,
    columnCount: columnCount + ROOM.columns,
    defaultStyle: { fs: FONT_SIZE },
    defaultRowHeight: LINE,
    cellData,
    columnData: Object.fromEntries(sheet.widths.map((width, i) => [i, { w: pixelsOfWidth(width) }])),
    rowData: heights(sheet),
    mergeData: sheet.merges.map(rangeOf),
    freeze: {
      startRow: sheet.freeze.rows,
      startColumn: sheet.freeze.columns,
      ySplit: sheet.freeze.rows,
      xSplit: sheet.freeze.columns,
    },
  };
};
