import { columns, date, defineFunction, plan } from "../define";
import { Problem } from "../problem";
import { care, lightShare, phaseOn } from "../rules/stages";
import { orderedPlan } from "../shared/plan";

/**
 * The words stand in rules/stages.ts, one line a stage. The day of the last meal and the fourteen days from the first meal
 * on have words of their own. The share of light falls and rises with the set-point.
 */
export const stageCare = defineFunction({
  name: "STAGECARE",
  summary: "What the stage of a winter plan asks for on each date: food, light, moisture, nights and soaking.",
  parameters: {
    dates: date("Day to answer for"),
    plan: plan(),
  },
  result: columns(
    { name: "Food", unit: "text", about: "as usual, none, or which meal" },
    { name: "Light", unit: "text", about: "day length, shortening, dark or lengthening" },
    { name: "Moisture", unit: "text", about: "as the season, moist, or moist, never wet" },
    { name: "Nights", unit: "text", about: "as the season, warm, or set-point" },
    { name: "Soaking", unit: "text", about: "none needed, none, or how" },
    { name: "Share of light", unit: "share", about: "Hours of light as a share of the day's length" },
  ),
  sources: ["practice"],
  cautions: ["noFoodInTheCold", "noVet"],
  examples: [
    {
      given: [
        [["2026-10-01"], ["2026-10-26"], ["2027-01-01"]],
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
      ],
      gives: [
        ["none", "day length", "moist", "warm", "shallow, lukewarm, watched", 1],
        ["none", "shortening", "moist, never wet", "set-point", "none", 0.5],
        ["none", "dark", "moist, never wet", "set-point", "none", 0],
      ],
      within: 1e-9,
    },
  ],
  calculate({ dates, plan }) {
    const ordered = orderedPlan(plan);
    if (ordered instanceof Problem) return ordered;
    const { food, light, moisture, nights, soaking } = care[phaseOn(ordered, dates)];
    return [food, light, moisture, nights, soaking, lightShare(ordered, dates)];
  },
});
