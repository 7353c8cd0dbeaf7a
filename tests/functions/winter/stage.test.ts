import fc from "fast-check";
import { insideFast, orderedPlan, type Plan } from "../../../functions/shared/plan";
import { stage } from "../../../functions/winter/stage";
import { call, callCell, down } from "../../call";
import { anyDay, anyLengths, datesFrom, practicePlan } from "./plans";
import { plans } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const STAGES = ["Clearing", "Cooling", "Cold", "Warming", "Settling"];

test("changes exactly on the six dates (by definition)", () => {
  const before = practicePlan.map((day) => day - 1);
  expect(call(stage, down(before), down(practicePlan)).flat()).toEqual(["Feeding", ...STAGES]);
  expect(call(stage, down(practicePlan), down(practicePlan)).flat()).toEqual([...STAGES, "Feeding"]);
});

test("each stage lasts as many days as were planned, in order; one of no days never occurs", () => {
  fc.assert(
    fc.property(anyDay, anyLengths, (lastMeal, lengths) => {
      const dates = datesFrom(lastMeal, lengths);
      const everyDay = Array.from({ length: (dates[5] as number) - lastMeal }, (_, i) => lastMeal + i);
      const expected = STAGES.flatMap((name, i) => Array.from({ length: lengths[i] as number }, () => name));
      expect(call(stage, down(everyDay), down(dates)).flat()).toEqual(expected);
      expect(callCell(stage, lastMeal - 1, down(dates))).toBe("Feeding");
      expect(callCell(stage, dates[5], down(dates))).toBe("Feeding");
    }),
    { numRuns: 60 },
  );
});

test("the fast runs from the day after the last meal to the day before the first", () => {
  const plan = orderedPlan(practicePlan) as Plan;
  const [first, last] = [practicePlan[0] as number, practicePlan[5] as number];
  expect([first, first + 1, last - 1, last].map((day) => insideFast(plan, day))).toEqual([false, true, true, false]);
});

test("without days to settle, warming is followed by feeding", () => {
  const dates = datesFrom(practicePlan[0] as number, [14, 42, 84, 42, 0]);
  expect(call(stage, down([(dates[4] as number) - 1, dates[4]]), down(dates))).toEqual([["Warming"], ["Feeding"]]);
});

test("a time of day does not move a stage", () => {
  expect(callCell(stage, (practicePlan[2] as number) + 0.99, down(practicePlan))).toBe("Cold");
  expect(callCell(stage, (practicePlan[2] as number) - 0.01, down(practicePlan))).toBe("Cooling");
});

test("dates out of order are told", () =>
  expect(callCell(stage, practicePlan[0], down([...practicePlan].reverse()))).toMatch(
    /^#VALUE! plan holds Cooling starts/,
  ));

// A day that is the first of a stage belongs to it: intervals closed on the left. Exact.
yardstick(stage, { against: "pandas 1.5.3 cut", within: 0, unit: "" }, () =>
  plans.flatMap(({ dates, days, stage: stages }) =>
    call(stage, down(days), down(dates)).map(([one], i) => [one as string, stages[i] as string] as const),
  ),
);
