import { addYears } from "date-fns";
import { dateOf, serialOf } from "../../dates";
import { datesOf, inOrder, insideFast, planOf, type Plan } from "../../shared/plan";
import { MISSING } from "../../twin";

/** The part of the days between meals that must have gone by before the plan's last meal is given too: practice, no source. */
export const LEAST_WAIT = 0.5;
const YEAR = 365;

/**
 * `interval` days after `last`. Where that lies in the fast it is the plan's last meal, which is given though it comes
 * sooner, or its first, where the last comes too soon after a meal or has been given. Always later than `last`.
 */
export const mealAfter = (last: number, interval: number, plan: Plan | undefined): number => {
  const next = last + interval;
  if (!plan || !insideFast(plan, next)) return next;
  const wait = plan.lastMeal - last;
  return wait > 0 && wait >= LEAST_WAIT * interval ? plan.lastMeal : plan.firstMeal;
};

/** The plan in each year from `from` to `to`, on the same days: a plan is of one winter, and the next comes as surely. */
const winters = (plan: Plan, from: number, to: number): readonly Plan[] => {
  if (plan.firstMeal - plan.lastMeal >= YEAR) return [plan];
  const yearOf = (day: number): number => dateOf(day).getFullYear();
  const first = yearOf(from) - yearOf(plan.firstMeal);
  const many = yearOf(to) - yearOf(from) + 2;
  return Array.from({ length: many }, (_, i) =>
    planOf(datesOf(plan).map((day) => serialOf(addYears(dateOf(day), first + i)))),
  );
};

/** The meals from `from` to `to`, both included: `from` itself unless it is inside a fast, then each after the other. */
export const mealsBetween = (from: number, to: number, interval: number, plan: Plan | undefined): number[] => {
  const all = plan ? winters(plan, from, to) : [];
  const after = (last: number, days: number): number =>
    mealAfter(
      last,
      days,
      all.find(({ firstMeal }) => firstMeal > last + days),
    );
  const meals: number[] = [];
  for (let day = after(from, 0); day <= to; day = after(day, interval)) meals.push(day);
  return meals;
};

/** In a formula, a date on its day in each of some years; 29 February is the 28th in other years. */
const inYears = (date: string, years: string): string => {
  const day = `DATE(${years},MONTH(${date}),DAY(${date}))`;
  return `(${day}-(DAY(${day})<>DAY(${date})))`;
};

/** `mealsBetween`, counted in a formula. */
export const mealsText = (from: string, to: string, interval: string): string => `INT((${to}-${from})/${interval})+1`;

/**
 * The same with a fast in every winter. The meals of each season follow from the winter's first meal, or from the first day
 * asked, up to the next winter's last meal, which is given too where enough of the interval has gone by. That holds where
 * no interval leaps over a fast: a fast shorter than that, or of a year or longer, is not counted, and answers #N/A.
 */
export const mealsOfSeasonsText = (from: string, to: string, interval: string, dates: readonly string[]): string => {
  const [lastMeal, firstMeal] = [dates[0] as string, dates[5] as string];
  // The season that begins in the year before the first day asked, and those of the eleven years in which ten may end.
  const years = `{-1,0,1,2,3,4,5,6,7,8,9,10,11}+YEAR(${from})`;
  const begins = inYears(firstMeal, years);
  const ends = inYears(lastMeal, `${years}+1+YEAR(${lastMeal})-YEAR(${firstMeal})`);
  const start = `(${begins}+(${begins}<${from})*(${from}-${begins}))`;
  const end = `(${ends}-(${ends}>${to})*(${ends}-${to}))`;
  const lastToo = `(${ends}<=${to})*(MOD(${ends}-${start},${interval})>=${LEAST_WAIT}*${interval})`;
  const meals = `SUMPRODUCT((${end}>=${start})*(INT((${end}-${start})/${interval})+1+${lastToo}))`;
  const fast = `${firstMeal}-${lastMeal}`;
  const counted = `IF(OR(${fast}<${interval},${fast}>=${YEAR}),${MISSING},${meals})`;
  return inOrder(dates, `IF(${fast}<2,${mealsText(from, to, interval)},${counted})`);
};
