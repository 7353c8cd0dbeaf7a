import { columns, defineFunction, quantity, unitsParameter } from "../define";
import { Problem } from "../problem";
import { swapped } from "../shared/swapped";
import { isGap, joinedUpTo, LONGEST_GAP, READING, readingTemperatures, readingTimes } from "./shared/readingRange";
import { seriesOf, type Series } from "./shared/series";

/** The share that lies above the limit of a straight line from `a` to `b`, one of which does. */
const shareAbove = (a: number, b: number, limit: number): number => {
  if (a >= limit && b >= limit) return 1;
  const most = Math.max(a, b);
  return (most - limit) / (most - Math.min(a, b));
};

/** Times in days, degrees times days; a gap belongs to none but `uncovered`. */
interface Outside {
  readonly below: number;
  readonly above: number;
  readonly longestBelow: number;
  readonly longestAbove: number;
  readonly degreesBelow: number;
  readonly degreesAbove: number;
  readonly uncovered: number;
  readonly lowest: number;
  readonly highest: number;
}

/** The mean height over the limit of the part above it of a line: a trapezoid, or a triangle whose other end is at the limit. */
const heightAbove = (a: number, b: number, limit: number): number =>
  (Math.max(a - limit, 0) + Math.max(b - limit, 0)) / 2;

/** One walk over the readings. It does nothing else, because a walk that does is compiled anew at every call. */
const outside = ({ times, temperatures }: Series, low: number, high: number, longestGap: number): Outside => {
  let below = 0;
  let above = 0;
  let [spellBelow, spellAbove] = [0, 0];
  let [longestBelow, longestAbove] = [0, 0];
  let [degreesBelow, degreesAbove] = [0, 0];
  let uncovered = 0;
  let time = times[0] as number;
  let temperature = temperatures[0] as number;
  let lowest = temperature;
  let highest = temperature;
  for (let i = 1; i < times.length; i++) {
    const before = temperature;
    const length = (times[i] as number) - time;
    time = times[i] as number;
    temperature = temperatures[i] as number;
    if (temperature < lowest) lowest = temperature;
    if (temperature > highest) highest = temperature;
    if (isGap(length, longestGap)) {
      uncovered += length;
      spellBelow = 0;
      spellAbove = 0;
      continue;
    }
    if (before < low || temperature < low) {
      const share = shareAbove(-before, -temperature, -low);
      below += share * length;
      degreesBelow += heightAbove(-before, -temperature, -low) * share * length;
      spellBelow = (before < low ? spellBelow : 0) + share * length;
      if (spellBelow > longestBelow) longestBelow = spellBelow;
    }
    if (before > high || temperature > high) {
      const share = shareAbove(before, temperature, high);
      above += share * length;
      degreesAbove += heightAbove(before, temperature, high) * share * length;
      spellAbove = (before > high ? spellAbove : 0) + share * length;
      if (spellAbove > longestAbove) longestAbove = spellAbove;
    }
  }
  return { below, above, longestBelow, longestAbove, degreesBelow, degreesAbove, uncovered, lowest, highest };
};

export const timeOutside = defineFunction({
  name: "TIMEOUTSIDE",
  summary: "Hours and degree-hours below and above two limits, the longest spell of each, and the hours not covered.",
  parameters: {
    times: readingTimes,
    temperatures: readingTemperatures,
    low: quantity("celsius", "Lowest temperature that is right", READING),
    high: quantity("celsius", "Highest temperature that is right", READING),
    longestGap: joinedUpTo,
    units: unitsParameter,
  },
  result: columns(
    { name: "Hours below", unit: "hour", about: "Time under the low limit" },
    { name: "Hours above", unit: "hour", about: "Time over the high limit" },
    { name: "Longest above", unit: "hour", about: "Longest unbroken time over the high limit; a gap breaks it" },
    { name: "Lowest", unit: "celsius", about: "Lowest reading" },
    { name: "Highest", unit: "celsius", about: "Highest reading" },
    { name: "Degree-hours above", unit: "degreeHour", about: "Degrees over the high limit times hours" },
    { name: "Hours not covered", unit: "hour", about: "Time in gaps, of which nothing is assumed" },
    { name: "Skipped", unit: "none", about: "Rows without a temperature, or without a time, that can be read" },
    { name: "Longest below", unit: "hour", about: "Longest unbroken time under the low limit; a gap breaks it" },
    { name: "Degree-hours below", unit: "degreeHour", about: "Degrees under the low limit times hours" },
  ),
  sources: ["definition", "practice"],
  cautions: ["probePlace", "skippedReadings"],
  examples: [
    {
      given: [
        [["2026-11-02T08:00"], ["2026-11-02T10:00"], ["2026-11-02T12:00"], ["2026-11-02T20:00"]],
        [[6], [10], [6], [4]],
        5,
        8,
      ],
      gives: [[0, 2, 2, 4, 10, 2, 8, 0, 0, 0]],
      within: 1e-6,
    },
  ],
  calculate({ times, temperatures, low, high, longestGap = LONGEST_GAP, units }) {
    const fault = swapped(["low", low], ["high", high], "celsius", units);
    if (fault) return fault;
    const series = seriesOf(times, temperatures);
    if (series instanceof Problem) return series;
    const found = outside(series, low, high, longestGap);
    const skipped = series.skipped.length + series.untimed;
    return [
      found.below * 24,
      found.above * 24,
      found.longestAbove * 24,
      found.lowest,
      found.highest,
      found.degreesAbove * 24,
      found.uncovered * 24,
      skipped,
      found.longestBelow * 24,
      found.degreesBelow * 24,
    ];
  },
});
