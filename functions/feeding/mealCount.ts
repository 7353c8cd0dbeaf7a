import { cell, defineFunction } from "../define";
import { Problem } from "../problem";
import { mealParameters, mealsAsked } from "./shared/mealParameters";

/**
 * As many as MEALDATES answers rows; 0 where all of the time lies in the fast. It has no native twin: each meal follows from
 * the one before, over a fast in every year.
 */
export const mealCount = defineFunction({
  name: "MEALCOUNT",
  summary: "How many meals a time needs, the fast of each winter left out: what the freezer must hold.",
  parameters: mealParameters,
  result: cell("none", "Number of meals"),
  sources: ["definition", "practice"],
  cautions: ["noFoodInTheCold"],
  examples: [
    { given: ["2026-06-01", "2026-06-25", 7], gives: 4, within: 0 },
    {
      given: [
        "2026-09-10",
        "2027-04-10",
        7,
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
      ],
      gives: 5,
      within: 0,
    },
  ],
  calculate(given) {
    const meals = mealsAsked(given);
    return meals instanceof Problem ? meals : meals.length;
  },
});
