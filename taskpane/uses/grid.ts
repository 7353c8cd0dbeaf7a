import type { Value } from "../../functions/define";
import { addressOf, fixed } from "../sheets/shared/address";

/** A cell of a sample. A day is ISO text, which a sheet shows as a date. */
export type UseCell = Value | null | { readonly day: string };

/** A sample sheet while it is laid out, from left to right. Rows and columns count from 0. */
export class Grid {
  private readonly lines: UseCell[][] = [];
  /** The first column that is still free. */
  free = 0;

  /** Puts a column of cells, from a row down, into the next free column; answers that column. */
  column(cells: readonly UseCell[], row = 0): number {
    for (const [i, cell] of cells.entries()) {
      while (this.lines.length <= row + i) this.lines.push([]);
      (this.lines[row + i] as UseCell[])[this.free] = cell;
    }
    this.free += 1;
    return this.free - 1;
  }

  /** Leaves columns free; none at the left edge. */
  gap(columns = 1): void {
    if (this.free > 0) this.free += columns;
  }

  get cells(): readonly (readonly UseCell[])[] {
    const width = Math.max(0, ...this.lines.map((line) => line.length));
    return this.lines.map((line) => Array.from({ length: width }, (_, i) => line[i] ?? null));
  }
}

/** "C2" or "C2:C5" of a column, rows counted from 0, the last one included. */
export const address = (column: number, first: number, last = first, across = 1): string =>
  addressOf({ top: first + 1, left: column + 1, bottom: last + 1, right: column + across });

/** The same where it stays as the formula is filled down. */
export const standing = (column: number, first: number, last = first, across = 1): string =>
  fixed(address(column, first, last, across));
