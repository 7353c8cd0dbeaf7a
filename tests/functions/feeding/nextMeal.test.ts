import fc from "fast-check";
import { isoOf, serialOfIso } from "../../../functions/dates";
import { nextMeal } from "../../../functions/feeding/nextMeal";
import { call, callCell, down } from "../../call";
import { anyPlan, insideFastOf, practicePlan } from "./plans";

const next = (last: string, interval: number, plan?: unknown) =>
  isoOf(callCell(nextMeal, last, interval, plan) as number);

// common practice, no source: adults every 7 days, young every 5
test("adults every 7 days, young every 5", () => {
  expect(next("2026-06-01", 7)).toBe("2026-06-08");
  expect(next("2026-06-01", 5)).toBe("2026-06-06");
});

test("at the edges of the fast: the days of the last and the first meal are days of feeding", () => {
  expect(next("2026-09-13", 7, practicePlan)).toBe("2026-09-20");
  expect(next("2026-09-14", 7, practicePlan)).toBe("2026-09-21"); // the last meal itself
  expect(next("2026-09-15", 7, practicePlan)).toBe("2026-09-21"); // a day later is the fast: it is given sooner
  expect(next("2026-09-17", 7, practicePlan)).toBe("2026-09-21"); // four days of seven
  expect(next("2026-09-18", 7, practicePlan)).toBe("2027-03-29"); // three of seven are less than half: too soon
  expect(next("2026-09-20", 2, practicePlan)).toBe("2026-09-21"); // one day of two is half of them
  expect(next("2026-09-20", 3, practicePlan)).toBe("2027-03-29"); // one day of three is not
  expect(next("2026-09-21", 7, practicePlan)).toBe("2027-03-29");
  expect(next("2027-03-21", 7, practicePlan)).toBe("2027-03-29"); // a day before the first meal is the fast
  expect(next("2027-03-22", 7, practicePlan)).toBe("2027-03-29"); // the first meal itself
  expect(next("2027-03-23", 7, practicePlan)).toBe("2027-03-30");
});

test("a leap day and the new year are days like others", () => {
  expect(next("2027-12-29", 7)).toBe("2028-01-05");
  expect(next("2028-02-26", 7)).toBe("2028-03-04");
  expect(next("2027-02-26", 7)).toBe("2027-03-05");
});

// by definition: later than the last meal, never in the fast, and earlier than the interval says at no time
test("no date in the fast", () => {
  fc.assert(
    fc.property(
      anyPlan,
      fc.integer({ min: -400, max: 700 }),
      fc.integer({ min: 1, max: 60 }),
      (plan, from, interval) => {
        const last = (plan[0] as number) + from;
        const day = callCell(nextMeal, last, interval, down(plan)) as number;
        expect(insideFastOf(plan, day)).toBe(false);
        const wait = (plan[0] as number) - last;
        const inFast = wait > 0 && 2 * wait >= interval ? plan[0] : plan[5];
        expect(day).toBe(insideFastOf(plan, last + interval) ? inFast : last + interval);
      },
    ),
  );
});

test("a plan that is still blank is no plan", () => {
  expect(next("2026-09-15", 7, down([null, null, null, null, null, null]))).toBe("2026-09-22");
});

test("what cannot be answered", () => {
  expect(callCell(nextMeal, "2026-09-15", 7, [...practicePlan].reverse())).toMatch(
    /^#VALUE! plan holds .* give its dates in order$/,
  );
  expect(callCell(nextMeal, "2026-09-15", 7, practicePlan.slice(1))).toMatch(/^#VALUE! plan holds 5/);
  expect(callCell(nextMeal, "2026-09-15", 0)).toMatch(/^#VALUE! interval holds 0: give a whole number from 1 to 366/);
  expect(callCell(nextMeal, "2026-09-15", 7.5)).toMatch(/^#VALUE! interval holds 7.5/);
  expect(next("9999-12-24", 7)).toBe("9999-12-31");
  expect(callCell(nextMeal, "9999-12-31", 7)).toBe(
    "#VALUE! last holds 9999-12-31: give a day whose next meal is not past 9999-12-31",
  );
  expect(callCell(nextMeal, null, 7)).toBe("#N/A last is blank");
});

test("a log in one formula: a blank row stays empty, a half-filled one says what is blank", () => {
  const answers = call(nextMeal, down(["2026-09-10", null, null, "2026-09-20"]), down([7, null, 7, 7]), practicePlan);
  expect(answers.flat()).toEqual([serialOfIso("2026-09-17"), "", "#N/A last is blank", serialOfIso("2027-03-29")]);
});
