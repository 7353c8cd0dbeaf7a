import fc from "fast-check";
import { massTrend } from "../../../functions/condition/massTrend";
import { callCell, down } from "../../call";
import trends from "../../tables/trends.json";
import { yardstick } from "../../yardstick";

const FIRST = 46_113;
const dated = (days: readonly number[]) => down(days.map((day) => FIRST + day));

// Tolerance as in the table, times the days asked for: a median of pairwise slopes is exact but for rounding.
yardstick(massTrend, { against: "scipy 1.10.1", within: 1e-9, unit: "g per day" }, () =>
  trends.rows.flatMap(({ days, grams, slope }) =>
    [undefined, 1, 7, 30].map(
      (period) => [(callCell(massTrend, dated(days), down(grams), period) as number) / (period ?? 7), slope] as const,
    ),
  ),
);

// Sen's own example, as the tests of SciPy and of R's deming have it; a slope is g a day.
yardstick(massTrend, { against: "Sen 1968, his example", within: 1e-12, unit: "g per day" }, () => [
  [callCell(massTrend, dated([1, 2, 3, 4, 10, 12, 18]), down([9, 15, 19, 20, 45, 55, 78]), 1) as number, 4],
]);

test("rows out of order, missing weights and blank rows change nothing", () => {
  const row = fc.record({ day: fc.integer({ min: 0, max: 300 }), mass: fc.double({ min: 50, max: 500, noNaN: true }) });
  fc.assert(
    fc.property(
      fc.uniqueArray(row, { minLength: 3, maxLength: 10, selector: ({ day }) => day }),
      fc.infiniteStream(fc.nat()),
      (rows, keys) => {
        const of = (log: readonly { day: number | null; mass: number | null }[]) =>
          callCell(massTrend, down(log.map(({ day }) => day && FIRST + day)), down(log.map(({ mass }) => mass)));
        const known = of(rows.map(({ day, mass }) => ({ day: day + 1, mass }))) as number;
        const messy = [
          ...rows.map(({ day, mass }) => ({ day: day + 1, mass })),
          { day: 7, mass: null },
          { day: null, mass: null },
        ]
          .map((entry) => ({ entry, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ entry }) => entry);
        expect(of(messy)).toBeCloseTo(known, 9);
      },
    ),
  );
});

test("two weights on one day both count: their pair has no slope, their other pairs have", () => {
  // By hand: from 100 to 110 in 10 days is 1 a day, from 104 it is 0.6; the median of two slopes is their mean.
  expect(callCell(massTrend, dated([0, 0, 10]), down([100, 104, 110]), 1)).toBeCloseTo((1 + 0.6) / 2, 12);
});

test("what cannot be answered, with its place", () => {
  const days = dated([0, 7, 14]);
  expect(callCell(massTrend, days, down([100, 101]))).toBe(
    "#VALUE! dates holds 3 cells and masses 2: give as many of each",
  );
  expect(callCell(massTrend, down([FIRST, null, FIRST + 9]), down([100, 101, 102]))).toBe(
    "#N/A row 2 of dates is blank",
  );
  expect(callCell(massTrend, days, down([100, null, 102]))).toBe("#N/A masses holds 2 with a date: give three or more");
  expect(callCell(massTrend, dated([5, 5, 5]), down([100, 101, 102]))).toMatch(
    /^#VALUE! dates holds \d{4}-\d\d-\d\d throughout: give weighings of several days$/,
  );
  expect(callCell(massTrend, days, down([100, "101 g", 102]))).toMatch(/^#VALUE! row 2 of masses holds '101 g'/);
  expect(callCell(massTrend, days, down([null, null, null]))).toBe("#N/A masses is blank");
  expect(callCell(massTrend, down([null]), down([null]))).toBe("");
});
