import { NIGHT_SLOW, NIGHT_STILL, WEIGHING_STALE } from "./limits";
import type { Rule } from "./rule";

/**
 * What MEALCHECK looks at.
 * fast: 1 inside the winter fast, 0 outside. firstMeal, firstItems: the meal as a percentage of the body and how many
 * items it holds, for the first meals after the cold. item: the heaviest item, percent of the body. meal: the meal,
 * percent of the body, where it is of more than one item. daysSince: days since the last meal. nights: °C. weighing: days
 * since the body was weighed. outgrown: the heaviest item, percent of the body, on days on which a meal need not be small.
 */
export type Measure =
  "fast" | "firstMeal" | "firstItems" | "item" | "meal" | "daysSince" | "nights" | "weighing" | "outgrown";

/** What is told where no plan was given: of an animal that does not winter it is no news. */
export const NO_PLAN = "No winter plan was given: a fast was not looked for.";

const unseen = (words: string) => ({ level: "note", words }) as const;

/** Every rule of MEALCHECK, one line each, gravest first. Shares of body mass are the keeper's own or practice. */
// prettier-ignore
export const mealRules: readonly Rule<Measure>[] = [
  { of: "fast", over: 0, level: "stop", source: "practice", words: "Inside the winter fast, {is}: no food, it can rot in a cold gut and kill", blank: unseen(NO_PLAN) },
  { of: "firstMeal", over: "own", level: "stop", source: "practice", words: "First meals after the cold, {is} of the body: at most half the usual, {limit}" },
  { of: "nights", under: NIGHT_STILL, level: "stop", source: "practice", words: "Nights of {is}: below {limit} the gut hardly works, and the meal can rot", blank: unseen("Nights were not given and not checked.") },
  { of: "item", over: 100, level: "stop", source: "practice", words: "An item of {is} of the body: too big, or a mass mistyped" },
  { of: "item", over: "own", level: "care", source: "practice", words: "An item of {is} of the body: more than {limit} can choke a small-headed snake or be brought up" },
  { of: "meal", over: "own", level: "care", source: "practice", words: "A meal of {is} of the body: more than {limit} is large" },
  { of: "firstItems", over: 1, level: "care", source: "practice", words: "First meals after the cold: one small item, not several" },
  { of: "daysSince", under: "own", level: "care", source: "ownLimit", words: "Only {is} since the last meal: wait {limit} or more", blank: unseen("Last meal or least days between meals were not given and not checked.") },
  { of: "nights", under: NIGHT_SLOW, level: "care", source: "practice", words: "Nights of {is}: below {limit} the gut works slowly; a smaller meal, or warmer nights after it" },
  { of: "weighing", over: WEIGHING_STALE, level: "care", source: "practice", words: "Weighed {is} ago: the shares are of a body mass that is older than {limit}", blank: unseen("When the body was weighed was not given.") },
  { of: "outgrown", under: "own", level: "note", source: "ownLimit", words: "An item of {is} of the body: below {limit} its size is outgrown, look at the next one up" },
];
