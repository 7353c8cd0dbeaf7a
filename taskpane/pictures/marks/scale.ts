import type { Markish } from "@observablehq/plot";
import type { Series } from "../../sheets/sheet";

/** What the marks of a series are placed by. */
export interface Scale {
  /** The places of the rows on the axis. */
  readonly xs: readonly (Date | number)[];
  readonly numeric: boolean;
  /** Half of a bar, in units of the axis. */
  readonly half: number;
  /** A range's figures in the order of the axis; NaN where there is none. */
  readonly column: (range: string) => number[];
  /** A range's figures as they stand. */
  readonly cells: (range: string) => readonly number[];
  /** px that one of several bars has at a place that is a word, and the bars that share it. */
  readonly barRoom: number;
  readonly bars: readonly Series[];
  /** The hatching of a series. */
  readonly fill: (i: number) => string;
}

/** The marks of a series, the figure beside which its name stands, and whether there is any figure at all. */
export interface Drawn {
  readonly marks: readonly Markish[];
  readonly label: number;
  readonly isSeen: boolean;
}

export type { Of } from "./plot";

export const isFigure = (value: number): boolean => !Number.isNaN(value);
export const lastOf = (values: readonly number[]): number => values.findLast(isFigure) ?? NaN;
