import { LAST_DAY, isoOf } from "../dates";
import { cell, date, defineFunction, latestOf } from "../define";
import { Problem, notUsable } from "../problem";
import { inOrder, orderedPlan } from "../shared/plan";
import { fast, interval } from "./shared/mealParameters";
import { LEAST_WAIT, mealAfter } from "./shared/meals";

/**
 * The days of the plan's last and first meal are days of feeding; every day between them is the fast. The last meal is
 * not skipped because the interval would end a day later: it is given sooner, once half the interval has gone by.
 */
export const nextMeal = defineFunction({
  name: "NEXTMEAL",
  summary: "The next feeding date; where that is in the winter plan's fast, the plan's last meal or its first.",
  parameters: {
    last: latestOf(date("Day of the last meal, taken or offered; in a table of several animals, the column of meals")),
    interval,
    plan: fast,
  },
  forEach: "animal",
  result: cell("date", "Day of the next meal"),
  sources: ["definition", "practice"],
  cautions: ["noFoodInTheCold", "feedTheAnimal"],
  examples: [
    { given: ["2026-06-01", 7], gives: "2026-06-08", within: 0 },
    {
      given: [
        "2026-09-20",
        7,
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
      ],
      gives: "2027-03-29",
      within: 0,
    },
  ],
  calculate({ last, interval, plan }) {
    const ordered = plan && orderedPlan(plan);
    if (ordered instanceof Problem) return ordered;
    const next = mealAfter(last, interval, ordered);
    return next > LAST_DAY
      ? notUsable(`last holds ${isoOf(last)}: give a day whose next meal is not past ${isoOf(LAST_DAY)}`)
      : next;
  },
  twin: ({ last, interval, plan }) => {
    const next = `${last}+${interval}`;
    return plan(next, ({ each }) => {
      const [lastMeal, firstMeal] = [each[0] as string, each[5] as string];
      const isWorthIt = `AND(${lastMeal}>${last},${lastMeal}-${last}>=${LEAST_WAIT}*${interval})`;
      const inFast = `IF(${isWorthIt},${lastMeal},${firstMeal})`;
      return inOrder(each, `IF(AND(${next}>${lastMeal},${next}<${firstMeal}),${inFast},${next})`);
    });
  },
});
