import { isoOf, LAST_DAY } from "../dates";
import { date, defineFunction } from "../define";
import { notUsable } from "../problem";
import { daysAfterLastMeal, planFrom, planLengths, planRows, planText } from "./shared/planLengths";

/** Each date is the one before it and the days between. Without days to settle, food comes on the day it is warm again. */
export const rampDates = defineFunction({
  name: "RAMPDATES",
  summary: "The six dates of a winter plan, from the last meal into the cold and back to the first meal.",
  parameters: { lastMeal: date("Day of the last meal"), ...planLengths },
  result: planRows,
  sources: ["definition"],
  cautions: ["coldKills", "noFoodInTheCold", "noVet"],
  examples: [
    {
      given: ["2026-09-21", 14, 42, 84, 42, 7],
      gives: [
        ["Last meal", "2026-09-21"],
        ["Cooling starts", "2026-10-05"],
        ["Into the cold", "2026-11-16"],
        ["Warming starts", "2027-02-08"],
        ["Warm again", "2027-03-22"],
        ["First meal", "2027-03-29"],
      ],
      within: 0,
    },
  ],
  calculate({ lastMeal, ...lengths }) {
    const daysAfter = daysAfterLastMeal(lengths);
    return lastMeal + (daysAfter.at(-1) as number) > LAST_DAY
      ? notUsable(`lastMeal holds ${isoOf(lastMeal)}: give an earlier day, so that the plan ends by ${isoOf(LAST_DAY)}`)
      : planFrom(lastMeal, daysAfter);
  },
  twin: ({ lastMeal, ...lengths }) => planText((days) => [lastMeal, ...days].join("+"), lengths),
});
