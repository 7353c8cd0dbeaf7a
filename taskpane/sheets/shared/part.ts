import type { Block, Content, Format, Sheet } from "../sheet";
import { areaFrom, beside, block } from "./address";
import { validationOf, type Takes } from "./takes";

/** Some of a sheet: builders answer parts, and `assemble` joins them. */
export type Part = Partial<
  Pick<
    Sheet,
    | "blocks"
    | "quantities"
    | "formats"
    | "validation"
    | "rules"
    | "notes"
    | "links"
    | "needed"
    | "merges"
    | "lines"
    | "charts"
  >
>;

const joined = <K extends keyof Part>(parts: readonly Part[], key: K): NonNullable<Part[K]> =>
  parts.flatMap((part) => (part[key] ?? []) as unknown[]) as unknown as NonNullable<Part[K]>;

/** Several parts as one. */
export const together = (...parts: readonly Part[]): Required<Part> => ({
  blocks: joined(parts, "blocks"),
  quantities: joined(parts, "quantities"),
  formats: joined(parts, "formats"),
  validation: joined(parts, "validation"),
  rules: joined(parts, "rules"),
  notes: joined(parts, "notes"),
  links: joined(parts, "links"),
  needed: joined(parts, "needed"),
  merges: joined(parts, "merges"),
  lines: joined(parts, "lines"),
  charts: joined(parts, "charts"),
});

/** The area that a block fills, its spilled answers included. */
export const areaOfBlock = ({ at, rows, spills }: Block) =>
  areaFrom(at, spills?.[0] ?? rows.length, spills?.[1] ?? Math.max(...rows.map((row) => row.length)));

/** What may stand beside a cell or a column of cells. */
export interface Trimmings {
  readonly format?: Format;
  readonly takes?: Takes;
  readonly note?: string;
}

export const trimmed = (range: string, at: string, { format, takes, note }: Trimmings): Part => ({
  formats: format ? [{ range, format }] : [],
  validation: takes ? [validationOf(range, takes)] : [],
  notes: note ? [{ at, text: note }] : [],
});

/** A line of its own, such as the heading over a part. */
export const heading = (at: string, ...words: readonly Content[]): Part => ({
  blocks: [{ at, role: "heading", rows: [words] }],
});

export const label = (at: string, ...words: readonly string[]): Part => ({
  blocks: [{ at, role: "label", rows: [words] }],
});

/** Running words over several cells, at the height of as many rows. */
export const text = (
  at: string,
  words: Content,
  rows: number,
  columns: number,
  role: Block["role"] = "text",
): Part => ({
  blocks: [{ at, role, rows: [[words]] }],
  merges: rows * columns > 1 ? [block(at, rows, columns)] : [],
});

/** One cell with what belongs to it; over several columns where it is `wide`, framed all round. */
export const cell = (
  at: string,
  role: Block["role"],
  content: Content,
  { wide = 1, ...trimmings }: Trimmings & { readonly wide?: number } = {},
): Part =>
  together(
    {
      blocks: [{ at, role, rows: [[content, ...Array<null>(wide - 1).fill(null)]] }],
      merges: wide > 1 ? [block(at, 1, wide)] : [],
    },
    trimmed(at, at, trimmings),
  );

/** One formula whose answer fills several cells. */
export const spilled = (
  at: string,
  formula: string,
  size: readonly [rows: number, columns: number],
  format?: Format,
): Part =>
  together(
    { blocks: [{ at, role: "computed", rows: [[formula]], spills: size }] },
    trimmed(block(at, ...size), at, format ? { format } : {}),
  );

/** Labels one under the other, each over so many columns. */
export const labels = (at: string, words: readonly string[], columns = 1): Part => ({
  blocks: [{ at, role: "label", rows: words.map((one) => [one]) }],
  merges: columns > 1 ? words.map((_, row) => block(beside(at, row, 0), 1, columns)) : [],
});

interface Field extends Trimmings {
  readonly label: string;
  /** How many columns the cell takes; one where nothing is said. */
  readonly wide?: number;
  /** "input" where nothing else is said; "computed" for a formula. */
  readonly role?: "input" | "setting" | "computed";
  readonly value: Content;
}

const isFormula = (value: Content): boolean => typeof value === "string" && value.startsWith("=");

/** Labels with one cell each to the right of them, one a row, from `at` down. `across`: columns from label to cell. */
export const fields = (at: string, list: readonly Field[], across = 1): Part =>
  together(
    labels(
      at,
      list.map((field) => field.label),
      across,
    ),
    ...list.map((field, row) => {
      const role = field.role ?? (isFormula(field.value) ? "computed" : "input");
      return cell(beside(at, row, across), role, field.value, field);
    }),
  );

/** A column of a table, in one of six ways. */
export type TableColumn = { readonly title: string } & Trimmings &
  (
    | { readonly input: readonly Content[] }
    | { readonly setting: readonly Content[] }
    /** Words and figures that belong to the sheet. */
    | { readonly label: readonly Content[] }
    /** A formula for each row, given the row's number. */
    | { readonly each: (row: number) => string }
    /** One formula for the whole column; `across` columns are filled by it, and those after the first are `covered`. */
    | { readonly spilled: string; readonly across?: number }
    | { readonly covered: true }
  );

interface Table {
  /** The cell of the first title. */
  readonly at: string;
  readonly rows: number;
  readonly columns: readonly TableColumn[];
  /** Lines of text in the row of titles. */
  readonly titleLines?: number;
}

const blocksOf = (column: TableColumn, at: string, rows: number): Block[] => {
  if ("covered" in column) return [];
  if ("spilled" in column) {
    return [{ at, role: "computed", rows: [[column.spilled]], spills: [rows, column.across ?? 1] }];
  }
  const { top } = areaFrom(at, 1, 1);
  const numbers = Array.from({ length: rows }, (_, i) => i);
  if ("each" in column) {
    return [{ at, role: "computed", rows: numbers.map((i) => [column.each(top + i)]) }];
  }
  const [role, contents] =
    "input" in column
      ? (["input", column.input] as const)
      : "setting" in column
        ? (["setting", column.setting] as const)
        : (["label", column.label] as const);
  if (contents.length > rows) throw new Error(`${column.title}: ${contents.length} entries in ${rows} rows`);
  return [{ at, role, rows: numbers.map((i) => [contents[i] ?? null]) }];
};

/** Titles and the columns under them. A log is a table of sixty rows. A note stands on the column's title. */
export const table = ({ at, rows, columns, titleLines = 1 }: Table): Part =>
  together(
    { blocks: [{ at, role: "heading", rows: [columns.map(({ title }) => title)] }] },
    { lines: titleLines > 1 ? [{ row: areaFrom(at, 1, 1).top, lines: titleLines }] : [] },
    ...columns.map((column, i) => {
      const first = beside(at, 1, i);
      return together({ blocks: blocksOf(column, first, rows) }, trimmed(block(first, rows), beside(at, 0, i), column));
    }),
  );

/** How many rows a log has. */
export const LOG_ROWS = 60;

export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** The twelve months as labels, from `at` down. */
export const monthLabels = (at: string): Part => ({
  blocks: [{ at, role: "label", rows: MONTHS.map((month) => [month]) }],
});

/** The numbers 1 to 12 in a column, inside a formula. */
export const MONTH_NUMBERS = "{1;2;3;4;5;6;7;8;9;10;11;12}";
