import fc from "fast-check";
import { coolSpell } from "../../../functions/climate/coolSpell";
import { onDate } from "../../../functions/climate/onDate";
import { seasonShift } from "../../../functions/climate/seasonShift";
import { isoOf, serial, serialOfIso } from "../../../functions/dates";
import { call, down } from "../../call";
import { lebanonDays, lebanonMonths } from "../../normals";
import { yardstick } from "../../yardstick";

const LEBANON = lebanonMonths.mean;
const spell = (...given: readonly unknown[]): unknown[] => {
  const [first, last, days] = call(coolSpell, ...given)[0] as [number, number, number];
  return typeof first === "number" ? [isoOf(first), isoOf(last), days] : [first];
};

/**
 * NOAA daily normals 1991-2020, Lebanon NH (US Government work): the longest run of days below each threshold, found in
 * the daily normals themselves. The curve is up to 0.2 K off them and moves 0.2 K a day or faster where it crosses, so
 * two days; at the shallow bottom of the year (-6 °C), five.
 */
describe("NOAA daily normals 1991-2020", () => {
  const normals = lebanonDays.mean;
  const longest = (threshold: number): { start: number; days: number } => {
    const runs = normals.map((_, start) => {
      let days = 0;
      while (days < 366 && (normals[(start + days) % 366] as number) < threshold) days++;
      return { start, days };
    });
    return runs.reduce((best, run) => (run.days > best.days ? run : best));
  };
  const beganAndLasted = (threshold: number) => {
    const { start, days } = longest(threshold);
    const [first, , length] = call(coolSpell, [LEBANON], threshold, 2027)[0] as [number, number, number];
    const began = first - serial(first < serial(2028, 1, 1) ? 2027 : 2028, 1, 1);
    return [
      [began, start],
      [length, days],
    ] as const;
  };
  const against = "NOAA daily normals 1991-2020";
  yardstick(coolSpell, { against, within: 2, unit: "days" }, () => [10, 8, 5, 0].flatMap(beganAndLasted));
  test("at the shallow bottom of the year", () => {
    for (const [answer, outside] of beganAndLasted(-6)) expect(Math.abs(answer - outside)).toBeLessThanOrEqual(5);
  });
});

test("begins in the year that is given, and may run over the new year", () => {
  const [first, last] = spell([LEBANON], 5, 2026) as [string, string];
  expect([first.slice(0, 4), last.slice(0, 4)]).toEqual(["2026", "2027"]);
});

test("a southern year has its spell inside the year", () => {
  const southern = call(seasonShift, [LEBANON])[0];
  const [first, last] = spell([southern], 5, 2026) as [string, string];
  expect([first.slice(0, 4), last.slice(0, 4)]).toEqual(["2026", "2026"]);
});

test("below all the year round: the year", () =>
  expect(spell([LEBANON], 30, 2028)).toEqual(["2028-01-01", "2028-12-31", 366]));

test("never below: the coldest day is told", () =>
  expect(spell([LEBANON], -9)[0]).toMatch(
    /^#N\/A months never fall below -9: the coldest day is 2026-01-\d\d with -7\.\d$/,
  ));

test("a column of thresholds, a row each; colder is shorter", () => {
  const rows = call(coolSpell, [LEBANON], down([10, 5, 0]), 2026);
  expect(rows).toHaveLength(3);
  const days = rows.map(([, , length]) => length as number);
  expect(days).toEqual([...days].sort((one, other) => other - one));
});

test("of two spells the longer one counts", () => {
  const twice = [0, 0, 10, 10, 0, 0, 0, 10, 10, 10, 10, 10];
  const [first, last] = spell([twice], 5, 2026) as [string, string];
  // May to July, but for the days on which the curve turns in and out.
  expect(Math.abs((serialOfIso(first) as number) - serial(2026, 5, 1))).toBeLessThanOrEqual(3);
  expect(Math.abs((serialOfIso(last) as number) - serial(2026, 7, 31))).toBeLessThanOrEqual(3);
});

test("and where the longer one comes first", () => {
  const [first, last] = spell([[10, 10, 0, 0, 0, 10, 10, 0, 0, 10, 10, 10]], 5, 2026) as [string, string];
  // March to May, but for the days on which the curve turns in and out.
  expect(Math.abs((serialOfIso(first) as number) - serial(2026, 3, 1))).toBeLessThanOrEqual(3);
  expect(Math.abs((serialOfIso(last) as number) - serial(2026, 5, 31))).toBeLessThanOrEqual(3);
});

test("a year that only touches the threshold is never below it, and its first day is as cold as any", () =>
  expect(spell([Array<number>(12).fill(10)], 10)[0]).toBe(
    "#N/A months never fall below 10: the coldest day is 2026-01-01 with 10",
  ));

test("of two spells as long as each other the first counts", () => {
  // April and June lie alike on either side of May.
  const [first, last] = spell([[10, 10, 10, 0, 10, 0, 10, 10, 10, 10, 10, 10]], 5, 2026) as [string, string];
  expect(Math.abs((serialOfIso(first) as number) - serial(2026, 4, 1))).toBeLessThanOrEqual(4);
  expect(Math.abs((serialOfIso(last) as number) - serial(2026, 4, 30))).toBeLessThanOrEqual(4);
});

/**
 * Leap and common years have curves a few thousandths of a kelvin apart. By the same spline solved with NumPy, the common
 * year of these months ends at -5.4670 °C and tops at 21.65116 °C, the leap year at -5.4623 and 21.65110 °C; both begin
 * below -5.61 °C.
 */
describe("the turn of the year", () => {
  const MONTHS = [-6.8, -5.3, -0.1, 6.8, 13.7, 18.4, 21.3, 20.3, 15.9, 9.2, 2.9, -2.9];
  test.each([
    ["between 31 December and 1 January", -5.55, 2026],
    ["between the last days of 2027 and of 2028", -5.4646, 2028],
  ])("a threshold %s: the spell begins on 1 January", (_, threshold, year) => {
    const [first, last] = spell([MONTHS], threshold, year) as [string, string];
    expect([first, last.slice(0, 7)]).toEqual([`${year}-01-01`, `${year}-02`]);
  });

  test("a leap year that stays below does not break the spell", () => {
    const [first, last] = spell([MONTHS], 21.65113, 2027) as [string, string];
    expect([first.slice(0, 7), last.slice(0, 7)]).toEqual(["2027-07", "2029-07"]);
  });
});

test("every day of the spell is below, the days around it are not", () =>
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -20, max: 30 }), { minLength: 12, maxLength: 12 }),
      fc.integer({ min: -15, max: 25 }),
      fc.integer({ min: 1990, max: 2040 }),
      (months, threshold, year) => {
        const [first, last, days] = call(coolSpell, [months], threshold, year)[0] as [number, number, number];
        if (typeof first !== "number" || days >= 365) return;
        const around = Array.from({ length: days + 2 }, (_, i) => first - 1 + i);
        const isBelow = call(onDate, [months], down(around)).map(([value]) => (value as number) < threshold);
        expect(last - first + 1).toBe(days);
        expect(isBelow.slice(1, -1)).not.toContain(false);
        expect(isBelow.at(-1)).toBe(false);
        // A spell of another year's calendar may begin on new year's day itself.
        if (first !== serial(year, 1, 1)) expect(isBelow[0]).toBe(false);
      },
    ),
  ));

// Point by point: 5 °C plus or minus one degree moves 154 days to 145 or 164.
test("a degree more or less, beside the length", () => {
  const [, , days, least, most] = call(coolSpell, [LEBANON], 5, 2026)[0] as number[];
  expect([least, days, most]).toEqual(
    [4, 5, 6].map((threshold) => call(coolSpell, [LEBANON], threshold, 2026)[0]?.[2] as number),
  );
  expect(call(coolSpell, [LEBANON], -6.5, 2026)[0]?.[3]).toBe(0);
});

// Two equal cold seasons, as on the equator: the first of the year is answered.
test("of two spells as long the first of the year is answered", () => {
  const twice = [20, 16, 14, 16, 20, 22, 20, 16, 14, 16, 20, 22];
  const [first, , days] = call(coolSpell, [twice], 15, 2026)[0] as number[];
  expect(isoOf(first as number).slice(0, 7)).toMatch(/^2026-0[23]$/);
  expect(days).toBeGreaterThan(20);
});

/** A bump of one day between two spells ends the one and begins the other, whichever of the two is the longer. */
test.each([
  ["the longer one first", [10, 4, 1, 3, 2, 5, 10, 14, 16, 15, 13, 12]],
  ["the longer one last", [10, 5, 2, 3, 1, 4, 10, 14, 16, 15, 13, 12]],
])("the longest run of days below, by looking at every day, where a single day is not: %s", (_, months) => {
  const first = serial(2026, 1, 1);
  const curve = call(onDate, [months], down(Array.from({ length: 365 }, (_, i) => first + i))).flat() as number[];
  const tops = curve
    .slice(1, 200)
    .filter((value, i) => value > (curve[i] as number) && value >= (curve[i + 2] as number));
  expect(tops).toHaveLength(1);
  for (const threshold of [tops[0] as number, (tops[0] as number) - 1e-9]) {
    let [begin, best] = [0, [0, 0]];
    curve.forEach((value, i) => {
      if (value >= threshold) begin = i + 1;
      else if (i + 1 - begin > (best[1] as number)) best = [begin, i + 1 - begin];
    });
    const [start, , days] = call(coolSpell, [months], threshold, 2026)[0] as number[];
    expect([(start as number) - first, days]).toEqual(best);
  }
});
