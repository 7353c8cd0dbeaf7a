import { cell, date, defineFunction, plan, unitsParameter } from "../define";
import { Problem } from "../problem";
import { inOrder, orderedPlan, setPointOn, setPointText } from "../shared/plan";
import { setPoints, coldAboveWarm } from "../shared/setPoints";
import { refusedIf } from "../twin";

/**
 * Exactly `warm` up to and on the day cooling starts, exactly `cold` from the day into the cold up to and on the day
 * warming starts, exactly `warm` from the day it is warm again; straight in between, and never outside the two. A leg
 * of no days is a jump on its date.
 */
export const setPoint = defineFunction({
  name: "SETPOINT",
  summary: "The set-point on each date of a winter plan: straight down, cold, straight up, warm before and after.",
  parameters: {
    dates: date("Day to answer for"),
    plan: plan(),
    ...setPoints,
    units: unitsParameter,
  },
  result: cell("celsius", "Set-point on that day"),
  sources: ["definition"],
  cautions: ["coldKills", "noVet"],
  examples: [
    {
      given: [
        [["2026-10-05"], ["2026-10-26"], ["2027-01-01"], ["2027-03-01"], ["2027-03-22"]],
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        24,
        8,
      ],
      gives: [[24], [16], [8], [16], [24]],
      within: 1e-9,
    },
  ],
  calculate({ dates, plan, warm, cold, units }) {
    const ordered = orderedPlan(plan);
    if (ordered instanceof Problem) return ordered;
    return coldAboveWarm(warm, cold, units) ?? setPointOn(ordered, warm, cold, dates);
  },
  twin: ({ dates, plan: { each }, warm, cold }) =>
    inOrder(each, refusedIf(`${cold}>${warm}`, setPointText(each, warm, cold, dates))),
});
