import fc from "fast-check";
import { lossTrend } from "../../../functions/winter/lossTrend";
import { theilSen, type Line } from "../../../functions/shared/theilSen";
import { call, down } from "../../call";
import { uniform } from "../../statistics";
import trends from "../../tables/trends.json";
import { yardstick, yardstickOf } from "../../yardstick";

const FIRST = 46_342;

// A median of pairwise slopes, and one of their ends, is exact but for rounding: the rows have ten decimals.
yardstick(lossTrend, { against: "scipy 1.10.1 theilslopes", within: 1e-9, unit: "" }, () =>
  trends.rows.flatMap(({ days, grams, slope, interceptJoint }) => {
    const line = theilSen(days, grams) as Line;
    return [
      [line.slope, slope],
      [line.intercept, interceptJoint],
    ] as const;
  }),
);
yardstick(lossTrend, { against: "scipy 1.17.1 theilslopes, 90 % range", within: 1e-9, unit: "" }, () =>
  trends.rows.flatMap(({ days, grams, leastSlope, mostSlope }) => {
    const line = theilSen(days, grams) as Line;
    return [
      [line.least, leastSlope],
      [line.most, mostSlope],
    ] as const;
  }),
);

test.each(trends.rows)(
  "$series: the shares are those of the line",
  ({ days, grams, slope, interceptJoint, ...range }) => {
    const end = 120;
    const [soFar, perMonth, atEnd, least, most] = call(
      lossTrend,
      down(days.map((day) => FIRST + day)),
      down(grams),
      FIRST + end,
    )[0] as number[];
    const first = grams[0] as number;
    expect(soFar).toBeCloseTo((first - (grams.at(-1) as number)) / first, 12);
    if (days.length < 5 || (days.at(-1) as number) < 28) {
      for (const told of [perMonth, atEnd, least, most]) expect(told).toMatch(/^#N\/A too few to tell: /);
      return;
    }
    expect(perMonth).toBeCloseTo((-30 * slope) / first, 9);
    expect(atEnd).toBeCloseTo((first - (interceptJoint + slope * end)) / first, 9);
    expect(least).toBeCloseTo((-30 * range.mostSlope) / first, 9);
    expect(most).toBeCloseTo((-30 * range.leastSlope) / first, 9);
  },
);

/**
 * Simulated winters: a snake of 306 g that truly loses 2.8 % in 84 days, weighed once a week on scales that scatter by a
 * gram, the weighing into the cold among them. Nine in ten of the ranges must hold the truth, at 5 to 12 weighings.
 */
const random = uniform(11);
const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
const winters = (weighings: number, count: number) =>
  Array.from({ length: count }, () => {
    const days = Array.from({ length: weighings }, (_, i) => 7 * i);
    const truth = (day: number): number => 306 * (1 - (0.028 * day) / 84);
    const masses = days.map((day) => truth(day) + gauss());
    const answer = call(lossTrend, down(days.map((day) => FIRST + day)), down(masses), FIRST + 84, 306 + gauss())[0];
    return answer as number[];
  });

for (const weighings of [5, 6, 8, 12]) {
  const answers = winters(weighings, 400);
  const against = `400 simulated winters of ${weighings} weekly weighings`;
  for (const [figure, truth, least, most] of [
    ["share of the rates inside", (0.028 * 30) / 84, 3, 4],
    ["share of the losses at the end inside", 0.028, 5, 6],
  ] as const) {
    yardstickOf(lossTrend, { against, figure, least: 0.88, most: 1, unit: "share" }, () => ({
      figure:
        answers.filter((answer) => (answer[least] as number) <= truth && truth <= (answer[most] as number)).length /
        answers.length,
      values: answers.length,
    }));
  }
}

test("three weekly weighings are too few, and so are five within a week", () => {
  const told = (days: readonly number[]) =>
    call(lossTrend, down(days.map((day) => FIRST + day)), down(days.map((day) => 306 - day / 7)), FIRST + 84)[0];
  const few = "#N/A too few to tell: 3 weighings over 14 days, a trend needs 5 over 28";
  expect(told([0, 7, 14])).toEqual([expect.closeTo(2 / 306, 12), few, few, few, few, few, few]);
  expect(told([0, 1, 2, 3, 27])?.[1]).toBe("#N/A too few to tell: 5 weighings over 27 days, a trend needs 5 over 28");
  expect(told([0, 1, 2, 3, 28])?.[1]).toEqual(expect.any(Number));
});

test("the shares are of the mass at the start, where it is given", () => {
  const days = [0, 7, 14, 21, 28, 35];
  const answer = (start?: number) =>
    call(
      lossTrend,
      down(days.map((day) => FIRST + day)),
      down(days.map((day) => 306 - (2 * day) / 7)),
      FIRST + 84,
      start,
    )[0];
  // 306, 304 ... 296 g after 320: at day 84 the line stands at 282 g.
  expect(answer(320)?.slice(0, 3)).toEqual(
    [24 / 320, 60 / 7 / 320, 38 / 320].map((share): unknown => expect.closeTo(share, 12)),
  );
  expect(answer()?.[2]).toBeCloseTo(24 / 306, 12);
  expect(answer(306)).toEqual(answer());
});

test("an end before the last weighing is refused; on its day it is taken", () => {
  const ends = (end: number | string) => call(lossTrend, three, down([300, 299, 298]), end)[0]?.[0];
  expect(ends("2020-02-08")).toBe("#VALUE! end holds 2020-02-08: give the last weighing, 2026-12-06, or a later day");
  expect(ends(FIRST + 19)).toMatch(/^#VALUE! end holds/);
  expect(ends(FIRST + 20)).toBeCloseTo(2 / 300, 12);
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
        call(lossTrend, down(rows.map(({ day }) => FIRST + day)), down(rows.map(({ mass }) => mass)), FIRST + 300);
      const sorted = [...weighings].sort((a, b) => a.day - b.day);
      expect(of([...weighings].reverse())).toEqual(of(sorted));
      expect(of([...sorted, { day: 300, mass: null }])).toEqual(of(sorted));
    }),
  );
});

test("a gain is negative", () => {
  const [soFar, perMonth, atEnd] = call(
    lossTrend,
    down([0, 7.5, 15, 22.5, 30].map((day) => FIRST + Math.round(day / 2) * 2)),
    down([0, 7.5, 15, 22.5, 30].map((day) => 300 + Math.round(day / 2) * 0.4)),
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
    [down([0, 10, 20, 30, 40].map((day) => FIRST + day)), down([300, 299, 298, 297, 296]), "2099-01-01"],
    "#VALUE! end holds 2099-01-01: give an earlier day, by then the trend would leave no animal",
  ],
])("%s is told", (_, given, message) => expect(call(lossTrend, ...given).flat()[0]).toBe(message));

test("3000 weighings are taken, one more is told", () => {
  const log = (length: number) => [
    down(Array.from({ length }, (_, i) => FIRST + i)),
    down(Array(length).fill(300)),
    FIRST + length,
  ];
  expect(call(lossTrend, ...log(3000))).toEqual(
    [[0, 0, 0, 0, 0, 0, 0]].map((row) => row.map((value): unknown => expect.closeTo(value, 12))),
  );
  expect(call(lossTrend, ...log(3001))[0]?.[0]).toBe("#VALUE! masses holds 3001 figures: give at most 3000");
});

test("nothing given, nothing answered", () =>
  expect(call(lossTrend, down([null]), down([null]), null)).toEqual([["", "", "", "", "", "", ""]]));

test("the trend may go on to the last gram, but not to nothing", () => {
  // 500, 400 ... 100 g in steps of ten days lie on one line, which ends at 0 on day 50.
  const days = [0, 10, 20, 30, 40];
  const ahead = (end: number) =>
    call(lossTrend, down(days.map((day) => FIRST + day)), down(days.map((day) => 500 - 10 * day)), FIRST + end)[0];
  expect(ahead(49)?.slice(0, 3)).toEqual([0.8, 0.6, 0.98].map((share): unknown => expect.closeTo(share, 12)));
  expect(ahead(50)?.[0]).toBe(
    "#VALUE! end holds 2027-01-05: give an earlier day, by then the trend would leave no animal",
  );
});

test("no more than the whole animal is lost at the most", () => {
  // The trend leaves a seventh of the animal by day 56; the scatter of such scales is larger than that.
  const days = [0, 7, 14, 21, 28, 35, 42];
  const masses = days.map((day, i) => 100 - (86 * day) / 56 + (i % 2 === 0 ? 12 : -12));
  const answer = call(lossTrend, down(days.map((day) => FIRST + day)), down(masses), FIRST + 56)[0] as number[];
  expect(answer[2]).toBeLessThan(1);
  expect(answer[6]).toBe(1);
});
