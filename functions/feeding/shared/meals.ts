import { insideFast, type Plan } from "../../shared/plan";

/** `interval` days after `last`; a day inside the fast becomes the plan's first meal. Always later than `last`. */
export const mealAfter = (last: number, interval: number, plan: Plan | undefined): number => {
  const next = last + interval;
  return plan && insideFast(plan, next) ? plan.firstMeal : next;
};

/** The meals from `from` to `to`, both included: `from` itself unless it is inside the fast, then each after the other. */
export const mealsBetween = (from: number, to: number, interval: number, plan: Plan | undefined): number[] => {
  const meals: number[] = [];
  for (let day = mealAfter(from, 0, plan); day <= to; day = mealAfter(day, interval, plan)) meals.push(day);
  return meals;
};
