import { CLEAR_DAYS } from "./limits";
import type { Rule } from "./rule";

/**
 * What WINTERREADY looks at.
 * shedding, gravid, breathing, parasites, unseenByVet: 1 for what speaks against cooling, 0 for what does not. clearing:
 * days from the last meal to the first day of cooling. age: in months. weight: mass now as a share of the mass before.
 */
export type Measure = "shedding" | "gravid" | "breathing" | "parasites" | "clearing" | "weight" | "unseenByVet" | "age";

const open = (words: string) => ({ level: "care", words: `${words}: not looked at.` }) as const;

/** Every rule of WINTERREADY, one line each, gravest first. A blank is never fine: it speaks as well. */
// prettier-ignore
export const readinessRules: readonly Rule<Measure>[] = [
  { of: "breathing", over: 0, level: "stop", source: "practice", words: "Noisy breath: an infection of the lungs grows in the cold; see your vet, keep it warm", blank: open("Breathing") },
  { of: "gravid", over: 0, level: "stop", source: "practice", words: "Gravid: she stays warm, and out of the winter plan, until she has laid or given birth", blank: open("Whether she is gravid") },
  { of: "parasites", over: 0, level: "stop", source: "practice", words: "Parasites found: have them treated first", blank: open("Droppings, for parasites") },
  { of: "shedding", over: 0, level: "stop", source: "practice", words: "In shed: wait until it is through", blank: open("Whether it is in shed") },
  { of: "clearing", under: CLEAR_DAYS, level: "stop", source: "practice", words: "{is} from the last meal to cooling: give {limit} or more at normal temperature, and see droppings", blank: open("Last meal, or the day on which cooling starts") },
  { of: "weight", under: 0.9, level: "stop", source: "practice", words: "Only {is} of its mass before: feed it up and see your vet; a thin animal may not live through the cold", blank: open("Mass now or before") },
  { of: "weight", under: 1, level: "care", source: "practice", words: "Only {is} of its mass before: it goes into the cold lighter than it was" },
  { of: "weight", over: 5, level: "care", source: "practice", words: "{is} of its mass before: is one of the two mistyped?" },
  { of: "unseenByVet", over: 0, level: "care", source: "practice", words: "No reptile vet has seen it: ask before cooling", blank: open("Whether a reptile vet has seen it") },
  { of: "age", under: 12, level: "care", source: "practice", words: "Only {is} months old: in its first winter it has little to live on; feeding it through, warm, is usual", blank: open("Age") },
];
