import type { Rule } from "./rule";

/**
 * What PAIRINGCHECK looks at.
 * monthsMissing, gramsMissing: what is short of the keeper's least age and mass. clutchesLeft: the keeper's most clutches
 * in a season less those laid. weight: mass now as a share of the mass before the last clutch. age: in months.
 * clutchesUnjudged: 1 where one of clutches and most clutches is blank, and not the other.
 */
export type Measure = "monthsMissing" | "gramsMissing" | "clutchesLeft" | "weight" | "age" | "clutchesUnjudged";

/** Every rule of PAIRINGCHECK, one line each, gravest first. To change a rule, change its line. */
// prettier-ignore
export const pairingRules: readonly Rule<Measure>[] = [
  { of: "monthsMissing", over: 0, level: "stop", source: "ownLimit", words: "Too young, {is}" },
  { of: "gramsMissing", over: 0, level: "stop", source: "ownLimit", words: "Too light, {is}" },
  { of: "clutchesLeft", under: 1, level: "stop", source: "ownLimit", words: "Enough clutches this season, {is}" },
  { of: "weight", under: 1, level: "care", source: "practice", words: "Not back to her weight, {is}: feed her up first" },
  { of: "age", under: 18, level: "care", source: "practice", words: "Only {is} months old: {limit} months are usual for a male, and no less for a female" },
  { of: "clutchesUnjudged", over: 0, level: "note", source: "ownLimit", words: "Clutches not judged: {is} is blank" },
];
