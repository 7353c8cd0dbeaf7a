import { isoOf } from "../dates";
import { defineFunction, table } from "../define";
import { Problem, notAvailable } from "../problem";
import { mealParameters, mealsAsked } from "./shared/mealParameters";

/**
 * Every date is the one before it and the interval. In place of a date inside the fast stands the plan's last meal, if
 * half the interval has gone by until then; the next is its first meal, from which the count starts again. In other years
 * the fast lies on the same days: a plan is of one winter, and a freezer that is filled for three has three.
 */
export const mealDates = defineFunction({
  name: "MEALDATES",
  summary:
    "All feeding dates of a time, the fast of each winter left out, up to the plan's last meal and from its first.",
  parameters: mealParameters,
  result: table({ name: "Date", unit: "date", about: "Day of a meal" }),
  sources: ["definition", "practice"],
  cautions: ["noFoodInTheCold", "feedTheAnimal"],
  examples: [
    {
      given: ["2026-06-01", "2026-06-25", 7],
      gives: [["2026-06-01"], ["2026-06-08"], ["2026-06-15"], ["2026-06-22"]],
      within: 0,
    },
    {
      given: [
        "2026-09-10",
        "2027-04-10",
        7,
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
      ],
      gives: [["2026-09-10"], ["2026-09-17"], ["2026-09-21"], ["2027-03-29"], ["2027-04-05"]],
      within: 0,
    },
  ],
  calculate(given) {
    const meals = mealsAsked(given);
    if (meals instanceof Problem) return meals;
    if (meals.length === 0) {
      return notAvailable(
        `from ${isoOf(given.from)} to ${isoOf(given.to)} there is no meal: all of it lies in the fast`,
      );
    }
    return meals.map((day) => [day]);
  },
});
