import { isoOf } from "../../dates";
import { count, date, optional, plan } from "../../define";
import { Problem, notUsable } from "../../problem";
import { orderedPlan } from "../../shared/plan";
import { mealsBetween } from "./meals";

/** The limit keeps slips out: the largest snakes go months without food. */
export const interval = count("day", "Days from meal to meal; practice: 7 for adults, 5 for young", [1, 366]);
export const fast = optional(
  plan("Winter plan: the six rows of RAMPDATES, or just their dates; no meal inside its fast"),
  "no fast",
);

/** What a function needs that lists or counts the meals of a time. */
export const mealParameters = {
  from: date("First day, and first meal if it is outside the fast"),
  to: date("Last day, at most ten years later"),
  interval,
  plan: optional(
    plan("Winter plan: the six rows of RAMPDATES, or just their dates; its fast is left out, in other years alike"),
    "no fast",
  ),
};

/** Ten years, in days. */
export const LONGEST = 3660;

interface Asked {
  readonly from: number;
  readonly to: number;
  readonly interval: number;
  readonly plan: readonly number[] | undefined;
}

/** The meals that these arguments ask for, perhaps none, or the problem with them. */
export const mealsAsked = ({ from, to, interval, plan }: Asked): readonly number[] | Problem => {
  if (to < from) return notUsable(`to holds ${isoOf(to)}: give from, ${isoOf(from)}, or a later day`);
  if (to - from > LONGEST)
    return notUsable(`to holds ${isoOf(to)}: give a day up to ${isoOf(from + LONGEST)}, ten years after from`);
  const ordered = plan && orderedPlan(plan);
  return ordered instanceof Problem ? ordered : mealsBetween(from, to, interval, ordered);
};
