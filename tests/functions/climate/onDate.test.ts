import fc from "fast-check";
import { onDate } from "../../../functions/climate/onDate";
import { isoOf, serial } from "../../../functions/dates";
import { call, callCell, down } from "../../call";
import { lebanonDays, lebanonMonths } from "../../normals";
import { mean, rms } from "../../statistics";
import curves from "../../tables/monthlyCurves.json";
import { yardstick, yardstickOf } from "../../yardstick";

const yearOf = (year: number): number[] => {
  const first = serial(year, 1, 1);
  return Array.from({ length: serial(year + 1, 1, 1) - first }, (_, i) => first + i);
};
const curve = (months: readonly number[], days: readonly number[]): number[] =>
  call(onDate, [months], down(days)).map(([value]) => value as number);

/**
 * NOAA daily normals 1991-2020, Lebanon NH (US Government work), from its monthly normals. They are harmonic fits
 * rounded to 0.1 °F, so no curve meets them exactly; 0.15 K is a third of what straight lines between mid-months reach
 * (0.38 to 0.41 K). On no day farther off than such lines are on average.
 */
describe("NOAA daily normals 1991-2020", () => {
  const days = yearOf(2000); // a leap year, as the normals have a 29 February

  test("both tables are whole", () => {
    expect(lebanonMonths.high).toHaveLength(12);
    expect(lebanonDays.dates).toEqual(days.map((day) => isoOf(day).slice(5)));
  });

  describe.each(["high", "low", "mean"] as const)("%s", (element) => {
    const off = curve(lebanonMonths[element], days).map((value, i) => value - (lebanonDays[element][i] ?? NaN));
    yardstickOf(
      onDate,
      {
        against: `NOAA daily normals 1991-2020, ${element}s`,
        figure: "RMSE of the days",
        least: 0,
        most: 0.15,
        unit: "K",
      },
      () => ({ figure: rms(off), values: off.length }),
    );
    test(`at most ${Math.max(...off.map(Math.abs)).toFixed(2)} K`, () =>
      expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.4));
  });
});

// The same arithmetic by the spline of SciPy; ten decimals are given.
yardstick(onDate, { against: "the spline of SciPy", within: 1e-8, unit: "K" }, () =>
  curves.rows.map(({ series, day, spline }) => {
    const months = curves.means[series as keyof typeof curves.means];
    return [callCell(onDate, [months], serial(2026, 1, day)) as number, spline];
  }),
);

// Other published methods (Epstein 1991; Lai & Kaplan 2022) draw other curves through the same means: up to 1 K at the
// turning points.
test.each(curves.rows)("other methods: $series, day $day", ({ series, day, epstein, newspline }) => {
  const months = curves.means[series as keyof typeof curves.means];
  const value = callCell(onDate, [months], serial(2026, 1, day)) as number;
  expect(Math.abs(value - epstein)).toBeLessThan(1);
  expect(Math.abs(value - newspline)).toBeLessThan(1);
});

const anyMonths = fc.array(fc.double({ min: -90, max: 60, noNaN: true }), { minLength: 12, maxLength: 12 });

test.each([2025, 2026, 1900, 2000, 2024, 2028, 2100, 9999])(
  "the days of each month of %i average to its mean",
  (year) =>
    fc.assert(
      fc.property(anyMonths, (months) => {
        const days = yearOf(year).filter((day) => day >= 61);
        const values = curve(months, days);
        for (const [i, month] of months.entries()) {
          if (year === 1900 && i < 2) continue; // before the first day that a sheet counts rightly
          const own = values.filter((_, j) => Number(isoOf(days[j] as number).slice(5, 7)) === i + 1);
          expect(Math.abs(mean(own) - month)).toBeLessThan(1e-9 * Math.max(1, ...months.map(Math.abs)));
        }
      }),
      { numRuns: 25 },
    ),
);

// New year, and the step from a leap year's curve to a common one's: no jump beyond the slope of the curve.
test("the year closes on itself", () => {
  const months = curves.means.seattle;
  for (const year of [2026, 2027, 2028]) {
    const [before, last, first, after] = curve(
      months,
      [-2, -1, 0, 1].map((i) => serial(year + 1, 1, 1) + i),
    ) as [number, number, number, number];
    expect(Math.abs(first - last - (last - before + after - first) / 2)).toBeLessThan(0.01);
  }
});

test("a flat year is flat, and months in a column serve as well as in a row", () => {
  expect(callCell(onDate, [Array(12).fill(7.5)], "2026-07-09")).toBe(7.5);
  const months = curves.means.seattle;
  expect(callCell(onDate, down(months), "2026-07-09")).toBe(callCell(onDate, [months], "2026-07-09"));
});

test("months that are eleven, or hold a blank or text", () => {
  expect(callCell(onDate, [Array(11).fill(7)], "2026-07-09")).toBe(
    "#VALUE! months holds 11 cells: give 12, January to December",
  );
  expect(callCell(onDate, [[1, 2, 3, 4, 5, 6, null, 8, 9, 10, 11, 12]], "2026-07-09")).toBe(
    "#N/A month 7 of months is blank",
  );
  expect(callCell(onDate, [[1, 2, 3, 4, 5, 6, "warm", 8, 9, 10, 11, 12]], "2026-07-09")).toMatch(
    /^#VALUE! month 7 of months holds 'warm': give a number/,
  );
  expect(callCell(onDate, [Array(12).fill(7)], "1900-02-28")).toMatch(
    /^#VALUE! dates holds '1900-02-28': give a date from 1900-03-01/,
  );
});

test.each([
  [2000, 29],
  [2100, 28],
  [2200, 28],
  [2400, 29],
])("February %i has %i days, whose mean is the month's", (year, length) => {
  const months = [-3, 1, 6, 12, 17, 21, 23, 22, 17, 11, 5, -1];
  const days = Array.from({ length }, (_, i) => serial(year, 2, 1) + i);
  expect(days.at(-1)).toBe(serial(year, 3, 1) - 1);
  expect(mean(curve(months, days))).toBeCloseTo(1, 9);
});
