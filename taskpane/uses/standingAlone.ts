import type { AnyDefinition } from "../../functions/define";
import { call, type Given } from "./given";
import { address, Grid } from "./grid";
import { putColumns, putOnce } from "./put";
import { cellsInWords, type Use } from "./use";

/** How many rows one formula fills. */
export const rowsOf = (definition: AnyDefinition): number => {
  const [{ gives, rows }] = definition.examples;
  if (definition.result.shape === "list") return (gives as readonly (readonly unknown[])[]).flat().length;
  return rows ?? (Array.isArray(gives) ? gives.length : 1);
};

const shapeWords = (rows: number, columns: number): string =>
  rows === 1
    ? cellsInWords(columns)
    : columns === 1
      ? `${rows} cells below one another`
      : `${rows} rows of ${cellsInWords(columns)}`;

/** One formula, which stands beside what it reads: from the first row on, or under headings beside the last column. */
export const standingAlone = (
  title: string,
  definition: AnyDefinition,
  grid: Grid,
  formula: string,
  rows: number,
  { said = "", headings }: { readonly said?: string; readonly headings?: readonly string[] } = {},
): Use => {
  if (!headings) grid.gap();
  const { free: column } = grid;
  for (const heading of headings ?? []) grid.column([heading]);
  const row = headings ? 1 : 0;
  const columns = definition.result.columns.length;
  return {
    title,
    cells: grid.cells,
    formulas: [{ row, column, formula }],
    answers: { row, column, rows, columns },
    says: `Write it once, in ${address(column, row)}. It answers ${shapeWords(rows, columns)}${rows * columns > 1 ? ", which must be free" : ""}.${said}`,
  };
};

/** A function over columns that it reads whole, or over cells that stand alone. */
export const wholeColumns = (definition: AnyDefinition, given: readonly Given[]): Use => {
  const grid = new Grid();
  const written = new Map<string, string>();
  putColumns(grid, given, written);
  putOnce(grid, given, written, address);
  const isTable = given.some(({ role }) => role === "column");
  return standingAlone(
    isTable ? "Over whole columns of your own" : "From cells of your own",
    definition,
    grid,
    call(definition, given, written),
    rowsOf(definition),
  );
};
