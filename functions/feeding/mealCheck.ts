import { isoOf } from "../dates";
import { columns, count, date, defineFunction, optional, plan, quantity, unitsParameter, type Given } from "../define";
import { Problem, notUsable } from "../problem";
import { FIRST_MEAL_PART, ITEM_SHARE, MEAL_SHARE } from "../rules/limits";
import { mealRules, type Measure } from "../rules/meal";
import { NOTHING, orNothing, sayings, type Measured } from "../rules/rule";
import { phaseOn } from "../rules/stages";
import { BODY_MASS, TEMPERATURE } from "../shared/limits";
import { insideFast, orderedPlan, type Plan } from "../shared/plan";
import { swapped } from "../shared/swapped";
import { RATIO } from "./shared/ratio";

const parameters = {
  date: date("Day of the meal"),
  body: quantity("gram", "Mass of the animal before the meal", BODY_MASS),
  mealMass: quantity("gram", "Mass of the prey, all items of the meal together", [0.01, 100_000]),
  itemMass: quantity("gram", "Mass of the heaviest item", [0.01, 100_000]),
  plan: optional(plan(), "no fast is looked for"),
  lastMeal: optional(date("Day of the meal before this one"), "not checked"),
  leastDays: optional(count("day", "Your own least days from meal to meal", [1, 366]), "not checked"),
  nights: optional(quantity("celsius", "Coolest night in the days after it", TEMPERATURE), "not checked"),
  units: unitsParameter,
  weighedOn: optional(date("Day on which the body was weighed"), "not checked"),
  mealRatio: optional(
    quantity("share", "Your own largest meal divided by body mass", ...RATIO),
    `${MEAL_SHARE}, practice`,
  ),
  itemRatio: optional(
    quantity("share", "Your own heaviest item divided by body mass", ...RATIO),
    `${ITEM_SHARE}, practice`,
  ),
  leastItemRatio: optional(
    quantity("share", "Your own lightest item divided by body mass: below it the size is outgrown", ...RATIO),
    "not checked",
  ),
};

type Asked = Omit<Given<typeof parameters>, "plan" | "units"> & { readonly plan: Plan | undefined };

/** Shares are compared as percentages to a millionth: a tenth of the body is no more than a tenth. */
const percent = (share: number): number => Number((share * 100).toFixed(6));

const measure = (given: Asked): Record<Measure, Measured> => {
  const { date, body, mealMass, itemMass, plan, lastMeal, leastDays, nights, weighedOn } = given;
  const mealRatio = given.mealRatio ?? MEAL_SHARE;
  const phase = plan && phaseOn(plan, date, lastMeal);
  const isFirst = phase === "First meals";
  const { leastItemRatio } = given;
  // Counted by the heaviest: two items of unlike mass are more than one.
  const items = Math.ceil(Number((mealMass / itemMass).toFixed(6)));
  return {
    fast: plan
      ? {
          value: Number(insideFast(plan, date)),
          unit: "none",
          told: `${isoOf(plan.lastMeal)} to ${isoOf(plan.firstMeal)}`,
        }
      : { value: undefined, unit: "none" },
    firstMeal: {
      value: isFirst ? percent(mealMass / body) : undefined,
      unit: "percent",
      own: percent(mealRatio * FIRST_MEAL_PART),
    },
    firstItems: { value: isFirst ? items : undefined, unit: "none" },
    item: { value: percent(itemMass / body), unit: "percent", own: percent(given.itemRatio ?? ITEM_SHARE) },
    // A single item is judged as an item: prey comes in sizes, and one is the least that can be given.
    meal: { value: items > 1 ? percent(mealMass / body) : undefined, unit: "percent", own: percent(mealRatio) },
    daysSince: { value: lastMeal === undefined ? undefined : date - lastMeal, unit: "day", own: leastDays },
    nights: { value: nights, unit: "celsius" },
    outgrown: {
      // The last meal before the cold and the first ones after it are small on purpose.
      value: isFirst || phase === "Last meal" ? undefined : percent(itemMass / body),
      unit: "percent",
      own: leastItemRatio === undefined ? undefined : percent(leastItemRatio),
    },
    weighing: { value: weighedOn === undefined ? undefined : date - weighedOn, unit: "day" },
  };
};

/**
 * The rules stand in rules/meal.ts, one line each. All that speaks against the meal stands in one cell, gravest first, and
 * its gravest level before it. The first meals are those of the fourteen days from the plan's first meal on, and any later
 * one of an animal that last ate before that.
 */
export const mealCheck = defineFunction({
  name: "MEALCHECK",
  summary: "What speaks against a meal, in one line: its gravest level, stop, care or note, and the words.",
  parameters,
  result: columns(
    { name: "Level", unit: "text", about: "The gravest: stop, care or note" },
    { name: "Words", unit: "text", about: "All that speaks against the meal, gravest first" },
  ),
  sources: ["practice", "ownLimit"],
  cautions: ["meal", "noFoodInTheCold", "noVet"],
  examples: [
    {
      given: [
        "2027-05-03",
        240,
        24,
        8,
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        "2027-04-26",
        5,
        18,
        "metric",
        "2027-04-20",
      ],
      gives: [["note", NOTHING]],
      within: 0,
    },
    {
      given: [
        "2027-03-29",
        240,
        48,
        24,
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        "2026-09-21",
        5,
        18,
        "metric",
        "2027-03-28",
      ],
      gives: [
        [
          "stop",
          "First meals after the cold, 20 % of the body: at most half the usual, 5 % (common practice, no source). " +
            "A meal of 20 % of the body: more than 10 % is large (common practice, no source). " +
            "First meals after the cold: one small item, not several (common practice, no source).",
        ],
      ],
      within: 0,
    },
  ],
  calculate({ plan, units, ...given }) {
    const ordered = plan && orderedPlan(plan);
    if (ordered instanceof Problem) return ordered;
    const { date, mealMass, itemMass } = given;
    const fault = swapped(["itemMass", itemMass], ["mealMass", mealMass], "gram", units);
    if (fault) return fault;
    for (const name of ["lastMeal", "weighedOn"] as const) {
      const day = given[name];
      if (day !== undefined && day > date) {
        return notUsable(
          `${name} holds ${isoOf(day)}, after the meal on ${isoOf(date)}: give that day or an earlier one`,
        );
      }
    }
    const said = orNothing(sayings(mealRules, measure({ ...given, plan: ordered }), units));
    return [(said[0] as { level: string }).level, said.map(({ words }) => words).join(" ")];
  },
});
