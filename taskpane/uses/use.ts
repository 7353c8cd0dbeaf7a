import type { UseCell } from "./grid";

/** A function at work on columns of a keeper's own: a small sheet from A1 on, with the formulas that stand in it. */
export interface Use {
  readonly title: string;
  readonly cells: readonly (readonly UseCell[])[];
  /** Rows and columns count from 0. */
  readonly formulas: readonly { readonly row: number; readonly column: number; readonly formula: string }[];
  /** The cells that the formulas fill. */
  readonly answers: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
  /** How it is written, and what shape it answers. */
  readonly says: string;
}

/** "one cell", "3 cells side by side". */
export const cellsInWords = (count: number): string => (count === 1 ? "one cell" : `${count} cells side by side`);
