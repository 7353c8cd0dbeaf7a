import {
  CLEAR_DAYS,
  COLD_LEAST,
  COLD_MOST,
  FREEZING_NEAR,
  GUT_SLOW,
  GUT_STILL,
  HASTY_DAYS,
  RAMP_DAYS,
  SETTLE_DAYS,
  WARM_MOST,
} from "./limits";
import type { Rule } from "./rule";

/**
 * What RAMPCHECK looks at.
 * order: how many of the six dates are before the one above. drop: normal set-point less cold set-point, K.
 * meals: how many lie from the day after the last meal to the day before the first. clearing, cooling, cold, warming,
 * settling: lengths in days. warm, temperature: set-points, normal and in the cold, °C. tooWarm, tooCold: the same two
 * against the animal's own limits.
 */
export type Measure =
  | "order"
  | "drop"
  | "meals"
  | "clearing"
  | "cooling"
  | "cold"
  | "warming"
  | "settling"
  | "warm"
  | "temperature"
  | "tooWarm"
  | "tooCold";

const bred = {
  words: "Female garter snakes came into breeding after 16 weeks or more at {4}, not after 20 weeks at {17}",
  source: "bonaGalloLicht",
} as const;
const kept = {
  words: "Garter snakes kept at {4} for 165 days lost no weight; other snakes may",
  source: "costanzo",
} as const;
const unseen = (words: string) => ({ level: "note", words }) as const;

/**
 * Every rule of RAMPCHECK, one line each, gravest first. The limits are common practice with montane snakes; we know
 * of no published ones. To change a rule, change its line.
 */
// prettier-ignore
export const rampRules: readonly Rule<Measure>[] = [
  { of: "order", over: 0, level: "stop", source: "definition", words: "Dates out of order: {is}" },
  { of: "drop", under: 1, level: "stop", source: "definition", words: "Warm lies {is} above cold: were the two swapped?" },
  { of: "meals", over: 0, level: "stop", source: "practice", words: "Food inside the fast, {is}: it can rot in a cold gut and kill", blank: unseen("Meals were not given and not checked.") },
  { of: "clearing", under: CLEAR_DAYS, level: "stop", source: "practice", words: "{is} at normal temperature after the last meal: give {limit} or more, so that the gut is empty" },
  { of: "cooling", under: RAMP_DAYS, level: "stop", source: "practice", words: "Cooled within {is}: take {limit} or more" },
  { of: "warming", under: HASTY_DAYS, level: "stop", source: "practice", words: `Warmed within {is}: take ${RAMP_DAYS} days or more, and never less than {limit} without your vet` },
  { of: "temperature", under: FREEZING_NEAR, level: "stop", source: "practice", words: "Cold of {is}: stay at {limit} or above, so that a fault of the thermostat does not freeze the animal" },
  { of: "tooCold", under: "own", level: "stop", source: "ownLimit", words: "Cold of {is}: below {limit} is too cold for this animal", blank: unseen("Too cold for this animal was not given and not checked.") },
  { of: "tooWarm", over: "own", level: "stop", source: "ownLimit", words: "Warm of {is}: above {limit} is too warm for this animal", blank: unseen("Too warm for this animal was not given and not checked.") },
  { of: "warm", over: WARM_MOST, level: "stop", source: "practice", words: "Warm of {is}: a montane snake held above {limit} with no cooler place can die of heat" },
  { of: "warm", under: GUT_STILL, level: "stop", source: "practice", words: "Warm of {is}: below {limit} the gut hardly empties, and what is left in it can rot in the cold" },
  { of: "cold", over: 240, level: "stop", source: "practice", words: "{is} in the cold: more than {limit} is no winter, and the reserves may not last" },
  { of: "warming", under: RAMP_DAYS, level: "care", source: "practice", words: "Warmed within {is}: take {limit} or more" },
  { of: "settling", under: SETTLE_DAYS, level: "care", source: "practice", words: "Food {is} after it is warm again: wait {limit} or more, until it moves well and has drunk" },
  { of: "temperature", under: COLD_LEAST, level: "care", source: "practice", words: "Cold of {is}: below {limit} there is little room for a fault of the thermostat" },
  { of: "temperature", over: COLD_MOST, level: "care", source: "practice", words: "Cold of {is}: above {limit} the animal uses up its reserves faster", known: bred },
  { of: "warm", under: GUT_SLOW, level: "care", source: "practice", words: "Warm of {is}: below {limit} the gut empties slowly; give it more days, and see droppings before cooling" },
  { of: "cold", over: 165, level: "care", source: "practice", words: "{is} in the cold: longer than {limit}, the longest that we know of a study; weigh every week", known: kept },
  { of: "cold", under: 70, level: "note", source: "practice", words: "{is} in the cold: {limit} or more are usual", known: bred },
  { of: "cold", over: 98, level: "note", source: "practice", words: "{is} in the cold: up to {limit} are usual; weigh more often", known: kept },
];
