import { median24 } from "../../../functions/climate/median24";
import { cautions } from "../../../functions/cautions";
import { callCell } from "../../call";
import { lebanonDays, seattleDays, worcesterDays } from "../../normals";
import { mean, median } from "../../statistics";
import climat from "../../tables/midRange.json";
import { yardstick } from "../../yardstick";

const midPoint = (high: number, low: number): number => callCell(median24, high, low) as number;

test("is the middle, in either system", () => {
  expect(midPoint(18.5, 7)).toBe(12.75);
  expect(callCell(median24, 68, 50, "imperial")).toBeCloseTo(59, 9);
  expect(callCell(median24, 7, 18.5)).toMatch(/^#VALUE! low holds 18.5 °C, above high 7 °C/);
});

// CLIMAT reports: what the caution says is what was measured, to the tenth that it gives.
test("the caution tells how far a mid-point is from a mean", () => {
  const { p05, p95 } = climat.percentiles;
  expect(cautions.midPoint).toContain(`nine in ten lie ${(-p05).toFixed(1)} K below to ${p95.toFixed(1)} K above`);
  // 2071 stations, less the 460 that report the mid-point as their mean.
  expect(climat.source).toMatch(/2071 stations.* the 460 stations that report the mid-point/);
  expect(cautions.midPoint).toContain(`of the months reported by ${2071 - 460} stations`);
});

test("in Germany, where hours are averaged, nine in ten lie as near as the caution says, in every month", () => {
  const german = climat.rows.filter(({ country }) => country === "Germany");
  expect(german).toHaveLength(12);
  const farthest = Math.max(...german.flatMap(({ p05, p95 }) => [-p05, p95]));
  expect(cautions.midPoint).toContain(`in Germany, where hours are averaged, ${farthest.toFixed(1)} K either way`);
});

/**
 * NOAA hourly normals (US Government work): Worcester MA, and Seattle as the npm package vega-datasets has it. The
 * mid-points of normals, month by month, must lie inside the caution.
 */
describe.each([
  ["Worcester", worcesterDays.map(([, hours]) => hours)],
  ["Seattle", seattleDays.map(([, hours]) => hours)],
])("at %s", (_, days) => {
  const months = Array.from({ length: 12 }, (_, i) => days.slice(Math.round(i * 30.4), Math.round((i + 1) * 30.4)));
  const off = (truth: (hours: readonly number[]) => number): number[] =>
    months.map((month) => mean(month.map((hours) => midPoint(Math.max(...hours), Math.min(...hours)) - truth(hours))));

  test("there are twelve months of days", () =>
    expect(Math.min(...months.map((month) => month.length))).toBeGreaterThanOrEqual(25));

  const offMean = off(mean);
  test(`is ${Math.min(...offMean).toFixed(2)} to ${Math.max(...offMean).toFixed(2)} K off the mean of the hours`, () => {
    expect(Math.min(...offMean)).toBeGreaterThanOrEqual(-0.3);
    expect(Math.max(...offMean)).toBeLessThanOrEqual(1.0);
  });

  const offMedian = off(median);
  test(`is up to ${Math.max(...offMedian).toFixed(2)} K above the median of the hours`, () => {
    expect(Math.max(...offMedian)).toBeLessThanOrEqual(1.8);
    expect(Math.min(...offMedian)).toBeGreaterThanOrEqual(-0.3);
  });
});

// The 1.8 K of the caution come from San Francisco, whose fog cuts the afternoon short.
test("San Francisco's mid-points stand as far above the median as the caution says, and no farther", () => {
  const { rows } = climat.sanFrancisco;
  expect(cautions.midPoint).toContain(`${Math.max(...rows.map(({ lessMedian }) => lessMedian)).toFixed(1)} K lower`);
  expect(Math.max(...rows.map(({ lessMean }) => lessMean))).toBeLessThanOrEqual(1.0);
});

// The US service calls the mid-point of its highs and lows the mean. 0.06 K: all three are rounded to 0.1 °F apart.
yardstick(median24, { against: "NOAA daily normals 1991-2020, Lebanon NH: their mean", within: 0.06, unit: "K" }, () =>
  lebanonDays.mean.map(
    (wanted, day) => [midPoint(lebanonDays.high[day] as number, lebanonDays.low[day] as number), wanted] as const,
  ),
);
