import { mealCount } from "../../../functions/feeding/mealCount";
import { callCell, call, down } from "../../call";
import { practicePlan } from "./plans";

// That it equals the rows of MEALDATES is a property in mealDates.test.ts.

// by definition, and common practice, no source: adults every 7 days, young every 5
test("a year of an adult and of a young animal", () => {
  expect(callCell(mealCount, "2026-01-01", "2026-12-31", 7)).toBe(53);
  expect(callCell(mealCount, "2026-01-01", "2026-12-31", 5)).toBe(73);
});

test("the fast needs no prey", () => {
  expect(callCell(mealCount, "2026-09-22", "2027-03-28", 7, practicePlan)).toBe(0);
  expect(callCell(mealCount, "2026-09-21", "2027-03-29", 7, practicePlan)).toBe(2);
});

test("one answer for each animal", () => {
  expect(call(mealCount, "2026-06-01", "2026-06-30", down([7, 5, null, 10]))).toEqual([
    [5],
    [6],
    ["#N/A interval is blank"],
    [3],
  ]);
});

test("what cannot be answered", () => {
  expect(callCell(mealCount, "2026-06-02", "2026-06-01", 7)).toBe(
    "#VALUE! to holds 2026-06-01: give from, 2026-06-02, or a later day",
  );
  expect(callCell(mealCount, "2026-06-01", "2027-06-01", 7, [...practicePlan].reverse())).toMatch(
    /^#VALUE! plan holds .* give its dates in order$/,
  );
});
