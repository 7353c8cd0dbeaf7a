import fc from "fast-check";
import { timeOutside } from "../../../functions/readings/timeOutside";
import { call, down } from "../../call";
import { isoOf } from "../../../functions/dates";
import { outside } from "../../tables/plansAndSeries.json";
import { yardstick, type Pair } from "../../yardstick";
import { anyLog, anyMixedLog, worcester, type Log } from "./logs";

type Row = readonly [number, number, number, number, number, number, number, number, number, number];
const answer = ({ times, temperatures }: Log, low: number, high: number, longestGap?: number): Row =>
  call(timeOutside, down(times), down(temperatures), low, high, longestGap)[0] as unknown as Row;

const sorted = ({ times, temperatures }: Log): Log => {
  const order = [...times.keys()].sort(
    (a, b) => (times[a] as number) - (times[b] as number) || (temperatures[a] as number) - (temperatures[b] as number),
  );
  return { times: order.map((i) => times[i] as number), temperatures: order.map((i) => temperatures[i] as number) };
};

/** The same figures the slow way: a straight line cut into seconds, each of which lies above, below or between. */
const bySeconds = (log: Log, low: number, high: number, longestGap: number) => {
  const { times, temperatures } = sorted(log);
  let [below, above, degrees, uncovered, spell, longest] = [0, 0, 0, 0, 0, 0];
  for (let i = 1; i < times.length; i++) {
    const seconds = Math.round(((times[i] as number) - (times[i - 1] as number)) * 86_400);
    if (seconds > longestGap * 60) {
      uncovered += seconds;
      spell = 0;
      continue;
    }
    const [from, to] = [temperatures[i - 1] as number, temperatures[i] as number];
    for (let second = 0; second < seconds; second++) {
      const temperature = from + ((to - from) * (second + 0.5)) / seconds;
      if (temperature < low) below++;
      if (temperature > high) {
        above++;
        degrees += temperature - high;
        spell++;
        longest = Math.max(longest, spell);
      } else {
        spell = 0;
      }
    }
  }
  return {
    below: below / 3600,
    above: above / 3600,
    degrees: degrees / 3600,
    uncovered: uncovered / 3600,
    longest: longest / 3600,
  };
};

test("agrees with a straight line cut into seconds", () => {
  fc.assert(
    fc.property(anyLog, fc.integer({ min: 1, max: 600 }), (log, longestGap) => {
      const [low, high] = [9.95, 24.95]; // between the tenths of the log, so that no reading lies on a limit
      const [below, above, longest, , , degrees, uncovered] = answer(log, low, high, longestGap);
      const wanted = bySeconds(log, low, high, longestGap);
      // A crossing is caught to the second: two of them an interval, 120 intervals at most, 450 K above at most.
      const tolerance = (2 * 120) / 3600;
      expect(Math.abs(below - wanted.below)).toBeLessThan(tolerance);
      expect(Math.abs(above - wanted.above)).toBeLessThan(tolerance);
      expect(Math.abs(degrees - wanted.degrees)).toBeLessThan(tolerance);
      expect(Math.abs(uncovered - wanted.uncovered)).toBeLessThan(1e-6);
      expect(Math.abs(longest - wanted.longest)).toBeLessThan(tolerance);
    }),
    { numRuns: 60 },
  );
});

test("by definition, to the digit: a ramp up and down", () => {
  // 8:00 10 °C, 9:00 30 °C, 10:00 10 °C; above 25: 15 minutes on either side, a triangle of 5 K by half an hour.
  const log = { times: [8, 9, 10].map((hour) => 46_000 + hour / 24), temperatures: [10, 30, 10] };
  const row = answer(log, 15, 25);
  // Below 15: likewise.
  for (const [i, wanted] of [0.5, 0.5, 0.5, 10, 30, 1.25, 0, 0, 0.25, 1.25].entries())
    expect(row[i]).toBeCloseTo(wanted, 6);
});

test("a constant above, at and below the limits", () => {
  const at = (temperature: number): Row =>
    answer(
      { times: [0, 1, 2].map((hour) => 46_000 + hour / 24), temperatures: Array(3).fill(temperature) as number[] },
      15,
      25,
    );
  expect(at(30).map((one) => Number(one.toFixed(6)))).toEqual([0, 2, 2, 30, 30, 10, 0, 0, 0, 0]);
  expect(at(25)).toEqual([0, 0, 0, 25, 25, 0, 0, 0, 0, 0]);
  expect(at(15)).toEqual([0, 0, 0, 15, 15, 0, 0, 0, 0, 0]);
  expect(at(10).map((one) => Number(one.toFixed(6)))).toEqual([2, 0, 0, 10, 10, 0, 0, 0, 2, 10]);
});

test("two spells: the longer one is answered, and a gap ends one", () => {
  const hours = [0, 1, 2, 3, 4, 5, 6, 12, 13];
  const temperatures = [30, 30, 10, 30, 30, 30, 30, 30, 30];
  const row = answer({ times: hours.map((hour) => 46_000 + hour / 24), temperatures }, 15, 25);
  // 1 h level and 15 minutes down; 15 minutes up and 3 h level; 6 h of silence; 1 h level.
  expect(row[1]).toBeCloseTo(1.25 + 3.25 + 1, 6);
  expect(row[2]).toBeCloseTo(3.25, 6);
  expect(row[6]).toBeCloseTo(6, 6);
});

test("properties: order of rows, shares of the whole, and the mirror image", () => {
  fc.assert(
    fc.property(anyMixedLog, ([log, mixed]) => {
      const row = answer(log, 10, 25);
      expect(answer(mixed, 10, 25)).toEqual(row);
      const [below, above, longest, lowest, highest, degrees, uncovered] = row;
      const span = (Math.max(...log.times) - Math.min(...log.times)) * 24;
      expect(below + above + uncovered).toBeLessThanOrEqual(span + 1e-6);
      expect(longest).toBeLessThanOrEqual(above + 1e-9);
      expect([lowest, highest]).toEqual([Math.min(...log.temperatures), Math.max(...log.temperatures)]);
      expect(degrees).toBeLessThanOrEqual(above * Math.max(0, highest - 25) + 1e-6);
      // Turned upside down, above and below change places; not so where a moment has two readings, taken low to high.
      if (new Set(log.times).size < log.times.length) return;
      const turned = answer({ ...log, temperatures: log.temperatures.map((one) => 35 - one) }, 10, 25);
      expect(turned[0]).toBeCloseTo(above, 6);
      expect(turned[1]).toBeCloseTo(below, 6);
      expect([turned[8], turned[9]]).toEqual([expect.closeTo(longest, 6), expect.closeTo(degrees, 6)]);
      expect([row[8], row[9]]).toEqual([expect.closeTo(turned[2], 6), expect.closeTo(turned[5], 6)]);
    }),
    { numRuns: 200 },
  );
});

test("one reading covers no time, and its figure is still seen", () => {
  expect(call(timeOutside, 46_000.5, 40, 15, 25)).toEqual([[0, 0, 0, 40, 40, 0, 0, 0, 0, 0]]);
});

test("one reading a day is all gap, unless a day may pass between two", () => {
  const log = { times: [46_000, 46_001, 46_002], temperatures: [30, 30, 30] };
  expect(answer(log, 15, 25)[6]).toBeCloseTo(48, 6);
  expect(answer(log, 15, 25, 1440)[1]).toBeCloseTo(48, 6);
});

test("rows that cannot be read are counted, and never count as cold", () => {
  const times = down([0, 1, 2, 3].map((hour) => 46_000 + hour / 24));
  const [row] = call(timeOutside, [...times, ["noon"]], down([20, null, "lost", 20, 40]), 15, 25);
  expect(row).toEqual([0, 0, 0, 20, 20, 0, 0, 3, 0, 0]);
});

test("low above high says so", () => {
  for (const cell of call(timeOutside, 46_000, 20, 25, 15).flat()) {
    expect(cell).toBe("#VALUE! low holds 25 °C, above high 15 °C: are they swapped?");
  }
});

test("several limits at once answer a row each", () => {
  const rows = call(timeOutside, down([46_000, 46_000.05]), down([20, 20]), down([15, 22]), down([25, 30]));
  expect(rows.map((row) => Number((row[0] as number).toFixed(6)))).toEqual([0, 1.2]);
});

test("to touch the high limit is not to be above it: the spell ends there", () => {
  // An hour above until it touches 25 °C, then two hours above until it stays there.
  const log = { times: [0, 1, 2, 3, 4].map((hour) => 46_000 + hour / 24), temperatures: [30, 25, 30, 25, 25] };
  const [, above, longest] = answer(log, 15, 25);
  expect(above).toBeCloseTo(3, 6);
  expect(longest).toBeCloseTo(2, 6);
});

// Two months of real hours, their lines cut into seconds by numpy. 0.02 h: a crossing is caught to the second, twice a day.
yardstick(timeOutside, { against: "NOAA hourly normals, by numpy 1.24.2 interp", within: 0.02, unit: "h" }, () =>
  outside.flatMap(({ month, low, high, ...wanted }): Pair[] => {
    const { times, temperatures } = worcester();
    const own = times.flatMap((time, i) => (isoOf(time).slice(5, 7) === month ? [i] : []));
    const log = { times: own.map((i) => times[i] as number), temperatures: own.map((i) => temperatures[i] as number) };
    const [below, above, longestAbove, , , degreesAbove, , , longestBelow, degreesBelow] = answer(log, low, high);
    return [
      [below, wanted.below],
      [above, wanted.above],
      [longestAbove, wanted.longestAbove],
      [degreesAbove, wanted.degreesAbove],
      [longestBelow, wanted.longestBelow],
      [degreesBelow, wanted.degreesBelow],
    ];
  }),
);
