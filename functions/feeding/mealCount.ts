import { cell, defineFunction } from "../define";
import { Problem } from "../problem";
import { refusedIf } from "../twin";
import { LONGEST, mealParameters, mealsAsked } from "./shared/mealParameters";
import { mealsOfSeasonsText, mealsText } from "./shared/meals";

/** As many as MEALDATES answers rows; 0 where all of the time lies in the fast. */
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
  twin: ({ from, to, interval, plan }) => {
    const meals = plan(mealsText(from, to, interval), ({ each }) => mealsOfSeasonsText(from, to, interval, each));
    return refusedIf(`OR(${to}<${from},${to}-${from}>${LONGEST})`, meals);
  },
});
