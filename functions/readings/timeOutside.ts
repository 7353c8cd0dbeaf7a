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

/** The mean height over the limit of the part above it of a line: a trapezoid, or a triangle whose other end is at the limit. */
const heightAbove = (a: number, b: number, limit: number): number =>
  (Math.max(a - limit, 0) + Math.max(b - limit, 0)) / 2;

/** What lies above a limit, in days and degrees times days. What lies below one lies above it with the signs turned. */
class Above {
  days = 0;
  degrees = 0;
  longest = 0;
  private spell = 0;

  constructor(private readonly limit: number) {}

  /** A straight line of so many days from `a` to `b`. */
  join(a: number, b: number, length: number): void {
    const { limit } = this;
    if (a <= limit && b <= limit) return;
    const days = shareAbove(a, b, limit) * length;
    this.days += days;
    this.degrees += heightAbove(a, b, limit) * days;
    this.spell = (a > limit ? this.spell : 0) + days;
    if (this.spell > this.longest) this.longest = this.spell;
  }

  /** A gap, of which nothing is assumed. */
  part(): void {
    this.spell = 0;
  }
}

interface Outside {
  readonly below: Above;
  readonly above: Above;
  uncovered: number;
  lowest: number;
  highest: number;
}

/** Readings that are walked at once: the engine compiles for good what is called often, and one long walk anew at every call. */
const STRETCH = 1000;

/** Adds the lines that lead to the readings of one stretch. */
const walk = ({ times, temperatures }: Series, first: number, longestGap: number, found: Outside): void => {
  const { below, above } = found;
  const end = Math.min(first + STRETCH, times.length);
  let { lowest, highest } = found;
  let time = times[first - 1] as number;
  let temperature = temperatures[first - 1] as number;
  for (let i = first; i < end; i++) {
    const before = temperature;
    const length = (times[i] as number) - time;
    time = times[i] as number;
    temperature = temperatures[i] as number;
    if (temperature < lowest) lowest = temperature;
    if (temperature > highest) highest = temperature;
    if (isGap(length, longestGap)) {
      found.uncovered += length;
      below.part();
      above.part();
    } else {
      below.join(-before, -temperature, length);
      above.join(before, temperature, length);
    }
  }
  found.lowest = lowest;
  found.highest = highest;
};

const outside = (series: Series, low: number, high: number, longestGap: number): Outside => {
  const [first] = series.temperatures as unknown as [number];
  const found = { below: new Above(-low), above: new Above(high), uncovered: 0, lowest: first, highest: first };
  for (let i = 1; i < series.times.length; i += STRETCH) walk(series, i, longestGap, found);
  return found;
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
    const { below, above, lowest, highest, uncovered } = outside(series, low, high, longestGap);
    const skipped = series.skipped.length + series.untimed;
    return [
      below.days * 24,
      above.days * 24,
      above.longest * 24,
      lowest,
      highest,
      above.degrees * 24,
      uncovered * 24,
      skipped,
      below.longest * 24,
      below.degrees * 24,
    ];
  },
});
