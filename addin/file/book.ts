import type { Value } from "../../functions/define";
import type { CellLook } from "../../taskpane/sheets/look";
import type { CellState } from "../../taskpane/workbook";
import type { Chart, Validation } from "../../taskpane/sheets/sheet";
import type { Manner } from "../../taskpane/text/form";

/** One cell of a file. A formula has its "=", and its answer in `value`. */
export interface FileCell {
  readonly value: Value | null | { readonly error: string };
  readonly formula?: string;
  /** How many rows and columns the formula's answer fills, where it fills more than its own cell. */
  readonly spills?: readonly [rows: number, columns: number];
  /** Where a click on the cell leads. */
  readonly link?: string;
  readonly format?: string;
  readonly look?: CellLook;
}

/** A sheet as an .xlsx file holds it: what is written, and what comes of reading. Addresses are A1-style. */
export interface FileSheet {
  readonly name: string;
  readonly hidden?: boolean;
  readonly cells: readonly (readonly FileCell[])[];
  /** Of the columns from A, in characters; undefined for the program's own. */
  readonly widths: readonly (number | undefined)[];
  /** Of rows that are not one line tall, in points; rows count from 1. */
  readonly heights: readonly { readonly row: number; readonly points: number }[];
  readonly merges: readonly string[];
  readonly freeze: { readonly rows: number; readonly columns: number };
  readonly validation: readonly Validation[];
  readonly rules: readonly FileRule[];
  readonly notes: readonly { readonly at: string; readonly text: string }[];
  readonly names: readonly { readonly name: string; readonly range: string }[];
  readonly charts: readonly Chart[];
  /** The mark of the template that the sheet was made from (taskpane/sheets/mark.ts). */
  readonly template?: string;
  /** Rows and columns that are not shown, from 1. */
  readonly hiddenRows?: readonly number[];
  readonly hiddenColumns?: readonly number[];
  /** How it is printed, in the words of the file format. */
  readonly page?: Page;
}

export interface Page {
  readonly setup: Readonly<Record<string, unknown>>;
  readonly headerFooter?: Readonly<Record<string, unknown>>;
}

/** How far each formula of a sheet spills, by "row,column" of its cell, both from 0. */
export const spillsIn = (cells: readonly (readonly CellState[])[]): ReadonlyMap<string, readonly [number, number]> => {
  const found = new Map<string, readonly [number, number]>();
  cells.forEach((line, row) =>
    line.forEach(({ spilledFrom: from }, column) => {
      if (!from) return;
      const key = `${from.row},${from.column}`;
      const [rows, columns] = found.get(key) ?? [1, 1];
      found.set(key, [Math.max(rows, row - from.row + 1), Math.max(columns, column - from.column + 1)]);
    }),
  );
  return found;
};

/** The cells that formulas of other cells fill, by "row,column", both from 0. */
export const filledIn = (
  cells: readonly (readonly FileCell[])[],
  which: (cell: FileCell) => boolean = () => true,
): ReadonlySet<string> => {
  const filled = new Set<string>();
  cells.forEach((line, row) =>
    line.forEach((cell, column) => {
      if (!cell.spills || !which(cell)) return;
      const [rows, columns] = cell.spills;
      for (let i = 0; i < rows; i++)
        for (let j = 0; j < columns; j++) if (i > 0 || j > 0) filled.add(`${row + i},${column + j}`);
    }),
  );
  return filled;
};

/** Colours cells of `ranges` where the formula `when`, with its "=", holds for the first of them. */
export interface FileRule {
  readonly ranges: readonly string[];
  readonly when: string;
  readonly fill?: string;
  readonly colour?: string;
  readonly bold?: boolean;
}

/** A workbook as a file holds it, and how its keeper writes dates and figures where that is known. */
export interface Book {
  readonly sheets: readonly FileSheet[];
  readonly manner?: Manner;
}

/** A file that was read, and in words what of it could not be carried over. */
export interface ReadFile extends Book {
  readonly left: readonly string[];
}
