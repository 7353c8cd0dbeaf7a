import fc from "fast-check";
import { median, theilSen } from "../../functions/shared/theilSen";
import tied from "../tables/tiedSlopes.json";

/** Theil's slope and Sen's range by sorting all slopes with the language's own sort: the selection must find the same. */
const bySorting = (x: readonly number[], y: readonly number[]) => {
  const slopes = x
    .flatMap((one, i) => x.slice(0, i).map((other, j) => ((y[i] as number) - (y[j] as number)) / (one - other)))
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  return {
    all: slopes,
    middle: ((slopes[(slopes.length - 1) >> 1] as number) + (slopes[slopes.length >> 1] as number)) / 2,
  };
};

test("slope and range are what sorting all slopes finds, to the last digit", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 40 })), {
        minLength: 3,
        maxLength: 40,
      }),
      (points) => {
        const [x, y] = [points.map(([one]) => one), points.map(([, one]) => one / 7)];
        fc.pre(new Set(x).size > 1);
        const line = theilSen(x, y);
        const { all, middle } = bySorting(x, y);
        expect(line?.slope).toBeCloseTo(middle, 14);
        // As many slopes lie below the least as above the most, but for the rounding of a rank.
        const [below, above] = [
          all.filter((one) => one < (line?.least as number)),
          all.filter((one) => one > (line?.most as number)),
        ];
        expect(all).toContain(line?.least);
        expect(all).toContain(line?.most);
        expect(below.length).toBeLessThanOrEqual(all.length / 2);
        expect(above.length).toBeLessThanOrEqual(all.length / 2);
        expect(line?.least).toBeLessThanOrEqual(line?.slope as number);
        expect(line?.most).toBeGreaterThanOrEqual(line?.slope as number);
      },
    ),
  );
});

test("a median is the middle of the sorted values, however they lie", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 60 }), (values) => {
      const sorted = [...values].sort((a, b) => a - b);
      const half = sorted.length >> 1;
      const wanted =
        sorted.length % 2 === 1 ? sorted[half] : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2;
      expect(median(values)).toBeCloseTo(wanted as number, 14);
    }),
  );
});

/** Points that share days and values, as scipy has them: what ties take off the range is Kendall's. */
test.each(tied.rows as [number[], number[], number, number, number][])(
  "slope and range of tied points, row %#",
  (x, y, slope, least, most) => {
    const line = theilSen(x, y);
    expect(line?.slope).toBeCloseTo(slope, 12);
    expect(line?.least).toBeCloseTo(least, 12);
    expect(line?.most).toBeCloseTo(most, 12);
  },
);

/**
 * Four points of five on one day and four of one mass: the variance of Kendall's sum, less what ties take off, is below
 * nothing. No slope can be cut off by chance then.
 */
test("where ties leave no variance the range is the slope itself", () =>
  expect(theilSen([0, 0, 0, 0, 1], [1, 1, 1, 2, 1])).toMatchObject({ slope: 0, least: 0, most: 0 }));
