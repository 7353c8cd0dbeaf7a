import { columns, defineFunction, optional, quantity, unitsParameter } from "../define";
import { Problem } from "../problem";
import { swapped } from "../shared/swapped";
import { isGap, LONGEST_GAP, READING, readingTemperatures, readingTimes } from "./shared/readingRange";
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
  readonly longest: number;
  readonly degrees: number;
  readonly uncovered: number;
  readonly lowest: number;
  readonly highest: number;
}

/** One walk over the readings. It does nothing else, because a walk that does is compiled anew at every call. */
const outside = ({ times, temperatures }: Series, low: number, high: number, longestGap: number): Outside => {
  let below = 0;
  let above = 0;
  let spell = 0;
  let longest = 0;
  let degrees = 0;
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
      spell = 0;
      continue;
    }
    if (before < low || temperature < low) below += shareAbove(-before, -temperature, -low) * length;
    if (before <= high && temperature <= high) continue;
    const share = shareAbove(before, temperature, high);
    above += share * length;
    // The part above is a trapezoid, or a triangle whose other end is at the limit.
    degrees += ((Math.max(before - high, 0) + Math.max(temperature - high, 0)) / 2) * share * length;
    spell = (before > high ? spell : 0) + share * length;
    if (spell > longest) longest = spell;
  }
  return { below, above, longest, degrees, uncovered, lowest, highest };
};

export const timeOutside = defineFunction({
  name: "TIMEOUTSIDE",
  summary: "Hours below and above two limits, the longest spell above, and the hours that the readings do not cover.",
  parameters: {
    times: readingTimes,
    temperatures: readingTemperatures,
    low: quantity("celsius", "Lowest temperature that is right", READING),
    high: quantity("celsius", "Highest temperature that is right", READING),
    longestGap: optional(
      quantity("minute", "Minutes between two readings up to which they are joined", [0, 100_000]),
      `${LONGEST_GAP}`,
    ),
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
      gives: [[0, 2, 2, 4, 10, 2, 8, 0]],
      within: 1e-6,
    },
  ],
  calculate({ times, temperatures, low, high, longestGap = LONGEST_GAP, units }) {
    const fault = swapped(["low", low], ["high", high], "celsius", units);
    if (fault) return fault;
    const series = seriesOf(times, temperatures);
    if (series instanceof Problem) return series;
    const { below, above, longest, degrees, uncovered, lowest, highest } = outside(series, low, high, longestGap);
    const skipped = series.skipped.length + series.untimed;
    return [below * 24, above * 24, longest * 24, lowest, highest, degrees * 24, uncovered * 24, skipped];
  },
});
