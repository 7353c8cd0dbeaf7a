import fc from "fast-check";
import { isoOf, serial } from "../../../functions/dates";
import { ramp } from "../../../functions/winter/ramp";
import { call, callCell } from "../../call";
import { ramps } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const START = serial(2026, 10, 5);
const rows = (...given: unknown[]) => call(ramp, ...given) as [number, number][];

test("six weeks from 24 to 8 °C are seven dated rows, a week and 2 2/3 K apart (by definition)", () => {
  const answer = rows(START, 24, 8, 42);
  expect(answer.map(([date]) => date)).toEqual([0, 7, 14, 21, 28, 35, 42].map((days) => START + days));
  expect(answer.map(([, setPoint]) => setPoint)).toEqual([
    24,
    expect.closeTo(24 - 8 / 3, 12),
    expect.closeTo(24 - 16 / 3, 12),
    16,
    expect.closeTo(24 - 32 / 3, 12),
    expect.closeTo(24 - 40 / 3, 12),
    8,
  ]);
});

test.each([
  ["a step that does not divide the days ends with a short one", 10, 4, [0, 4, 8, 10]],
  ["a step longer than the ramp gives its two ends", 5, 7, [0, 5]],
  ["a step of a day gives every day", 3, 1, [0, 1, 2, 3]],
])("%s", (_, days, step, expected) =>
  expect(rows(START, 24, 8, days, step).map(([date]) => date - START)).toEqual(expected),
);

test("both ends are there, exactly, whatever the step; dates rise; nothing leaves the two ends; the slope is even", () => {
  const temperature = fc.double({ min: -90, max: 60, noNaN: true }).map((value) => value + 0); // no -0
  fc.assert(
    fc.property(
      temperature,
      temperature,
      fc.integer({ min: 1, max: 400 }),
      fc.integer({ min: 1, max: 500 }),
      (from, to, days, step) => {
        const answer = rows(START, from, to, days, step);
        expect(answer[0]).toEqual([START, from]);
        expect(answer.at(-1)).toEqual([START + days, to]);
        for (const [row, [date, setPoint]] of answer.entries()) {
          expect(setPoint).toBeGreaterThanOrEqual(Math.min(from, to));
          expect(setPoint).toBeLessThanOrEqual(Math.max(from, to));
          expect(Math.abs(setPoint - (from + ((to - from) * (date - START)) / days))).toBeLessThan(1e-9);
          if (row > 0) expect(date).toBeGreaterThan((answer[row - 1] as [number, number])[0]);
          if (row > 0 && row < answer.length - 1) expect(date - START).toBe(row * step);
        }
      },
    ),
  );
});

test("from a temperature to the same one, every row is exactly that", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), fc.integer({ min: 1, max: 300 }), (same, days) => {
      expect(new Set(rows(START, same, same, days, 1).map(([, setPoint]) => setPoint))).toEqual(new Set([same]));
    }),
  );
});

test("over the new year and a leap day", () => {
  const answer = rows(serial(2028, 2, 27), 8, 10, 4, 1);
  expect(answer.map(([date]) => date)).toEqual([
    serial(2028, 2, 27),
    serial(2028, 2, 28),
    serial(2028, 2, 29),
    serial(2028, 3, 1),
    serial(2028, 3, 2),
  ]);
});

test("degrees Fahrenheit in, degrees Fahrenheit out", () => {
  const answer = rows(START, 75.2, 46.4, 42, 21, "imperial");
  expect(answer.map(([, setPoint]) => setPoint)).toEqual(
    [75.2, 60.8, 46.4].map((value): unknown => expect.closeTo(value, 10)),
  );
});

test.each([
  ["a blank temperature", [START, 24, null, 42], "#N/A to is blank"],
  ["no days", [START, 24, 8, 0], "#VALUE! days holds 0: give a whole number from 1 to 1000 days"],
  ["a part of a day", [START, 24, 8, 41.5], "#VALUE! days holds 41.5: give a whole number from 1 to 1000 days"],
  ["a step back", [START, 24, 8, 42, -7], "#VALUE! step holds -7: give a whole number from 1 to 1000 days"],
  [
    "a ramp past the last day",
    ["9999-12-01", 24, 8, 42],
    "#VALUE! days holds 42 days: give a last day up to 9999-12-31",
  ],
])("%s is told", (_, given, message) => expect(callCell(ramp, ...given)).toBe(message));

test("a ramp may end on the last day that a sheet knows", () =>
  expect(rows("9999-11-19", 24, 8, 42).at(-1)).toEqual([serial(9999, 12, 31), 8]));

// The straight line on the same days; nine decimals are written down, and the dates are another calendar's.
yardstick(ramp, { against: "numpy 1.24.2 interp", within: 1e-8, unit: "K" }, () =>
  ramps.flatMap(({ start, from, to, days, step, dates, setPoints }) => {
    const answer = rows(start, from, to, days, step);
    expect(answer.map(([date]) => isoOf(date))).toEqual(dates);
    return answer.map(([, one], i) => [one, setPoints[i] as number] as const);
  }),
);
