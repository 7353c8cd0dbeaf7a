import { translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx";
import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { isoOf } from "../../functions/dates";
import type { Value } from "../../functions/define";
import { VERSION } from "../../functions/release";
import { citation } from "../../functions/sources";
import { linesOf } from "../sheets/shared/linesOf";
import type { CellContent, CellState, PlainLook, SheetContents } from "../workbook";
import { functionsIn } from "./formulas";
import { areaName, areaOf, cellName, type Area } from "./place";

/** The sheet on which frozen formulas are kept, and from which they are put back. */
export const WORKED = "Worked formulas";

const TITLE = "Worked formulas: how the figures of this workbook were made";
const HOW =
  "These cells held VIV formulas. With the add-in, Thaw puts the formulas back: leave this sheet as it is until then.";
const HEADINGS = ["Sheet", "Cells", "Formula", "First answer", "Check", "Holds for", "In words"] as const;
const COLUMNS = HEADINGS.length;
/** Sheets of before know the first five. */
const OLDER = HEADINGS.indexOf("Holds for");
const IN_WORDS = HEADINGS.indexOf("In words");
/** A formula that is filled down: each row has its own, of which the first is written. */
const EACH_ROW = "each row";
/** The row below which words stand: how many rows of them, and what they are of. */
const BEHIND = "Behind the figures";
/** So many formulas at most in one line, because a cell holds their checks. */
const MOST_TOGETHER = 500;
/** The row of the first entry, counted from 0: a title, a line of words and the headings stand before it. */
export const FIRST = 3;
const WIDTHS = [18, 12, 56, 17, 15, 10, 26] as const;
const CHECK = HEADINGS.indexOf("Check");
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
      : Math.min(
          MOST_LINES,
          Math.max(...WIDTHS.map((width, column) => (column === CHECK ? 1 : linesOf(plain(row[column]), width)))),
        ),
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
  /** What the add-in says of the error that it answers, or why it is a fixed figure among others that are not. */
  readonly words: string | null;
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

/** The formula as it would stand in another cell; undefined where it cannot be read. */
const filledFrom = (formula: string, { row, column }: Area, to: Area): string | undefined => {
  try {
    const relative = translateFormulaToR1C1(formula, cellName(row, column));
    return translateFormulaToA1(relative, cellName(to.row, to.column));
  } catch {
    // The translator's only way of saying so: such a formula is never taken together with another.
    return undefined;
  }
};

/** Whether a formula of the next row is the one above it, filled down. */
const goesOn = (group: readonly Entry[], next: Entry): boolean => {
  const [first, last] = [group[0], group.at(-1)];
  return (
    first !== undefined &&
    last !== undefined &&
    group.length < MOST_TOGETHER &&
    [first, next].every(({ rows }) => rows === 1) &&
    next.sheet === first.sheet &&
    next.column === first.column &&
    next.columns === first.columns &&
    next.row === last.row + 1 &&
    next.words === first.words &&
    filledFrom(first.formula, first, next) === next.formula
  );
};

/** Formulas that are filled down, together. */
export const filledDown = (entries: readonly Entry[]): readonly (readonly Entry[])[] => {
  const groups: Entry[][] = [];
  const open = new Map<string, Entry[]>();
  for (const entry of entries) {
    // Sheets are read row by row, so that the columns of a table take turns.
    const key = `${entry.column},${entry.sheet}`;
    const group = open.get(key);
    if (group && goesOn(group, entry)) {
      group.push(entry);
      continue;
    }
    const fresh = [entry];
    open.set(key, fresh);
    groups.push(fresh);
  }
  return groups;
};

/** The cells of formulas that are filled down. */
export const areaOfGroup = (group: readonly Entry[]): Area => {
  const [first] = group as readonly [Entry];
  return group.length === 1 ? first : { ...first, rows: group.length };
};

const rowOf = (group: readonly Entry[]): readonly CellContent[] => {
  const [{ sheet, formula, shown, words }] = group as readonly [Entry];
  const checks = group.map(({ check }) => check).join(" ");
  return [sheet, areaName(areaOfGroup(group)), formula, shown, checks, group.length > 1 ? EACH_ROW : null, words];
};

/** A row of the sheet with so many cells filled. */
const wide = (...cells: readonly CellContent[]): readonly CellContent[] =>
  Array.from({ length: COLUMNS }, (_, i) => cells[i] ?? null);

/** The sources and the cautions of the functions that the formulas call, each with the functions that it is of. */
const behind = (entries: readonly Entry[]): readonly (readonly CellContent[])[] => {
  const called = new Set(entries.flatMap(({ formula }) => functionsIn(formula)));
  const said = new Map<string, readonly [string, string[]]>();
  for (const { name, sources, cautions: own } of catalogue.filter((one) => called.has(one.name))) {
    const lines = [
      ...own.map((key) => ["Caution", cautions[key]] as const),
      ...sources.map((key) => ["Source", citation(key)] as const),
    ];
    for (const [kind, text] of lines) {
      const known = said.get(text) ?? ([kind, []] as const);
      known[1].push(name);
      said.set(text, known);
    }
  }
  // What may hurt an animal is read first.
  const rows = [...said].sort(([, [one]], [, [other]]) => (one < other ? -1 : one > other ? 1 : 0));
  return [
    wide(),
    wide(BEHIND, rows.length, `Vivarium Almanac ${VERSION}, ${new Date().toISOString().slice(0, 10)}`),
    ...rows.map(([text, [kind, names]]) => wide(kind, null, `${names.join(", ")}: ${text}`)),
  ];
};

/** The rows of the sheet, from its first. */
export const workedRows = (entries: readonly Entry[]): readonly (readonly CellContent[])[] => [
  wide(TITLE),
  wide(HOW),
  HEADINGS,
  ...filledDown(entries).map(rowOf),
  ...(entries.length > 0 ? behind(entries) : []),
];

export const isWorked = ({ cells }: SheetContents): boolean =>
  HEADINGS.slice(0, OLDER).every((heading, column) => cells[FIRST - 1]?.[column]?.value === heading);

/**
 * How many columns of the sheet are its own. Before it had words its seventh column was the keeper's: where something stands
 * there, it stays.
 */
export const columnsOf = ({ cells }: SheetContents): number => {
  const isOwn = cells[FIRST - 1]?.[IN_WORDS]?.value === HEADINGS[IN_WORDS];
  const isFree = cells.every((line) => {
    const { value = null, formula } = line[IN_WORDS] ?? {};
    return formula === undefined && (value === null || value === "");
  });
  return isOwn || isFree ? COLUMNS : IN_WORDS;
};

/** The row below which words stand, and the last of them. */
export const wordsOf = ({ cells }: SheetContents): readonly [first: number, last: number] | undefined => {
  const first = cells.findIndex((line, row) => row >= FIRST && line[0]?.value === BEHIND);
  const count = cells[first]?.[1]?.value;
  return first < 0 || typeof count !== "number" ? undefined : [first, first + count];
};

const textOf = (cell: CellState | undefined): string | undefined =>
  cell && cell.formula === undefined && typeof cell.value === "string" ? cell.value : undefined;

/** An entry that stands on a sheet, on the row of that number, counted from 0. */
export interface KeptEntry extends Entry {
  readonly line: number;
}

/** The entries of such a sheet, and the rows that are none, by their number on the sheet. */
export const entriesOf = (
  worked: SheetContents,
): { readonly entries: readonly KeptEntry[]; readonly unread: readonly number[] } => {
  const { cells } = worked;
  const entries: KeptEntry[] = [];
  const unread: number[] = [];
  const words = wordsOf(worked);
  for (const [row, line] of cells.entries()) {
    if (words && row >= words[0] && row <= words[1]) continue;
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
    else {
      const words = textOf(line[IN_WORDS]) ?? null;
      const first = {
        line: row,
        sheet,
        ...area,
        formula,
        // The sign of an error is text here, which a program may take for the error.
        shown: shown !== null && typeof shown === "object" ? shown.error : shown,
        check,
        words,
      };
      if (line[OLDER]?.value !== EACH_ROW) {
        entries.push(first);
        continue;
      }
      const checks = check.split(" ");
      const each = checks.map((one, i): KeptEntry | undefined => {
        const at = { ...first, row: area.row + i, rows: 1 };
        const own = filledFrom(formula, area, at);
        return own === undefined ? undefined : { ...at, formula: own, shown: i === 0 ? first.shown : null, check: one };
      });
      if (checks.length !== area.rows || each.includes(undefined)) unread.push(row + 1);
      else entries.push(...(each as KeptEntry[]));
    }
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
