import { PLAN_ROWS, type Plan } from "../../../functions/shared/plan";
import { form, type Field } from "./form";
import type { Cell } from "./names";
import { winter } from "./scenario";
import { date } from "./takes";
import { isoText } from "./words";

/** The names of the six dates, in order. */
export const PLAN_DATES = [
  "lastMeal",
  "coolingStarts",
  "intoTheCold",
  "warmingStarts",
  "warmAgain",
  "firstMeal",
] as const satisfies readonly (keyof Plan)[];

/** The six dates as fields of a form: they belong to the Cooling plan; all may stay blank. */
export const planDateFields = (wide = 1): Readonly<Record<(typeof PLAN_DATES)[number], Field>> =>
  Object.fromEntries(
    PLAN_DATES.map((key, i) => [
      key,
      {
        label: PLAN_ROWS[i] ?? "",
        value: winter.dates[i] ?? null,
        from: `coolingPlan.dates.${key}`,
        format: "date",
        takes: date,
        wide,
        ...(i === 0
          ? {
              note: "The six dates of the sheet Cooling plan, or none. A cell may point there: type = and click its date.",
            }
          : {}),
      },
    ]),
  ) as Record<(typeof PLAN_DATES)[number], Field>;

/** The six dates of a form, for formulas. */
export const datesIn = ({ lastMeal, firstMeal }: Readonly<Record<"lastMeal" | "firstMeal", Cell>>): string =>
  `${lastMeal}:${firstMeal}`;

/** The six dates under a heading; `plan.dates` are all of them, for formulas. */
export const winterPlan = (
  across: number,
  wide = 1,
): ReturnType<typeof form<(typeof PLAN_DATES)[number]>> & { readonly dates: string } => {
  const plan = form("plan", "Winter plan", planDateFields(wide), { across });
  return Object.assign(plan, { dates: datesIn(plan) });
};

const ends = (dates: string): readonly [first: string, last: string] => dates.split(":") as [string, string];

/** Whether all six dates are there, inside a formula: a cell that points to an empty plan counts as blank. */
export const hasPlan = (dates: string): string => `COUNT(${dates})=${PLAN_ROWS.length}`;

/** Whether some of the six dates are there and some are not, inside a formula: the fast may be meant and cannot be known. */
export const hasPartOfPlan = (dates: string): string => `AND(COUNT(${dates})>0,COUNT(${dates})<${PLAN_ROWS.length})`;

/** Whether a day lies between the last meal and the first, both left out, inside a formula; a plan that cannot be read spoils nothing. */
export const insideFast = (day: string, dates: string): string => {
  const [lastMeal, firstMeal] = ends(dates);
  return `IF(${hasPlan(dates)},AND(${day}>${lastMeal},${day}<${firstMeal}),FALSE)`;
};

/** Whether some of the six dates cannot be read, inside a formula: those of a plan whose sheet is gone. */
const isPlanGone = (dates: string): string => `SUMPRODUCT(ISERROR(${dates})*1)>0`;

/** Says which fast there is and for whom, that none is known, or that a date is missing or gone, which must not pass for either. */
export const fastWords = (dates: string): string => {
  const [lastMeal, firstMeal] = ends(dates);
  return `=IF(${isPlanGone(dates)},"The dates of the plan cannot be read: its sheet may be gone. Which fast there is is not known.",IF(${hasPlan(dates)},"No food after "&${isoText(lastMeal)}&" until "&${isoText(firstMeal)}&" for animals that follow this plan.",IF(${hasPartOfPlan(dates)},"A date of the plan is missing: no next meal is worked out.","No plan: no fast is known here.")))`;
};
