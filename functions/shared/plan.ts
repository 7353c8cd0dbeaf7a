import { isoOf } from "../dates";
import { type Problem, notUsable } from "../problem";
import { REFUSED, between as betweenText } from "../twin";

/** The six dates of a winter plan, in order, as serial numbers. Two of them may be the same day. */
export interface Plan {
  readonly lastMeal: number;
  readonly coolingStarts: number;
  readonly intoTheCold: number;
  readonly warmingStarts: number;
  readonly warmAgain: number;
  readonly firstMeal: number;
}

/** What the six dates are called, in order. */
export const PLAN_ROWS = [
  "Last meal",
  "Cooling starts",
  "Into the cold",
  "Warming starts",
  "Warm again",
  "First meal",
] as const;

/** What the animal goes through between the six dates; before the first and from the last on it is fed. */
export const STAGES = ["Clearing", "Cooling", "Cold", "Warming", "Settling"] as const;
export type Stage = "Feeding" | (typeof STAGES)[number];

/** The six dates of a plan, in the order of its rows. */
export const datesOf = (plan: Plan): readonly number[] => [
  plan.lastMeal,
  plan.coolingStarts,
  plan.intoTheCold,
  plan.warmingStarts,
  plan.warmAgain,
  plan.firstMeal,
];

/** The plan of six dates in the order of its rows. */
export const planOf = (dates: readonly number[]): Plan => {
  const [lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal] = dates as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return { lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal };
};

/** The plan of six dates, or the problem: the first date that stands before the one above it. */
export const orderedPlan = (dates: readonly number[]): Plan | Problem => {
  for (let i = 1; i < dates.length; i++) {
    const [before, after] = [dates[i - 1] as number, dates[i] as number];
    if (after < before) {
      return notUsable(
        `plan holds ${PLAN_ROWS[i]} ${isoOf(after)}, before ${PLAN_ROWS[i - 1]} ${isoOf(before)}: give its dates in order`,
      );
    }
  }
  return planOf(dates);
};

/**
 * Whether the day belongs to the fast: from the day after the last meal up to the day before the first meal.
 * The days of the two meals are days of feeding.
 */
export const insideFast = ({ lastMeal, firstMeal }: Plan, day: number): boolean => day > lastMeal && day < firstMeal;

/**
 * The stage on a day. A stage begins on its date and ends the day before the next date, so that it lasts exactly as
 * many days as were planned: the day of the last meal is the first of clearing, and that of the first meal is feeding
 * again. A stage of no days never occurs.
 */
export const stageOn = (plan: Plan, day: number): Stage => {
  const begun = datesOf(plan).filter((date) => date <= day).length;
  return STAGES[begun - 1] ?? "Feeding";
};

/** The value at `share` of the straight way between two; exactly the ends at 0 and 1, and never outside them. */
export const between = (from: number, to: number, share: number): number => {
  const value = from * (1 - share) + to * share;
  return Math.min(Math.max(value, Math.min(from, to)), Math.max(from, to));
};

/**
 * The set-point on a day: warm until cooling starts, straight down to cold, cold until warming starts, straight up to
 * warm. On the dates themselves it is exactly warm or cold. A leg of no days is a jump on its date.
 */
export const setPointOn = (plan: Plan, warm: number, cold: number, day: number): number => {
  const { coolingStarts, intoTheCold, warmingStarts, warmAgain } = plan;
  if (day >= warmAgain) return warm;
  if (day >= warmingStarts) return between(cold, warm, (day - warmingStarts) / (warmAgain - warmingStarts));
  if (day >= intoTheCold) return cold;
  if (day >= coolingStarts) return between(warm, cold, (day - coolingStarts) / (intoTheCold - coolingStarts));
  return warm;
};

/** In a formula: what is answered of a plan whose dates are in order; #VALUE! of any other. */
export const inOrder = (dates: readonly string[], answer: string): string =>
  `IF(AND(${dates
    .slice(1)
    .map((after, i) => `${dates[i]}<=${after}`)
    .join(",")}),${answer},${REFUSED})`;

/** `setPointOn` in a formula. */
export const setPointText = (dates: readonly string[], warm: string, cold: string, day: string): string => {
  const [, cooling, intoCold, warming, warmAgain] = dates as [string, string, string, string, string];
  const share = (from: string, to: string): string => `(${day}-${from})/(${to}-${from})`;
  return (
    `IF(OR(${day}>=${warmAgain},${day}<${cooling}),${warm},` +
    `IF(${day}>=${warming},${betweenText(cold, warm, share(warming, warmAgain))},` +
    `IF(${day}>=${intoCold},${cold},${betweenText(warm, cold, share(cooling, intoCold))})))`
  );
};
