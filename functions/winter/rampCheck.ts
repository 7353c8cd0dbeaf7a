import { isoOf } from "../dates";
import { column, date, defineFunction, optional, plan, quantity, table, unitsParameter } from "../define";
import { NOTHING, checkRows, type Measured } from "../rules/rule";
import { rampRules, type Measure } from "../rules/winterPlan";
import { TEMPERATURE } from "../shared/limits";
import { insideFast, planOf, PLAN_ROWS, type Plan } from "../shared/plan";
import { setPoints } from "../shared/setPoints";

interface Given {
  readonly plan: readonly number[];
  readonly warm: number;
  readonly cold: number;
  readonly meals?: readonly number[] | undefined;
  readonly tooCold?: number | undefined;
  readonly tooWarm?: number | undefined;
}

const measure = ({ plan, warm, cold, meals, tooCold, tooWarm }: Given): Record<Measure, Measured> => {
  const { lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal } = planOf(plan);
  const length = (from: number, to: number): Measured => ({ value: to < from ? undefined : to - from, unit: "day" });
  const astray = plan.flatMap((day, row) =>
    day < (plan[row - 1] ?? day) ? [`${PLAN_ROWS[row]} is before ${PLAN_ROWS[row - 1]}`] : [],
  );
  // With dates out of order the fast is taken as wide as they allow, so that no meal slips through.
  const fast = { lastMeal: Math.min(...plan), firstMeal: Math.max(...plan) } as Plan;
  const eaten = meals?.filter((day) => insideFast(fast, day)).sort((a, b) => a - b);
  return {
    order: { value: astray.length, unit: "none", told: astray.join("; ") },
    // Two set-points 1.8 °F apart are 1 K apart, whatever is lost in their conversion.
    drop: { value: Number((warm - cold).toFixed(9)), unit: "kelvin" },
    meals: {
      value: eaten?.length,
      unit: "none",
      told: `${eaten?.length === 1 ? "1 meal" : `${eaten?.length} meals, the first`} on ${isoOf(eaten?.[0] ?? lastMeal)}`,
    },
    clearing: length(lastMeal, coolingStarts),
    cooling: length(coolingStarts, intoTheCold),
    cold: length(intoTheCold, warmingStarts),
    warming: length(warmingStarts, warmAgain),
    settling: length(warmAgain, firstMeal),
    warm: { value: warm, unit: "celsius" },
    temperature: { value: cold, unit: "celsius" },
    tooWarm: { value: warm, unit: "celsius", own: tooWarm },
    tooCold: { value: cold, unit: "celsius", own: tooCold },
  };
};

/**
 * The rules stand in rules/winterPlan.ts, one line each. A limit itself passes: 14 days of clearing are enough, 13 are
 * not. A meal on the day of the last meal or of the first is no meal inside the fast. Dates out of order are answered as
 * a stop, and all else that can be told of them is told as well. What was not given is told last.
 */
export const rampCheck = defineFunction({
  name: "RAMPCHECK",
  summary: "What stands out in a winter plan, gravest first: stop, care or note, and the words.",
  parameters: {
    plan: plan(),
    ...setPoints,
    meals: optional(column(date("Days of all meals given or planned"), { blank: "skip" }), "meals are not checked"),
    units: unitsParameter,
    tooCold: optional(
      quantity("celsius", "Your own limit: too cold for this animal below", TEMPERATURE),
      "not checked",
    ),
    tooWarm: optional(
      quantity("celsius", "Your own limit: too warm for this animal above", TEMPERATURE),
      "not checked",
    ),
  },
  result: table(
    { name: "Level", unit: "text", about: "stop, care or note" },
    { name: "Words", unit: "text", about: "What stands out, and whether that is practice or sourced" },
  ),
  sources: ["practice", "ownLimit", "bonaGalloLicht", "costanzo"],
  cautions: ["noVetCheck", "coldKills", "noFoodInTheCold", "noVet"],
  examples: [
    {
      given: [
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        24,
        8,
        [["2026-09-21"]],
        "metric",
        4,
        28,
      ],
      gives: [["note", NOTHING]],
      within: 0,
    },
    {
      given: [
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        24,
        8,
        [["2026-09-21"], ["2026-10-12"], ["2027-03-29"]],
        "metric",
        4,
        28,
      ],
      gives: [
        [
          "stop",
          "Food inside the fast, 1 meal on 2026-10-12: it can rot in a cold gut and kill (common practice, no source).",
        ],
      ],
      within: 0,
    },
  ],
  calculate: ({ units, ...given }) => checkRows(rampRules, measure(given), units),
});
