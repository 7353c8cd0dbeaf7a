import { daily } from "../../../functions/climate/daily";
import { onDate } from "../../../functions/climate/onDate";
import { isoOf } from "../../../functions/dates";
import { call, callCell, down } from "../../call";
import { lebanonDays, lebanonMonths } from "../../normals";
import { mean, rms } from "../../statistics";
import curves from "../../tables/monthlyCurves.json";
import { yardstick, yardstickOf } from "../../yardstick";

const MONTHS = curves.means.seattle;

test.each([
  [2026, 365],
  [2028, 366],
  [1904, 366],
  [2100, 365],
])("%i has %i days, each with ONDATE's value", (year, length) => {
  const rows = call(daily, [MONTHS], year);
  expect(rows).toHaveLength(length);
  expect([rows[0]?.[0], rows.at(-1)?.[0]].map((day) => isoOf(day as number))).toEqual([
    `${year}-01-01`,
    `${year}-12-31`,
  ]);
  expect(rows.map(([, value]) => [value])).toEqual(call(onDate, [MONTHS], down(rows.map(([day]) => day))));
});

// NOAA daily normals 1991-2020, Lebanon NH (US Government work); 0.15 K as for ONDATE.
yardstickOf(
  daily,
  { against: "NOAA daily normals 1991-2020", figure: "RMSE of the days' means", least: 0, most: 0.15, unit: "K" },
  () => {
    const rows = call(daily, [lebanonMonths.mean], 2000);
    expect(rows).toHaveLength(lebanonDays.mean.length);
    const off = rows.map(([, value], i) => (value as number) - (lebanonDays.mean[i] ?? NaN));
    return { figure: rms(off), values: off.length };
  },
);

// Ten decimals are given.
yardstick(daily, { against: "the spline of SciPy", within: 1e-8, unit: "K" }, () => {
  const days = call(daily, [MONTHS], 2026);
  return curves.rows
    .filter(({ series }) => series === "seattle")
    .map(({ day, spline }) => [days[day - 1]?.[1] as number, spline]);
});

test("February of a leap year averages to its mean", () => {
  const february = call(daily, [MONTHS], 2028).filter(([day]) => isoOf(day as number).startsWith("2028-02"));
  expect(february).toHaveLength(29);
  expect(mean(february.map(([, value]) => value as number))).toBeCloseTo(MONTHS[1] as number, 10);
});

test("a year that is no whole number, or out of the calendar", () => {
  expect(callCell(daily, [MONTHS], 2026.5)).toBe("#VALUE! year holds 2026.5: give a whole number from 1901 to 9998");
  expect(callCell(daily, [MONTHS], 1900)).toBe("#VALUE! year holds 1900: give a whole number from 1901 to 9998");
});
