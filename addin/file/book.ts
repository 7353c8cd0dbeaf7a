import type { Value } from "../../functions/define";
import type { CellLook } from "../../taskpane/sheets/look";
import type { Chart, Validation } from "../../taskpane/sheets/sheet";

/** One cell of a file. A formula has its "=", and its answer in `value`. */
export interface FileCell {
  readonly value: Value | null | { readonly error: string };
  readonly formula?: string;
  /** True where the formula's answer fills more than its own cell. */
  readonly spills?: boolean;
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
}

/** Colours cells of `ranges` where the formula `when`, with its "=", holds for the first of them. */
export interface FileRule {
  readonly ranges: readonly string[];
  readonly when: string;
  readonly fill?: string;
  readonly colour?: string;
  readonly bold?: boolean;
}

/** A file that was read, and in words what of it could not be carried over. */
export interface ReadFile {
  readonly sheets: readonly FileSheet[];
  readonly left: readonly string[];
}
