import { addDays, formatISO } from "date-fns";
import { UTCDate } from "@date-fns/utc";
import fc from "fast-check";
import { isoOf, LAST_DAY, serial } from "../../../functions/dates";
import { rampDates } from "../../../functions/winter/rampDates";
import { call, callCell } from "../../call";
import { anyDay, anyLengths, datesFrom } from "./plans";
import { plans } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const START = serial(2027, 9, 20);

test("each date is the one before it and the days between (by definition)", () => {
  expect(call(rampDates, START, 14, 42, 84, 42, 7)).toEqual([
    ["Last meal", START],
    ["Cooling starts", START + 14],
    ["Into the cold", START + 56],
    ["Warming starts", START + 140],
    ["Warm again", START + 182],
    ["First meal", START + 189],
  ]);
});

test("the calendar agrees with date-fns over new years and leap days", () => {
  fc.assert(
    fc.property(anyDay, anyLengths, (lastMeal, lengths) => {
      const answer = call(rampDates, lastMeal, ...lengths);
      const days = datesFrom(0, lengths);
      const first = new UTCDate(`${isoOf(lastMeal)}T00:00:00Z`);
      expect(answer.map(([, date]) => isoOf(date as number))).toEqual(
        days.map((passed) => formatISO(addDays(first, passed), { representation: "date" })),
      );
    }),
  );
});

test("the plan may end on the last day of the calendar, not after it", () => {
  expect(call(rampDates, LAST_DAY - 189, 14, 42, 84, 42, 7)[5]).toEqual(["First meal", LAST_DAY]);
  expect(callCell(rampDates, LAST_DAY - 188, 14, 42, 84, 42, 7)).toMatch(/^#VALUE! lastMeal holds 9999-/);
});

test("without days to settle, the first meal is on the day it is warm again", () => {
  const answer = call(rampDates, START, 14, 42, 84, 42);
  expect(answer[5]?.[1]).toBe(answer[4]?.[1]);
  expect(call(rampDates, START, 14, 42, 84, 42, null)).toEqual(answer);
});

test.each([
  ["a blank length", [START, 14, null, 84, 42], "#N/A cool is blank"],
  ["no cooling at all", [START, 14, 0, 84, 42], "#VALUE! cool holds 0: give a whole number from 1 to 366 days"],
  ["days below 0", [START, -1, 42, 84, 42], "#VALUE! clear holds -1: give a whole number from 0 to 366 days"],
  [
    "weeks in words",
    [START, "2 weeks", 42, 84, 42],
    "#VALUE! clear holds '2 weeks': give a whole number from 0 to 366 days",
  ],
  [
    "a last day past the calendar",
    ["9999-10-01", 14, 42, 84, 42],
    "#VALUE! lastMeal holds 9999-10-01: give an earlier day, so that the plan ends by 9999-12-31",
  ],
])("%s is told", (_, given, message) => expect(callCell(rampDates, ...given)).toBe(message));

// The same calendar days by another calendar, over leap days: exact.
yardstick(rampDates, { against: "Python 3.11 datetime, date + timedelta", within: 0, unit: "days" }, () =>
  plans.flatMap(({ dates, stages }) =>
    call(rampDates, dates[0], ...stages).map(([, day], i) => [isoOf(day as number), dates[i] as string] as const),
  ),
);
