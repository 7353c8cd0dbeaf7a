import { choice, date, defineFunction, optional, quantity, table, type Given } from "../define";
import { NOTHING, checkRows, type Measured } from "../rules/rule";
import { readinessRules, type Measure } from "../rules/readiness";
import { figures } from "../shared/figure";
import { BODY_MASS } from "../shared/limits";

const SEXES = ["female", "male", "unknown"] as const;
const YES_NO = ["yes", "no"] as const;
const LEFT_OUT = "not looked at";

const parameters = {
  sex: optional(choice('"female", "male" or "unknown"', SEXES), "may be a female"),
  ageMonths: optional(quantity("none", "Age in months, as AGE answers", [0, 600]), LEFT_OUT),
  mass: optional(quantity("gram", "Body mass now", BODY_MASS), LEFT_OUT),
  massBefore: optional(
    quantity("gram", "Mass to hold it against: a month ago, or before its last winter", BODY_MASS),
    LEFT_OUT,
  ),
  shedding: optional(choice('"yes" or "no": in shed, or soon to be', YES_NO), LEFT_OUT),
  gravid: optional(choice('"yes" or "no": carries eggs or young, or may', YES_NO), LEFT_OUT),
  breathing: optional(choice('"clear" or "noisy": wheeze, bubbles, open mouth', ["clear", "noisy"]), LEFT_OUT),
  vetSeen: optional(choice('"yes" or "no": a reptile vet has seen it this autumn', YES_NO), LEFT_OUT),
  parasites: optional(choice('"none" or "found" in droppings that were looked at', ["none", "found"]), LEFT_OUT),
  lastMeal: optional(date("Day of its last meal"), LEFT_OUT),
  coolingStarts: optional(date("Day on which cooling starts"), LEFT_OUT),
};

type Asked = Given<typeof parameters>;

/** 1 for the word that speaks against cooling, 0 for the other, undefined for a blank. */
const against = (word: string, given: string | undefined): Measured => ({
  value: given === undefined ? undefined : Number(given === word),
  unit: "none",
});

const measure = (given: Asked): Record<Measure, Measured> => {
  const { sex, ageMonths, mass, massBefore, lastMeal, coolingStarts } = given;
  const weight = mass === undefined || massBefore === undefined ? undefined : mass / massBefore;
  const days = lastMeal === undefined || coolingStarts === undefined ? undefined : coolingStarts - lastMeal;
  return {
    shedding: against("yes", given.shedding),
    // A male is asked nothing; what is said of him all the same counts.
    gravid: against("yes", given.gravid ?? (sex === "male" ? "no" : undefined)),
    breathing: against("noisy", given.breathing),
    parasites: against("found", given.parasites),
    unseenByVet: against("no", given.vetSeen),
    clearing: { value: days, unit: "day", ...(days !== undefined && days < 0 ? { told: "No day" } : {}) },
    weight: { value: weight, unit: "share", told: figures([(weight ?? NaN) * 100, 100], "percent")[0] },
    age: { value: ageMonths, unit: "none" },
  };
};

/**
 * The rules stand in rules/readiness.ts, one line each. Every blank speaks, as a care: what was not looked at may not be
 * taken for fine. Only a male need not be said to be without eggs.
 */
export const winterReady = defineFunction({
  name: "WINTERREADY",
  summary:
    "Whether an animal may be cooled, gravest first: stop, care or note, and the words. A blank is not looked at.",
  parameters,
  result: table(
    { name: "Level", unit: "text", about: "stop, care or note" },
    { name: "Words", unit: "text", about: "What speaks against cooling it, or was not looked at" },
  ),
  sources: ["practice"],
  cautions: ["noVetCheck", "coldKills", "noVet"],
  examples: [
    {
      given: ["female", 30, 306, 300, "no", "no", "clear", "yes", "none", "2026-09-21", "2026-10-05"],
      gives: [["note", NOTHING]],
      within: 0,
    },
    {
      given: ["male", 30, 306, 300, "no", null, "noisy", "yes", null, "2026-09-21", "2026-10-05"],
      gives: [
        [
          "stop",
          "Noisy breath: an infection of the lungs grows in the cold; see your vet, keep it warm (common practice, no source).",
        ],
        ["care", "Droppings, for parasites: not looked at."],
      ],
      within: 0,
    },
  ],
  calculate: (given) => checkRows(readinessRules, measure(given)),
});
