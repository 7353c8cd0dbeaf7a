import { FIRST_DAY, isoOf } from "../dates";
import { date, defineFunction } from "../define";
import { notUsable } from "../problem";
import { refusedIf } from "../twin";
import { daysAfterLastMeal, planFrom, planLengths, planRows, planText } from "./shared/planLengths";

/** The same plan as RAMPDATES makes, counted back from its end. */
export const rampDatesTo = defineFunction({
  name: "RAMPDATESTO",
  summary: "The six dates of a winter plan, counted back from the day of the first meal.",
  parameters: { firstMeal: date("Day of the first meal after the winter"), ...planLengths },
  result: planRows,
  sources: ["definition"],
  cautions: ["coldKills", "noFoodInTheCold", "noVet"],
  examples: [
    {
      given: ["2027-03-29", 14, 42, 84, 42, 7],
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
  calculate({ firstMeal, ...lengths }) {
    const daysAfter = daysAfterLastMeal(lengths);
    const lastMeal = firstMeal - (daysAfter.at(-1) as number);
    return lastMeal < FIRST_DAY
      ? notUsable(
          `firstMeal holds ${isoOf(firstMeal)}: give a later day, so that the plan begins on ${isoOf(FIRST_DAY)} or after`,
        )
      : planFrom(lastMeal, daysAfter);
  },
  twin: ({ firstMeal, ...lengths }) => {
    const rows = planText((_, left) => [firstMeal, ...left].join("-"), lengths);
    return rows.map((row) => row.map((text) => refusedIf(`${rows[0]?.[1]}<${FIRST_DAY}`, text)));
  },
});
