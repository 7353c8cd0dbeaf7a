import type { Rule } from "../../shared/check";

/**
 * What RAMPCHECK looks at.
 * order: how many of the six dates are before the one above. drop: normal set-point less cold set-point, K.
 * meals: how many lie from the day after the last meal to the day before the first. clearing, cooling, cold, warming:
 * lengths in days. temperature: set-point in the cold, °C.
 */
export type Measure = "order" | "drop" | "meals" | "clearing" | "cooling" | "cold" | "warming" | "temperature";

const bred = {
  words: "Female garter snakes came into breeding after 16 weeks or more at {4}, not after 20 weeks at {17}",
  source: "bonaGalloLicht",
} as const;
const kept = {
  words: "Garter snakes kept at {4} for 165 days lost no weight; other snakes may",
  source: "costanzo",
} as const;

/**
 * Every rule of RAMPCHECK, one line each, gravest first. The limits are common practice with montane snakes; we know
 * of no published ones. To change a rule, change its line.
 */
// prettier-ignore
export const rampRules: readonly Rule<Measure>[] = [
  { of: "order", over: 0, level: "stop", source: "definition", words: "Dates out of order: {is}" },
  { of: "drop", under: 1, level: "stop", source: "definition", words: "Warm lies {is} above cold: were the two swapped?" },
  { of: "meals", over: 0, level: "stop", source: "practice", words: "Food inside the fast, {is}: it can rot in a cold gut and kill" },
  { of: "clearing", under: 14, level: "stop", source: "practice", words: "{is} at normal temperature after the last meal: give {limit} or more, so that the gut is empty" },
  { of: "cooling", under: 28, level: "stop", source: "practice", words: "Cooled within {is}: take {limit} or more" },
  { of: "temperature", under: 2, level: "stop", source: "practice", words: "Cold of {is}: stay at {limit} or above, so that a fault of the thermostat does not freeze the animal" },
  { of: "warming", under: 28, level: "care", source: "practice", words: "Warmed within {is}: take {limit} or more" },
  { of: "temperature", over: 10, level: "care", source: "practice", words: "Cold of {is}: above {limit} the animal uses up its reserves faster", known: bred },
  { of: "cold", under: 70, level: "note", source: "practice", words: "{is} in the cold: {limit} or more are usual", known: bred },
  { of: "cold", over: 98, level: "note", source: "practice", words: "{is} in the cold: up to {limit} are usual; weigh more often", known: kept },
];
