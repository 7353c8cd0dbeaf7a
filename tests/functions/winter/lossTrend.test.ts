import fc from "fast-check";
import { lossTrend } from "../../../functions/winter/lossTrend";
import { theilSen } from "../../../functions/shared/theilSen";
import { call, down } from "../../call";
import trends from "../../tables/trends.json";

const FIRST = 46_342;

// Tolerance as in the table: a median of pairwise slopes is exact but for rounding.
describe.each(trends.rows)("$series, against scipy 1.10.1", ({ days, grams, slope, interceptJoint }) => {
  test("the line", () => {
    const line = theilSen(days, grams);
    expect(Math.abs((line?.slope ?? NaN) - slope)).toBeLessThan(1e-9);
    expect(Math.abs((line?.intercept ?? NaN) - interceptJoint)).toBeLessThan(1e-9);
  });

  test("the shares", () => {
    const end = 120;
    const [soFar, perMonth, atEnd] = call(
      lossTrend,
      down(days.map((day) => FIRST + day)),
      down(grams),
      FIRST + end,
    )[0] as number[];
    const first = grams[0] as number;
    expect(soFar).toBeCloseTo((first - (grams.at(-1) as number)) / first, 12);
    expect(perMonth).toBeCloseTo((-30 * slope) / first, 9);
    expect(atEnd).toBeCloseTo((first - (interceptJoint + slope * end)) / first, 9);
  });
});

test("the table holds even and odd numbers of slopes, where a median is made in two ways", () => {
  const pairs = trends.rows.map(
    ({ days }) => days.flatMap((day, i) => days.slice(0, i).filter((other) => other !== day)).length,
  );
  expect(pairs).toEqual([28, 25, 66, 21]);
});

const weighing = fc.record({
  day: fc.integer({ min: 0, max: 200 }),
  mass: fc.double({ min: 50, max: 500, noNaN: true }),
});

test("an even loss is found exactly, and one mad weighing among five hardly moves it", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 0, max: 4 }),
      fc.double({ min: 1, max: 5000, noNaN: true }),
      (gap, row, mad) => {
        const days = [0, 1, 2, 3, 4].map((i) => FIRST + i * gap);
        const even = [300, 298, 296, 294, 292];
        const slope = theilSen(days, even)?.slope as number;
        expect(slope).toBeCloseTo(-2 / gap, 12);
        const spoilt = theilSen(
          days,
          even.map((mass, i) => (i === row ? mad : mass)),
        )?.slope as number;
        // Six of the ten pairs leave the mad one out, so that both middle slopes are even ones.
        expect(Math.abs(spoilt - slope)).toBeLessThan(1e-9);
      },
    ),
  );
});

test("the order of the rows is of no matter, and rows not yet weighed are left out", () => {
  fc.assert(
    fc.property(fc.uniqueArray(weighing, { minLength: 3, maxLength: 12, selector: ({ day }) => day }), (weighings) => {
      const of = (rows: readonly { day: number; mass: number | null }[]) =>
        call(lossTrend, down(rows.map(({ day }) => FIRST + day)), down(rows.map(({ mass }) => mass)), FIRST + 1);
      const sorted = [...weighings].sort((a, b) => a.day - b.day);
      expect(of([...weighings].reverse())).toEqual(of(sorted));
      expect(of([...sorted, { day: 300, mass: null }])).toEqual(of(sorted));
    }),
  );
});

test("a gain is negative", () => {
  const [soFar, perMonth, atEnd] = call(
    lossTrend,
    down([0, 15, 30].map((day) => FIRST + day)),
    down([300, 303, 306]),
    FIRST + 60,
  )[0] as number[];
  expect([soFar, perMonth, atEnd]).toEqual([-0.02, expect.closeTo(-0.02, 12), expect.closeTo(-0.04, 12)]);
});

const three = down([FIRST, FIRST + 10, FIRST + 20]);
test.each<[string, unknown[], string]>([
  ["two weighings", [three, down([300, 299, null]), FIRST + 60], "#N/A masses holds 2 with a date: give three or more"],
  [
    "one day only",
    [down([FIRST, FIRST, FIRST]), down([300, 299, 298]), FIRST + 60],
    "#VALUE! dates holds 2026-11-16 throughout: give weighings of several days",
  ],
  [
    "a weighing without its day",
    [down([FIRST, null, FIRST + 20]), down([300, 299, 298]), FIRST + 60],
    "#N/A row 2 of dates is blank",
  ],
  [
    "lists of different lengths",
    [three, down([300, 299]), FIRST + 60],
    "#VALUE! dates holds 3 cells and masses 2: give as many of each",
  ],
  [
    "a weighing of 0",
    [three, down([300, 0, 298]), FIRST + 60],
    "#VALUE! row 2 of masses holds 0: give a number from 0.1 to 200000 g",
  ],
  [
    "an end beyond the animal",
    [three, down([300, 299, 298]), "2099-01-01"],
    "#VALUE! end holds 2099-01-01: give an earlier day, by then the trend would leave no animal",
  ],
])("%s is told", (_, given, message) => expect(call(lossTrend, ...given).flat()[0]).toBe(message));

test("3000 weighings are taken, one more is told", () => {
  const log = (length: number) => [
    down(Array.from({ length }, (_, i) => FIRST + i)),
    down(Array(length).fill(300)),
    FIRST,
  ];
  expect(call(lossTrend, ...log(3000))).toEqual(
    [[0, 0, 0]].map((row) => row.map((value): unknown => expect.closeTo(value, 12))),
  );
  expect(call(lossTrend, ...log(3001))[0]?.[0]).toBe("#VALUE! masses holds 3001 figures: give at most 3000");
});

test("nothing given, nothing answered", () =>
  expect(call(lossTrend, down([null]), down([null]), null)).toEqual([["", "", ""]]));

test("the trend may go on to the last gram, but not to nothing", () => {
  // 300, 200 and 100 g in steps of ten days lie on one line, which ends at 0 on day 30.
  const ahead = (days: number) => call(lossTrend, three, down([300, 200, 100]), FIRST + days)[0];
  expect(ahead(29)).toEqual([2 / 3, 1, 290 / 300].map((share): unknown => expect.closeTo(share, 12)));
  expect(ahead(30)?.[0]).toBe(
    "#VALUE! end holds 2026-12-16: give an earlier day, by then the trend would leave no animal",
  );
});
