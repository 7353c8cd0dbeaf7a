import { PLAN_ROWS } from "../../../functions/shared/plan";
import { form, type Field } from "./form";
import { through, type Cell } from "./names";
import type { Region } from "./region";
import { winter } from "./scenario";
import { cellsOf, date, type Takes } from "./takes";
import { datesIn, PLAN_DATES } from "./winterPlan";

/**
 * Several winter plans side by side, each under its name, which is that of its sheet Cooling plan; and which of them an
 * animal follows. Names are compared as they stand, without MATCH: the columns need not lie side by side.
 */

/** How many plans a sheet takes. */
export const MOST_PLANS = 4;
const NUMBERS = Array.from({ length: MOST_PLANS }, (_, i) => i + 1);
const KEYS = ["name", ...PLAN_DATES] as const;
type Key = (typeof KEYS)[number];

/** The first plan's cells have the plain names, "lastMeal"; those of the second are "lastMeal2", and so on. */
const nameOf = (key: Key, number: number): string => (number === 1 ? key : `${key}${number}`);

const fieldOf = (key: Key, number: number, wide: number): Field => {
  const value = key === "name" ? "Cooling plan" : (winter.dates[PLAN_DATES.indexOf(key)] ?? null);
  return {
    ...(number === 1 ? { label: key === "name" ? "Its sheet" : (PLAN_ROWS[PLAN_DATES.indexOf(key)] ?? "") } : {}),
    ...(number === 1 && key === "name"
      ? {
          note: "The name by which the animals call their plan: that of its sheet Cooling plan. The pane enters a plan here when its sheet is inserted. Four at most: the animals of a fifth go on a second sheet like this one.",
        }
      : {}),
    value: number === 1 ? value : null,
    from: key === "name" ? "coolingPlan" : `coolingPlan.dates.${key}`,
    nth: number,
    wide,
    ...(key === "name" ? {} : { format: "date", takes: date }),
  };
};

export interface WinterPlans extends Region {
  /** What a cell takes that names one of the plans. */
  readonly takes: Takes;
  readonly names: readonly Cell[];
  /** The cells of one date, plan by plan. */
  readonly each: (key: Key) => readonly Cell[];
  /** The six dates of each plan. */
  readonly dates: readonly string[];
}

/** The plans under a heading: their labels `across` columns wide, then so many columns for each. */
export const winterPlans = (across: number, wide: readonly [number, number, number, number]): WinterPlans => {
  const fields = KEYS.flatMap((key) =>
    NUMBERS.map((number) => [nameOf(key, number), fieldOf(key, number, wide[number - 1] ?? 1)] as const),
  );
  const plan = form("plan", "Winter plans", Object.fromEntries(fields), { across });
  const each = (key: Key): readonly Cell[] => NUMBERS.map((number) => plan[nameOf(key, number)] as Cell);
  const names = each("name");
  return {
    region: plan.region,
    names,
    each,
    takes: cellsOf(through(names[0] as Cell, names.at(-1) as Cell), "one of the winter plans of this sheet"),
    dates: NUMBERS.map((number) =>
      datesIn({
        lastMeal: plan[nameOf("lastMeal", number)] as Cell,
        firstMeal: plan[nameOf("firstMeal", number)] as Cell,
      }),
    ),
  };
};

const sum = (tests: readonly string[]): string => tests.map((test) => `(${test})`).join("+");

/** What stands for the plan of that name, inside a formula; `otherwise`, where there is none of that name. */
export const ofPlan = (plans: WinterPlans, name: string, values: readonly unknown[], otherwise = '""'): string =>
  `IF(${name}="","",${plans.names.reduceRight<string>((rest, own, i) => `IF(${name}=${String(own)},${String(values[i])},${rest})`, otherwise)})`;

/** Whether words are the name of a plan, inside a formula, for one animal. */
export const isPlan = ({ names }: WinterPlans, words: string): string =>
  `AND(${words}<>"",OR(${names.map((name) => `${words}=${String(name)}`).join(",")}))`;

/** The plan of an animal that names none: the only one, none, or in words that it has to be said. */
export const onlyPlan = ({ names, dates }: WinterPlans, asked: string): string => {
  const there = sum(names.map((name) => `${String(name)}<>""`));
  return `IF(${there}=1,${names.map(String).join("&")},IF(${there}=0,IF(COUNT(${dates.join(",")})=0,"","The winter plan on this sheet has no name: write one above its dates."),"${asked}"))`;
};

/**
 * The name of the plan that an animal follows, inside a formula, for one animal or a column of them; empty where it does
 * not winter or there is no plan; in words what has to be said first.
 */
export const followed = (plans: WinterPlans, label: unknown, plan: unknown, winters: unknown): string => {
  const [who, named] = [String(label), String(plan)];
  const such = sum(plans.names.map((name) => `${String(name)}=${named}`));
  return (
    `IF(${who}="","",IF(${String(winters)}="no","",IF(${named}="",${onlyPlan(plans, "Which winter plan does it follow? Name one: this sheet holds several.")},` +
    `IF(${such}=0,"No winter plan is called "&${named}&": name one that stands on this sheet.",` +
    `IF(${such}>1,"Two winter plans are called "&${named}&": give each its own name.",${named})))))`
  );
};
