import { cell, date, defineFunction, plan } from "../define";
import { Problem } from "../problem";
import { inOrder, orderedPlan, STAGES, stageOn } from "../shared/plan";
import { quoted } from "../twin";

/**
 * The stage changes exactly on the six dates. Feeding up to the day before the last meal; Clearing from the day of the
 * last meal; Cooling, Cold and Warming from their own dates; Settling from the day it is warm again; Feeding from the
 * day of the first meal. A stage of no days never occurs: without days to settle, Warming is followed by Feeding.
 */
export const stage = defineFunction({
  name: "STAGE",
  summary: "The stage of a winter plan on each date: Feeding, Clearing, Cooling, Cold, Warming or Settling.",
  parameters: {
    dates: date("Day to answer for"),
    plan: plan(),
  },
  result: cell("text", "Stage on that day"),
  sources: ["definition"],
  cautions: ["noFoodInTheCold", "noVet"],
  examples: [
    {
      given: [
        [
          ["2026-09-20"],
          ["2026-09-21"],
          ["2026-10-05"],
          ["2026-11-16"],
          ["2027-02-08"],
          ["2027-03-22"],
          ["2027-03-29"],
        ],
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
      ],
      gives: [["Feeding"], ["Clearing"], ["Cooling"], ["Cold"], ["Warming"], ["Settling"], ["Feeding"]],
      within: 0,
    },
  ],
  calculate({ dates, plan }) {
    const ordered = orderedPlan(plan);
    return ordered instanceof Problem ? ordered : stageOn(ordered, dates);
  },
  twin: ({ dates, plan: { each } }) =>
    inOrder(
      each,
      `CHOOSE(1+${each.map((begun) => `(${dates}>=${begun})`).join("+")},"Feeding",${[...STAGES, "Feeding"].map(quoted).join(",")})`,
    ),
});
