import { grounds, dampingDepth } from "../../../functions/climate/shared/ground";
import { onDate } from "../../../functions/climate/onDate";
import { underground } from "../../../functions/climate/underground";
import { serial } from "../../../functions/dates";
import { call, down } from "../../call";
import measured from "../../tables/soilTemperatures.json";
import curves from "../../tables/monthlyCurves.json";
import { yardstick, yardstickOf } from "../../yardstick";

type Row = readonly [high: number, low: number, mean: number];
const at = (highs: readonly number[], lows: readonly number[], depth: number, ground?: unknown): Row[] =>
  call(underground, down(highs), down(lows), depth, ground) as unknown as Row[];

const DAY = 86_400;
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Uniform ground under a surface whose temperature is given, by the scheme of Crank and Nicolson: what the heat equation
 * says, without a sine in it. `surface` is asked for each step, in seconds; `seen` gets the temperature at `depth` metres.
 */
const solve = ({
  diffusivity,
  depth,
  step,
  spacing,
  steps,
  start,
  surface,
  seen,
}: {
  readonly diffusivity: number;
  readonly depth: number;
  readonly step: number;
  readonly spacing: number;
  readonly steps: number;
  readonly start: number;
  readonly surface: (seconds: number) => number;
  readonly seen: (seconds: number, temperature: number) => void;
}): void => {
  // Eight damping depths of a year or a day, whichever the steps are for: nothing is left of the wave at the floor.
  const nodes =
    Math.ceil((8 * Math.sqrt((diffusivity * 1e-6 * (step > 3600 ? 365 : 1) * DAY) / Math.PI)) / spacing) + 2;
  const r = (diffusivity * 1e-6 * step) / spacing ** 2 / 2;
  let now = new Float64Array(nodes).fill(start);
  const upper = new Float64Array(nodes);
  const right = new Float64Array(nodes);
  const index = Math.round(depth / spacing);
  for (let i = 1; i <= steps; i++) {
    upper[0] = 0;
    right[0] = surface(i * step);
    for (let n = 1; n < nodes; n++) {
      const isLast = n === nodes - 1; // no warmth goes through the floor
      const [above, here, below] = [now[n - 1] as number, now[n] as number, now[isLast ? n - 1 : n + 1] as number];
      const lower = isLast ? -2 * r : -r;
      const pivot = 1 + 2 * r - lower * (upper[n - 1] as number);
      upper[n] = isLast ? 0 : -r / pivot;
      right[n] = ((1 - 2 * r) * here + r * (above + below) - lower * (right[n - 1] as number)) / pivot;
    }
    const next = new Float64Array(nodes);
    for (let n = nodes - 1; n >= 0; n--) {
      next[n] = (right[n] as number) - (upper[n] as number) * (n === nodes - 1 ? 0 : (next[n + 1] as number));
    }
    now = next;
    seen(i * step, now[index] as number);
  }
};

/** Twelve monthly means at a depth: the daily curve of ONDATE on the surface, for six years, of which the last counts. */
const yearBelow = (means: readonly number[], depth: number, diffusivity: number): number[] => {
  const days = call(
    onDate,
    down(means),
    down(Array.from({ length: 365 }, (_, day) => serial(2027, 1, 1) + day)),
  ).flat();
  const step = DAY / 2;
  const sums = LENGTHS.map(() => 0);
  solve({
    diffusivity,
    depth: depth / 100,
    step,
    spacing: 0.05,
    steps: 6 * 365 * 2,
    start: means.reduce((sum, value, month) => sum + (value * (LENGTHS[month] as number)) / 365, 0),
    // The middle of a day has the day's value.
    surface: (seconds) => {
      const day = seconds / DAY - 0.5;
      const whole = Math.floor(day);
      const share = day - whole;
      const value = (index: number) => days[(index + 365) % 365] as number;
      return value(whole) * (1 - share) + value(whole + 1) * share;
    },
    seen: (seconds, temperature) => {
      if (seconds <= 5 * 365 * DAY) return;
      let day = Math.ceil(seconds / DAY - 1e-9) - 5 * 365;
      const month = LENGTHS.findIndex((length) => (day -= length) <= 0);
      sums[month] = (sums[month] as number) + temperature / (2 * (LENGTHS[month] as number));
    },
  });
  return sums;
};

// 0.05 K: the solution's own steps of half a day and 5 cm.
yardstick(underground, { against: "the heat equation by finite differences, a year", within: 0.05, unit: "K" }, () => {
  const means = curves.means.seattle;
  return (
    [
      ["clay", 10],
      ["clay", 100],
      ["litter", 50],
      ["sand", 200],
      ["stone", 500],
    ] as const
  ).flatMap(([ground, depth]) => {
    const wanted = yearBelow(means, depth, grounds[ground]);
    return at(means, means, depth, ground).map(([, , mean], month) => [mean, wanted[month] as number] as const);
  });
});

yardstick(underground, { against: "the heat equation by finite differences, a day", within: 0.05, unit: "K" }, () =>
  (
    [
      ["clay", 2],
      ["clay", 10],
      ["dry sand", 5],
      ["stone", 20],
    ] as const
  ).flatMap(([ground, depth]) => {
    const [low, high] = [4, 24];
    let [lowest, highest] = [Infinity, -Infinity];
    solve({
      diffusivity: grounds[ground],
      depth: depth / 100,
      step: 300,
      spacing: 0.005,
      steps: 12 * 288,
      start: 14,
      surface: (seconds) => 14 + 10 * Math.sin((2 * Math.PI * seconds) / DAY),
      seen: (seconds, temperature) => {
        if (seconds > 11 * DAY) [lowest, highest] = [Math.min(lowest, temperature), Math.max(highest, temperature)];
      },
    });
    const same = (value: number) => LENGTHS.map(() => value);
    const [answer] = at(same(high), same(low), depth, ground) as [Row];
    return [
      [answer[0], highest],
      [answer[1], lowest],
    ] as const;
  }),
);

/**
 * Sixty-six stations of the U.S. Climate Reference Network in 2020, open ground under grass: what the twelve highs and lows
 * of the air say of the soil, for one ground everywhere. The soil was 1.9 K warmer over the year: sun by day, snow in
 * winter. About 2.7 K off in a month, and nearer than the air itself. That network tells no highs and lows of the soil, so
 * the day's swing rests on the heat equation alone.
 */
const depths = [
  ["at10", 10, 2.6, 2.9],
  ["at50", 50, 2.4, 2.8],
  ["at100", 100, 2.6, 3],
] as const;
const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
for (const [key, depth, least, most] of depths) {
  const off = () =>
    measured.stations.flatMap((one) =>
      at(one.high, one.low, depth).map(([, , mean], month) => mean - (one[key][month] as number)),
    );
  yardstickOf(
    underground,
    {
      against: `U.S. Climate Reference Network 2020, soil at ${depth} cm`,
      figure: "root mean square of 66 stations' months",
      least,
      most,
      unit: "K",
    },
    () => ({ figure: rms(off()), values: off().length }),
  );
  test(`nearer than the air to soil at ${depth} cm, and 1.9 K colder over the year`, () => {
    const air = measured.stations.flatMap((one) =>
      one.high.map((high, month) => (high + (one.low[month] as number)) / 2 - (one[key][month] as number)),
    );
    expect(rms(off())).toBeLessThan(rms(air));
    const bias = off().reduce((sum, value) => sum + value, 0) / off().length;
    expect(bias).toBeCloseTo(-1.9, 0.5);
  });
}

/**
 * Barry & Chorley, Atmosphere, Weather and Climate (a page of it was read): the day is felt down to about 0.5 m in wet soil
 * and 0.2 m in dry sand, the year down to about 3 m in dry sand. "Felt" is no figure: here 2 to 15 % is left there.
 */
yardstickOf(
  underground,
  {
    against: "Barry & Chorley, depths of the day and the year",
    figure: "largest share left",
    least: 0.02,
    most: 0.15,
    unit: "share",
  },
  () => {
    const same = (value: number) => LENGTHS.map(() => value);
    const year = LENGTHS.map((_, month) => -10 * Math.cos((2 * Math.PI * (month + 0.5)) / 12));
    const left = [
      (at(same(10), same(-10), 50, 0.85)[0] as Row)[0] / 10,
      (at(same(10), same(-10), 20, "dry sand")[0] as Row)[0] / 10,
      Math.max(...at(year, year, 300, "dry sand").map(([, , mean]) => mean)) / 10,
    ];
    expect(Math.min(...left)).toBeGreaterThan(0.02);
    return { figure: Math.max(...left), values: left.length };
  },
);

const station = measured.stations[40] as (typeof measured.stations)[number];

test("at 0 cm it answers what it was given", () => {
  for (const [month, [high, low, mean]] of at(station.high, station.low, 0, "stone").entries()) {
    expect(high).toBeCloseTo(station.high[month] as number, 10);
    expect(low).toBeCloseTo(station.low[month] as number, 10);
    expect(mean).toBeCloseTo(((station.high[month] as number) + (station.low[month] as number)) / 2, 10);
  }
});

test("deeper: a smaller swing, a smaller year, a later summer, and the mean of the year stays", () => {
  const range = (rows: readonly Row[]) =>
    Math.max(...rows.map(([, , mean]) => mean)) - Math.min(...rows.map(([, , mean]) => mean));
  const yearly = (rows: readonly Row[]) =>
    rows.reduce((sum, [, , mean], month) => sum + (mean * (LENGTHS[month] as number)) / 365, 0);
  const air = at(station.high, station.low, 0);
  let [wide, swing] = [range(air), (air[6] as Row)[0] - (air[6] as Row)[1]];
  for (const depth of [5, 10, 20, 50, 100, 200, 500]) {
    const rows = at(station.high, station.low, depth);
    expect(range(rows)).toBeLessThan(wide);
    const [high, low] = rows[6] as Row;
    expect(high - low).toBeLessThan(swing);
    [wide, swing] = [range(rows), high - low];
    expect(yearly(rows)).toBeCloseTo(yearly(air), 9);
  }
  const warmest = (rows: readonly Row[]) =>
    rows.findIndex(([, , mean]) => mean === Math.max(...rows.map((row) => row[2])));
  expect(warmest(at(station.high, station.low, 200))).toBeGreaterThan(warmest(air));
});

test("a year is felt √365 times as deep as a day: 19 times", () =>
  expect(dampingDepth(0.4, 365 * DAY) / dampingDepth(0.4, DAY)).toBeCloseTo(19.1, 1));

test("a word or its figure, in °F too; what cannot be", () => {
  expect(at(station.high, station.low, 30, 0.4)).toEqual(at(station.high, station.low, 30));
  expect(call(underground, down(station.high), down(station.low), 30, "chalk")[0]?.[0]).toMatch(
    /^#VALUE! ground holds 'chalk'/,
  );
  expect(call(underground, down(station.low), down(station.high), 30)[0]?.[0]).toMatch(
    /^#VALUE! month 1 of lows holds .*, above month 1 of highs .*: are they swapped\?$/,
  );
  expect(call(underground, down(station.high), down(station.low), 501)[0]?.[0]).toMatch(/^#VALUE! depth holds 501/);
});
