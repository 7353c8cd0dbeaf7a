import { serialOfIso } from "../../../functions/dates";
import fc from "fast-check";
import { isoOf } from "../../../functions/dates";
import { mealCount } from "../../../functions/feeding/mealCount";
import { mealDates } from "../../../functions/feeding/mealDates";
import { nextMeal } from "../../../functions/feeding/nextMeal";
import { call, callCell, down } from "../../call";
import { anyPlan, insideFastOf, practicePlan } from "./plans";
import { yardstick } from "../../yardstick";

const dates = (...given: unknown[]) =>
  call(mealDates, ...given).map(([day]) => (typeof day === "number" ? isoOf(day) : day));

// common practice, no source: adults every 7 days, young every 5
test("adults every 7 days, young every 5, both ends included", () => {
  expect(dates("2026-06-01", "2026-06-15", 7)).toEqual(["2026-06-01", "2026-06-08", "2026-06-15"]);
  expect(dates("2026-06-01", "2026-06-15", 5)).toEqual(["2026-06-01", "2026-06-06", "2026-06-11"]);
  expect(dates("2026-06-01", "2026-06-01", 7)).toEqual(["2026-06-01"]);
});

test("the fast is left out, and the count starts again at the first meal", () => {
  expect(dates("2026-09-07", "2027-04-12", 7, practicePlan)).toEqual([
    "2026-09-07",
    "2026-09-14",
    "2026-09-21",
    "2027-03-29",
    "2027-04-05",
    "2027-04-12",
  ]);
  expect(dates("2026-09-08", "2027-04-12", 7, practicePlan)).toEqual([
    "2026-09-08",
    "2026-09-15",
    "2027-03-29",
    "2027-04-05",
    "2027-04-12",
  ]);
});

test("from and to at the edges of the fast", () => {
  expect(dates("2026-09-21", "2027-03-28", 7, practicePlan)).toEqual(["2026-09-21"]);
  expect(dates("2026-09-22", "2027-03-29", 7, practicePlan)).toEqual(["2027-03-29"]);
  expect(dates("2026-09-22", "2027-03-28", 7, practicePlan)).toEqual([
    "#N/A from 2026-09-22 to 2027-03-28 there is no meal: all of it lies in the fast",
  ]);
  expect(dates("2027-01-10", "2027-04-06", 7, practicePlan)).toEqual(["2027-03-29", "2027-04-05"]);
  expect(dates("2027-03-29", "2027-04-05", 7, practicePlan)).toEqual(["2027-03-29", "2027-04-05"]);
});

// by definition
test("no date in the fast, each the NEXTMEAL of the one before, and as many as MEALCOUNT says", () => {
  fc.assert(
    fc.property(
      anyPlan,
      fc.integer({ min: -200, max: 700 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 1, max: 40 }),
      fc.boolean(),
      (plan, offset, span, interval, planned) => {
        const from = (plan[0] as number) + offset;
        const given = [from, from + span, interval, planned ? down(plan) : undefined];
        const count = callCell(mealCount, ...given) as number;
        const rows = call(mealDates, ...given).flat();
        if (count === 0) {
          expect(rows[0]).toMatch(/^#N\/A from .* there is no meal/);
          expect(planned && insideFastOf(plan, from) && from + span < (plan[5] as number)).toBe(true);
          return;
        }
        const days = rows as number[];
        expect(days).toHaveLength(count);
        expect(days[0]).toBe(planned && insideFastOf(plan, from) ? plan[5] : from);
        for (const [i, day] of days.entries()) {
          expect(planned && insideFastOf(plan, day)).toBe(false);
          expect(day).toBeLessThanOrEqual(from + span);
          if (i > 0) expect(day).toBe(callCell(nextMeal, days[i - 1], interval, given[3]));
        }
        expect(callCell(nextMeal, days.at(-1), interval, given[3])).toBeGreaterThan(from + span);
      },
    ),
  );
});

test("what cannot be answered", () => {
  expect(dates("2026-06-02", "2026-06-01", 7)).toEqual([
    "#VALUE! to holds 2026-06-01: give from, 2026-06-02, or a later day",
  ]);
  expect(dates("2026-06-01", "2036-06-10", 7)).toEqual([
    "#VALUE! to holds 2036-06-10: give a day up to 2036-06-08, ten years after from",
  ]);
  expect(dates("2026-06-01", "2036-06-08", 366)).toHaveLength(11);
  expect(dates("2026-06-01", "2027-06-01", 7, [...practicePlan].reverse())[0]).toMatch(
    /^#VALUE! plan holds .* give its dates in order$/,
  );
  expect(dates("2026-06-01", null, 7)).toEqual(["#N/A to is blank"]);
  expect(dates(null, null, null)).toEqual([""]);
});

/** list(rrule(DAILY, interval=9, dtstart=2027-10-25, until=2028-03-20)) of python-dateutil 2.9.0: over a leap day. Exact. */
yardstick(mealDates, { against: "RFC 5545 recurrence by python-dateutil 2.9.0", within: 0, unit: "days" }, () => {
  const wanted = [
    "2027-10-25",
    "2027-11-03",
    "2027-11-12",
    "2027-11-21",
    "2027-11-30",
    "2027-12-09",
    "2027-12-18",
    "2027-12-27",
    "2028-01-05",
    "2028-01-14",
    "2028-01-23",
    "2028-02-01",
    "2028-02-10",
    "2028-02-19",
    "2028-02-28",
    "2028-03-08",
    "2028-03-17",
  ];
  const meals = call(mealDates, "2027-10-25", "2028-03-20", 9).flat() as number[];
  return wanted.map((day, i) => [meals[i] as number, serialOfIso(day) as number] as const);
});
