import { isoOf } from "../../functions/dates";
import type { Value } from "../../functions/define";
import { rowsFor } from "../sheets/shared/assemble";
import type { CellContent, CellState, PlainLook, SheetContents } from "../workbook";
import { areaName, areaOf, type Area } from "./place";

/** The sheet on which frozen formulas are kept, and from which they are put back. */
export const WORKED = "Worked formulas";

const TITLE = "Worked formulas: how the figures of this workbook were made";
const HOW =
  "These cells hold fixed figures. With the add-in, Thaw puts the formulas back: leave this sheet as it is until then.";
const HEADINGS = ["Sheet", "Cells", "Formula", "First answer", "Check"] as const;
export const COLUMNS = HEADINGS.length;
/** The row of the first entry, counted from 0: a title, a line of words and the headings stand before it. */
export const FIRST = 3;
const WIDTHS = [18, 12, 62, 17, 15] as const;
/** A longer formula is cut off in print, and can be read in its cell. */
const MOST_LINES = 20;

const plain = (content: CellContent | undefined): string =>
  content === undefined || typeof content === "object" ? "" : String(content);

/** How the sheet is laid out: rows tall enough for their formulas, so that it reads well in print. */
export const workedLook = (rows: readonly (readonly CellContent[])[]): PlainLook => ({
  widths: WIDTHS,
  headings: FIRST,
  lines: rows.map((row, i) =>
    i < FIRST
      ? 1
      : Math.min(MOST_LINES, Math.max(...WIDTHS.map((width, column) => rowsFor(plain(row[column]), width)))),
  ),
});

/** One frozen formula: where it stood, and what was left in its place. */
export interface Entry extends Area {
  readonly sheet: string;
  readonly formula: string;
  /** Its first answer, for the reader. */
  readonly shown: Value | null;
  /** Stands for all the contents that were left in its place: any of them changed, and it differs. */
  readonly check: string;
}

/** 53-bit FNV-1a over UTF-16, as hexadecimal: enough to notice a changed cell, no defence against a forger. */
const digest = (text: string): string => {
  let low = 0x811c9dc5;
  let high = 0x1b873593;
  for (let i = 0; i < text.length; i++) {
    low = Math.imul(low ^ text.charCodeAt(i), 0x01000193);
    high = Math.imul(high ^ text.charCodeAt(i), 0x85ebca6b);
  }
  return (high >>> 0).toString(16).padStart(8, "0").slice(0, 4) + (low >>> 0).toString(16).padStart(8, "0");
};

/**
 * What a cell holds, as text that tells kinds apart: a number from its digits as text, a formula from both. Numbers to
 * 15 digits, which every spreadsheet keeps when it saves.
 */
const contentText = (content: CellContent): string => {
  if (content === null) return "blank";
  if (typeof content === "object") return `formula ${content.formula}`;
  return typeof content === "number" ? `number ${Number(content.toPrecision(15))}` : `${typeof content} ${content}`;
};

/** The check of a block of contents. "x" before it keeps a spreadsheet from reading it as a number such as 12e4. */
export const checkOf = (cells: readonly (readonly CellContent[])[]): string =>
  `x${digest(cells.map((row) => row.map(contentText).join("\t")).join("\n"))}`;

/** What a cell holds now, in the form in which contents are written. */
export const contentOf = (cell: CellState | undefined): CellContent => {
  if (!cell) return null;
  if (cell.formula !== undefined) return { formula: cell.formula };
  return cell.value !== null && typeof cell.value === "object" ? { formula: `=${cell.value.error}` } : cell.value;
};

/** A value for the reader: a date as a date, an error as its sign. */
export const shownOf = ({ value, format }: CellState): Value | null => {
  if (value !== null && typeof value === "object") return value.error;
  const isDate = typeof value === "number" && value >= 61 && /y/i.test(format ?? "") && /d/i.test(format ?? "");
  return isDate ? isoOf(value) : value;
};

/** The rows of the sheet, from its first. */
export const workedRows = (entries: readonly Entry[]): readonly (readonly CellContent[])[] => [
  [TITLE, null, null, null, null],
  [HOW, null, null, null, null],
  HEADINGS,
  ...entries.map((entry) => [entry.sheet, areaName(entry), entry.formula, entry.shown, entry.check]),
];

export const isWorked = ({ cells }: SheetContents): boolean =>
  HEADINGS.every((heading, column) => cells[FIRST - 1]?.[column]?.value === heading);

const textOf = (cell: CellState | undefined): string | undefined =>
  cell && cell.formula === undefined && typeof cell.value === "string" ? cell.value : undefined;

/** An entry that stands on a sheet, on the row of that number, counted from 0. */
export interface KeptEntry extends Entry {
  readonly line: number;
}

/** The entries of such a sheet, and the rows that are none, by their number on the sheet. */
export const entriesOf = ({
  cells,
}: SheetContents): { readonly entries: readonly KeptEntry[]; readonly unread: readonly number[] } => {
  const entries: KeptEntry[] = [];
  const unread: number[] = [];
  for (const [row, line] of cells.entries()) {
    if (row < FIRST || line.every(({ value, formula }) => formula === undefined && (value === null || value === "")))
      continue;
    // A sheet's name that is a number may have become one.
    const name = line[0]?.value;
    const sheet = typeof name === "number" ? String(name) : textOf(line[0]);
    const area = areaOf(textOf(line[1]) ?? "");
    const formula = textOf(line[2]);
    const check = textOf(line[4]);
    const shown = line[3]?.value ?? null;
    if (sheet === undefined || !area || !formula?.startsWith("=") || check === undefined) unread.push(row + 1);
    else entries.push({ line: row, sheet, ...area, formula, shown: typeof shown === "object" ? null : shown, check });
  }
  return { entries, unread };
};

/** Whether two entries stand for a common cell. */
export const overlap = (one: Entry, other: Entry): boolean =>
  one.sheet === other.sheet &&
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;
