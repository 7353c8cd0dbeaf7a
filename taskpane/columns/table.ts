import { serialOfIso } from "../../functions/dates";
import { areaName, type Area } from "../actions/place";
import type { CellState, SheetContents } from "../workbook";

/** What most of a column's cells are. */
export type Kind = "date" | "figure" | "text" | "blank";

/** A column of a keeper's own table. Columns count from 0 on the sheet. */
export interface OwnColumn {
  readonly column: number;
  readonly heading: string;
  /** The heading to the letter, as a table of the program's own calls its column. */
  readonly name: string;
  readonly kind: Kind;
  readonly cells: readonly CellState[];
}

/** A block under headings: rows and columns count from 0, `row` is the first below the headings. */
export interface OwnTable {
  readonly sheet: string;
  readonly headings: number;
  readonly row: number;
  readonly rows: number;
  readonly columns: readonly OwnColumn[];
  /** The next free column. */
  readonly free: number;
}

const NOTHING: CellState = { value: null };

export const isEmpty = ({ value, formula }: CellState): boolean =>
  formula === undefined && (value === null || (typeof value === "string" && value.trim() === ""));

const isBlankValue = ({ value }: CellState): boolean =>
  value === null || (typeof value === "string" && value.trim() === "");

const isDateFormat = (format: string): boolean => /[yd]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ""));

const kindOf = (state: CellState): Kind => {
  const { value, format } = state;
  if (isBlankValue(state) || typeof value === "boolean" || typeof value === "object") return "blank";
  if (typeof value === "number") return format !== undefined && isDateFormat(format) ? "date" : "figure";
  return serialOfIso(value) === undefined ? "text" : "date";
};

const most = (cells: readonly CellState[]): Kind => {
  const counts = new Map<Kind, number>();
  for (const cell of cells) counts.set(kindOf(cell), (counts.get(kindOf(cell)) ?? 0) + 1);
  counts.delete("blank");
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? "blank";
};

/** The cells around a cell, up to rows and columns that are empty; undefined where there are none. */
const blockAround = (cells: SheetContents["cells"], row: number, column: number): Area | undefined => {
  const at = (i: number, j: number): boolean => !isEmpty(cells[i]?.[j] ?? NOTHING);
  let [top, left, bottom, right] = [row, column, row, column];
  const line = (fromRow: number, toRow: number, fromColumn: number, toColumn: number): boolean => {
    for (let i = Math.max(0, fromRow); i <= toRow; i++) {
      for (let j = Math.max(0, fromColumn); j <= toColumn; j++) if (at(i, j)) return true;
    }
    return false;
  };
  for (let grown = true; grown;) {
    grown = false;
    if (top > 0 && line(top - 1, top - 1, left - 1, right + 1)) [top, grown] = [top - 1, true];
    if (line(bottom + 1, bottom + 1, left - 1, right + 1)) [bottom, grown] = [bottom + 1, true];
    if (left > 0 && line(top - 1, bottom + 1, left - 1, left - 1)) [left, grown] = [left - 1, true];
    if (line(top - 1, bottom + 1, right + 1, right + 1)) [right, grown] = [right + 1, true];
  }
  // Where one stood beside the block, its own row or column may be empty.
  while (top < bottom && !line(top, top, left, right)) top += 1;
  while (left < right && !line(top, bottom, left, left)) left += 1;
  while (right > left && !line(top, bottom, right, right)) right -= 1;
  while (bottom > top && !line(bottom, bottom, left, right)) bottom -= 1;
  return line(top, bottom, left, right)
    ? { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 }
    : undefined;
};

/** Lines of titles that may stand over the headings. */
const TITLES = 6;

/** The row of the headings: words over most of the columns, the first such row. */
const headingsIn = (cells: SheetContents["cells"], { row, column, rows, columns }: Area): number | undefined => {
  for (let i = row; i < Math.min(row + TITLES, row + rows - 1); i++) {
    const line = Array.from({ length: columns }, (_, j) => cells[i]?.[column + j] ?? NOTHING);
    const words = line.filter((cell) => kindOf(cell) === "text");
    if (
      words.length >= Math.max(columns > 1 ? 2 : 1, columns / 2) &&
      line.every((cell) => isEmpty(cell) || words.includes(cell))
    )
      return i;
  }
  return undefined;
};

/** The table in which a cell stands, or in words why there is none. */
export const tableAt = (
  { name, cells }: SheetContents,
  at: { readonly row: number; readonly column: number },
): OwnTable | string => {
  const block = blockAround(cells, at.row, at.column);
  if (!block || block.rows < 2) return "Select a cell of your table: rows of entries under a row of headings.";
  const headings = headingsIn(cells, block);
  if (headings === undefined)
    return `${areaName(block)} has no row of headings on top: write a word over each column, then look again.`;
  const row = headings + 1;
  const rows = block.row + block.rows - row;
  const columns = Array.from({ length: block.columns }, (_, j): OwnColumn => {
    const column = block.column + j;
    const own = Array.from({ length: rows }, (_, i) => cells[row + i]?.[column] ?? NOTHING);
    const heading = cells[headings]?.[column]?.value;
    const name = typeof heading === "string" ? heading : "";
    return { column, heading: name.trim(), name, kind: most(own), cells: own };
  });
  return { sheet: name, headings, row, rows, columns, free: block.column + block.columns };
};
