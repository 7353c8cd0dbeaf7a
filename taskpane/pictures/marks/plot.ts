import type { Series } from "../../sheets/sheet";

export type Of<D extends Series["draw"]> = Extract<Series, { readonly draw: D }>;

/** One row of the chart: its place on the axis, and its cell of every range. */
export interface Row {
  readonly x: Date | number;
  readonly label: string;
  readonly index: number;
}

/** What stands over the plot and beside it is placed by this. */
export interface Plot {
  readonly rows: readonly Row[];
  readonly numeric: boolean;
  /** A range's cells as they stand. */
  readonly cells: (range: string) => readonly unknown[];
  /** px of a row, and of places between rows. */
  readonly pixel: (row: number) => number;
  /** px before, inside and after the plot. */
  readonly left: number;
  readonly inner: number;
  readonly right: number;
}
