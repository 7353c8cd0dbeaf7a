import fc from "fast-check";
import { FIRST_DAY, isoOf, serial } from "../../../functions/dates";
import { rampDates } from "../../../functions/winter/rampDates";
import { rampDatesTo } from "../../../functions/winter/rampDatesTo";
import { call, callCell } from "../../call";
import { anyDay, anyLengths } from "./plans";
import { plans } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

test("backwards from the first meal it is the plan that runs forwards to it, for any lengths (by definition)", () => {
  fc.assert(
    fc.property(anyDay, anyLengths, (lastMeal, lengths) => {
      const forwards = call(rampDates, lastMeal, ...lengths);
      expect(call(rampDatesTo, forwards[5]?.[1], ...lengths)).toEqual(forwards);
      const [clear, cool, cold, warm] = lengths;
      const withoutSettling = call(rampDates, lastMeal, clear, cool, cold, warm);
      expect(call(rampDatesTo, withoutSettling[5]?.[1], clear, cool, cold, warm)).toEqual(withoutSettling);
    }),
  );
});

test("the plan may begin on the first day of the calendar, not before it", () => {
  expect(call(rampDatesTo, FIRST_DAY + 189, 14, 42, 84, 42, 7)[0]).toEqual(["Last meal", FIRST_DAY]);
  expect(callCell(rampDatesTo, FIRST_DAY + 188, 14, 42, 84, 42, 7)).toMatch(/^#VALUE! firstMeal holds 1900-/);
});

test("the last row is the day that was given", () => {
  const answer = call(rampDatesTo, serial(2028, 3, 27), 14, 42, 84, 42, 7);
  expect(answer[5]).toEqual(["First meal", serial(2028, 3, 27)]);
  expect(answer[0]).toEqual(["Last meal", serial(2027, 9, 20)]); // 189 days before, over 29 February 2028
});

test.each([
  ["a blank day", [null, 14, 42, 84, 42], "#N/A firstMeal is blank"],
  [
    "a first day before the calendar",
    ["1900-04-01", 14, 42, 84, 42],
    "#VALUE! firstMeal holds 1900-04-01: give a later day, so that the plan begins on 1900-03-01 or after",
  ],
])("%s is told", (_, given, message) => expect(callCell(rampDatesTo, ...given)).toBe(message));

// The same calendar days by another calendar, over leap days: exact.
yardstick(rampDatesTo, { against: "Python 3.11 datetime, date + timedelta", within: 0, unit: "days" }, () =>
  plans.flatMap(({ dates, stages }) =>
    call(rampDatesTo, dates[5], ...stages).map(([, day], i) => [isoOf(day as number), dates[i] as string] as const),
  ),
);
