import type { Block, Content, Format } from "../sheet";
import { areaOf, beside, block } from "./address";
import { Cell, Column, RowCell } from "./names";
import { together, trimmed, type Part } from "./part";
import { asked, headingOver, linked, measured, trimmingsOf, type Region, type Told } from "./region";

/** How many rows a keeper's log has. */
export const LOG_ROWS = 60;

type Cells<K extends string> = Readonly<Record<K, RowCell>>;

/** A column, filled in one of six ways. */
export type LogColumn<K extends string = string> = Told<K> & {
  readonly title: string | null;
  /** Free columns before it. */
  readonly skip?: number;
  /** Columns that it takes: the words of a formula run on over them, other cells are joined where it is `joined`. */
  readonly wide?: number;
  readonly joined?: boolean;
  /** The format of each row, where they differ. */
  readonly formats?: readonly (Format | undefined)[];
} & (
    | { readonly input: readonly Content[] }
    | { readonly setting: readonly Content[] }
    /** Words and figures that belong to the sheet. */
    | { readonly label: readonly Content[] }
    /** A formula for each row, which names the cells of its row and of those above; it fills those `covered` after it too. */
    | { readonly each: (row: Cells<K>) => string }
    /** One formula for the whole column, and for those `covered` after it. */
    | { readonly spilled: string | ((own: Readonly<Record<K, Column>>) => string) }
    | { readonly covered: true }
  );

interface LogOptions<K extends string, R extends string> {
  /** A line over the titles, as wide as the log. */
  readonly title?: string;
  /** Stands on that line, or where there is none on the first title. */
  readonly note?: string;
  /** Lines of text in the row of titles; 0 where there are none. */
  readonly titleLines?: number;
  /** Lines of text in each row: words run over them. */
  readonly rowLines?: number;
  /** Names of the rows: each means the cell of one column in that row. */
  readonly named?: { readonly column: K; readonly rows: readonly R[] };
  /** Rows kept free for pasting, those shown included; cleared with the example. */
  readonly room?: number;
  /** Says under the last row how it is made longer (growing.ts): what is typed there would be read by nothing. */
  readonly grows?: boolean;
}

const MORE_ROWS = "Full? Select this cell; in the pane, Sheets: Add rows to the log. What is typed below is not read.";

interface Placed {
  readonly key: string;
  readonly column: LogColumn;
  readonly left: number;
  readonly wide: number;
}

const placed = (columns: Readonly<Record<string, LogColumn>>): readonly Placed[] => {
  let next = 0;
  return Object.entries(columns).map(([key, column]) => {
    const left = next + (column.skip ?? 0);
    const wide = column.wide ?? 1;
    next = left + wide;
    return { key, column, left, wide };
  });
};

const titleOf = ({ title, unit }: LogColumn): string | null => (title !== null && unit ? `${title} ${unit}` : title);

/** The titles: one block from each free column to the next. */
const titles = (at: string, list: readonly Placed[]): Part => {
  const runs: Placed[][] = [];
  for (const one of list) {
    if (one.column.skip || runs.length === 0) runs.push([one]);
    else runs.at(-1)?.push(one);
  }
  return together(
    ...runs.map((run) => {
      const words = run.flatMap(({ column, wide }) => [titleOf(column), ...Array<null>(wide - 1).fill(null)]);
      return headingOver(beside(at, 0, run[0]?.left ?? 0), words, words.length);
    }),
  );
};

/**
 * A table by named columns. `log.mass` is the column; "log.mass" and, for its third cell, "log.mass[3]" name it to those
 * who ask from outside. A note stands on the column's title.
 */
export const log = <K extends string, R extends string = never>(
  name: string,
  rows: number,
  columns: Readonly<Record<K, LogColumn<NoInfer<K>>>>,
  { title, note, titleLines = 1, rowLines = 1, named, room, grows = false }: LogOptions<NoInfer<K>, R> = {},
): Region & Readonly<Record<K, Column>> & Readonly<Record<R, Cell>> => {
  const list = placed(columns);
  const width = Math.max(...list.map(({ left, wide }) => left + wide));
  const titleRow = title === undefined ? 0 : 1;
  const first = titleRow + (titleLines > 0 ? 1 : 0);
  const whole = Object.fromEntries(list.map(({ key }) => [key, new Column(`${name}.${key}`)])) as Record<K, Column>;
  const rowCells = (row: number, anchor: "goes" | "goesDown"): Cells<K> =>
    Object.fromEntries(list.map(({ key }) => [key, new RowCell(`${name}.${key}`, row, anchor)])) as Cells<K>;

  /** How many columns after this one its formula fills too. */
  const covers = (at: number): number => {
    const more = list.slice(at + 1).findIndex(({ column }) => !("covered" in column));
    return more < 0 ? list.length - 1 - at : more;
  };

  const blocksOf = (at: string, { column, wide }: Placed, index: number): readonly Block[] => {
    if ("covered" in column) return [];
    if ("spilled" in column) {
      const formula = typeof column.spilled === "function" ? column.spilled(whole) : column.spilled;
      return [{ at, role: "computed", rows: [[formula]], spills: [rows, 1 + covers(index)] }];
    }
    const numbers = Array.from({ length: rows }, (_, i) => i);
    if ("each" in column) {
      const formulas = numbers.map((i) => [column.each(rowCells(i + 1, "goes"))]);
      const across = 1 + covers(index);
      return across === 1
        ? [{ at, role: "computed", rows: formulas }]
        : formulas.map((formula, i) => ({
            at: beside(at, i, 0),
            role: "computed",
            rows: [formula],
            spills: [1, across],
          }));
    }
    const [role, contents] =
      "input" in column
        ? (["input", column.input] as const)
        : "setting" in column
          ? (["setting", column.setting] as const)
          : (["label", column.label] as const);
    if (contents.length > rows) throw new Error(`${column.title}: ${contents.length} entries in ${rows} rows`);
    const beyond = column.joined ? Array<null>(wide - 1).fill(null) : [];
    return [
      {
        at,
        role,
        rows: numbers.map((i) => [contents[i] ?? null, ...(role === "input" ? beyond : [])]),
        ...(room && role === "input" ? { room: [room, 1] as const } : {}),
      },
    ];
  };

  const built = (at: string, one: Placed, index: number): Part => {
    const { key, column, left, wide } = one;
    const top = beside(at, first, left);
    const own = new RowCell(`${name}.${key}`, 1, "goesDown");
    return together(
      { blocks: blocksOf(top, one, index) },
      trimmed(block(top, rows), beside(top, -1, 0), trimmingsOf(column)),
      {
        formats: (column.formats ?? []).flatMap((format, i) => (format ? [{ range: beside(top, i, 0), format }] : [])),
        merges:
          column.joined && wide > 1 ? Array.from({ length: rows }, (_, i) => block(beside(top, i, 0), 1, wide)) : [],
        rules: (column.rules ?? []).map(({ look, when, over = wide }) => ({
          range: block(top, rows, over),
          when: when(own, rowCells(1, "goesDown")),
          look,
        })),
      },
      measured(top, room ?? rows, titleOf(column) ?? "", column),
      linked(top, [rows, column.joined ? wide : 1], titleOf(column) ?? name, column),
      asked(top, rows, column.title ?? name, column),
    );
  };

  const places = (at: string): Record<string, string> => ({
    ...Object.fromEntries(
      list.map(({ key, left }) => [`${name}.${key}`, block(beside(at, first, left), room ?? rows)]),
    ),
    ...Object.fromEntries(
      (named?.rows ?? []).map((row, i) => {
        const left = list.find(({ key }) => key === named?.column)?.left ?? 0;
        return [`${name}.${row}`, beside(at, first + i, left)];
      }),
    ),
  });

  const rowNames = Object.fromEntries((named?.rows ?? []).map((row) => [row, new Cell(`${name}.${row}`)]));
  return Object.assign({} as Readonly<Record<R, Cell>>, rowNames, whole, {
    region: {
      rows: first + rows,
      columns: width,
      headings: list.map(({ column, left }) => ({ left, words: titleOf(column) ?? "" })),
      places,
      build: (at: string) =>
        together(
          title === undefined ? {} : headingOver(at, title, width),
          note ? { notes: [{ at, text: note }] } : {},
          titleLines > 0 ? titles(beside(at, titleRow, 0), list) : {},
          titleLines > 1 ? { lines: [{ row: areaOf(at).top + titleRow, lines: titleLines }] } : {},
          rowLines > 1
            ? {
                lines: Array.from({ length: rows }, (_, i) => ({ row: areaOf(at).top + first + i, lines: rowLines })),
              }
            : {},
          ...list.map((one, i) => built(at, one, i)),
          grows ? { blocks: [{ at: beside(at, first + rows, 0), role: "hint", rows: [[MORE_ROWS]] }] } : {},
        ),
    },
  });
};
