import { Rectangle, type IObjectMatrixPrimitiveType, type IRange, type Nullable } from "@univerjs/core";

/** So many rows are looked through together: a spill of a year lies in some twenty of them, one of a row in one. */
const ROWS = 16;

const stripOf = (row: number): number => Math.floor(row / ROWS);

/** An area, and the place of the formula that fills it. */
interface Placed {
  readonly row: number;
  readonly column: number;
  readonly range: IRange;
}

/**
 * Areas, each of a formula, found by the rows that they lie in. A thousand formulas that fill a row each would otherwise be
 * looked through for every cell of every one of them.
 */
export class RangesByRow {
  private readonly strips = new Map<number, Set<Placed>>();
  private readonly known = new Map<string, Placed>();

  /** The areas as the engine keeps them: by the row and the column of their formulas. */
  static of(all: Nullable<IObjectMatrixPrimitiveType<Nullable<IRange>>>): RangesByRow {
    const found = new RangesByRow();
    for (const [row, line] of Object.entries(all ?? {})) {
      for (const [column, range] of Object.entries((line ?? {}) as Record<string, Nullable<IRange>>))
        if (range) found.put(Number(row), Number(column), range);
    }
    return found;
  }

  /** In the place of what the same formula had before. */
  put(row: number, column: number, range: IRange): void {
    const key = `${row},${column}`;
    const before = this.known.get(key);
    if (before) this.eachStrip(before.range, (strip) => strip.delete(before));
    const now = { row, column, range };
    this.known.set(key, now);
    this.eachStrip(range, (strip) => strip.add(now));
  }

  /** The areas that share a cell with this one. */
  in(area: IRange): readonly Placed[] {
    const found = new Set<Placed>();
    for (let at = stripOf(area.startRow); at <= stripOf(area.endRow); at++) {
      for (const one of this.strips.get(at) ?? []) if (Rectangle.intersects(one.range, area)) found.add(one);
    }
    return [...found];
  }

  /** Whether one of the areas that hold a cell is of that kind. */
  some(row: number, column: number, isSuch: (area: Placed) => boolean): boolean {
    for (const one of this.strips.get(stripOf(row)) ?? []) {
      const { startRow, endRow, startColumn, endColumn } = one.range;
      const holds = row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
      if (holds && isSuch(one)) return true;
    }
    return false;
  }

  private eachStrip({ startRow, endRow }: IRange, use: (strip: Set<Placed>) => void): void {
    for (let at = stripOf(startRow); at <= stripOf(endRow); at++) {
      const strip = this.strips.get(at) ?? new Set<Placed>();
      this.strips.set(at, strip);
      use(strip);
    }
  }
}

const stood = new WeakMap<object, Map<object, RangesByRow>>();

/** A sheet's areas as they stood before a calculation, which the engine tells apart by the object of what it lays out. */
export const standingBefore = (
  calculation: object,
  sheet: Nullable<IObjectMatrixPrimitiveType<Nullable<IRange>>>,
): RangesByRow | undefined => {
  if (!sheet) return undefined;
  const sheets = stood.get(calculation) ?? new Map<object, RangesByRow>();
  const found = sheets.get(sheet) ?? RangesByRow.of(sheet);
  stood.set(calculation, sheets.set(sheet, found));
  return found;
};
