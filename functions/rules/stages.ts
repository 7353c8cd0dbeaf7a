import { FIRST_MEAL_DAYS } from "./limits";
import { setPointOn, stageOn, type Plan, type Stage } from "../shared/plan";

/** What a stage asks for. Every word that a sheet says of a stage stands here. */
export interface Care {
  readonly food: string;
  readonly light: string;
  readonly moisture: string;
  readonly nights: string;
  readonly soaking: string;
  /** What to do today, and what never to do. */
  readonly toDo: string;
  readonly never: string;
}

/** The stages, and the two times of feeding that are no usual ones. */
export type Phase = Stage | "Last meal" | "First meals";

const soak = "shallow, lukewarm, watched";

/** Common practice with montane snakes, no source. To change what is said of a stage, change its line. */
export const care: Readonly<Record<Phase, Care>> = {
  Feeding: {
    food: "as usual",
    light: "day length",
    moisture: "as the season",
    nights: "as the season",
    soaking: "none needed",
    toDo: "Fresh water.",
    never: "No meal above your limit. No meal when the nights are too cool to digest.",
  },
  "Last meal": {
    food: "last meal, a small one",
    light: "day length",
    moisture: "moist",
    nights: "warm",
    soaking: "none needed",
    toDo: "Warm nights, fresh water.",
    never: "No food after today.",
  },
  Clearing: {
    food: "none",
    light: "day length",
    moisture: "moist",
    nights: "warm",
    soaking: soak,
    toDo: "Warm, nights too, until droppings are seen. Watched soak, weigh, fresh water.",
    never: "No food. No cooling before the gut is empty, nor if gravid, thin or ill.",
  },
  Cooling: {
    food: "none",
    light: "shortening",
    moisture: "moist, never wet",
    nights: "set-point",
    soaking: "none",
    toDo: "Turn down to the set-point. Shorten the light. Weigh, fresh water.",
    never: "No food. No soaking once it is cool. No jump in temperature.",
  },
  Cold: {
    food: "none",
    light: "dark",
    moisture: "moist, never wet",
    nights: "set-point",
    soaking: "none",
    toDo: "Read the thermometer. Fresh water, air the box. Weigh when due.",
    never: "No food. No soaking. No warming for a day and back.",
  },
  Warming: {
    food: "none",
    light: "lengthening",
    moisture: "moist, never wet",
    nights: "set-point",
    soaking: "none",
    toDo: "Turn up to the set-point. More light. Weigh, fresh water.",
    never: "No food yet, even if it looks hungry. No jump in temperature.",
  },
  Settling: {
    food: "none",
    light: "day length",
    moisture: "moist",
    nights: "warm",
    soaking: soak,
    toDo: "Warm, nights too, with a basking place. Let it drink, watched soak, weigh.",
    never: "No food until the first meal's day, nor before it moves well and has drunk.",
  },
  "First meals": {
    food: "half the usual, one small item",
    light: "day length",
    moisture: "as the season",
    nights: "warm",
    soaking: "none needed",
    toDo: "Warm nights, fresh water, weigh.",
    never: "No full meal yet. No cool nights on a full gut.",
  },
};

/**
 * The phase on a day: the stage, but for the day of the last meal and the first meals after the cold. Where it has not
 * eaten since, the first is still to come, however late.
 */
export const phaseOn = (plan: Plan, day: number, ate = plan.firstMeal): Phase => {
  if (day === plan.lastMeal && plan.lastMeal < plan.firstMeal) return "Last meal";
  if (day >= plan.firstMeal && (day < plan.firstMeal + FIRST_MEAL_DAYS || ate < plan.firstMeal)) return "First meals";
  return stageOn(plan, day);
};

/** The share of the day's length that is lit: all of it while warm, none in the cold, as the set-point in between. */
export const lightShare = (plan: Plan, day: number): number => setPointOn(plan, 1, 0, day);
