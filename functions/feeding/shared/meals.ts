import { addYears } from "date-fns";
import { dateOf, serialOf } from "../../dates";
import { datesOf, insideFast, planOf, type Plan } from "../../shared/plan";

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
      all.find(({ firstMeal }) => firstMeal > last),
    );
  const meals: number[] = [];
  for (let day = after(from, 0); day <= to; day = after(day, interval)) meals.push(day);
  return meals;
};
