import { isoOf } from "../dates";
import { defineFunction, table } from "../define";
import { Problem, notAvailable } from "../problem";
import { mealParameters, mealsAsked } from "./shared/mealParameters";

/**
 * Every date is the one before it and the interval. A date inside the fast is left out: the next is the plan's first
 * meal, from which the count starts again. The days of the plan's last and first meal are days of feeding.
 */
export const mealDates = defineFunction({
  name: "MEALDATES",
  summary: "All feeding dates of a time, the winter fast left out, restarting at the plan's first meal.",
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
      gives: [["2026-09-10"], ["2026-09-17"], ["2027-03-29"], ["2027-04-05"]],
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
