import { count, defineFunction, optional, quantity, table } from "../define";
import { NOTHING, checkRows, type Measured } from "../rules/rule";
import { figures } from "../shared/figure";
import { BODY_MASS } from "../shared/limits";
import type { System } from "../units";
import { pairingRules, type Measure } from "../rules/pairing";

const MONTHS = [0, 600] as const;
const CLUTCHES = [0, 12] as const;

interface Given {
  readonly age: number;
  readonly mass: number;
  readonly leastAge: number;
  readonly leastMass: number;
  readonly clutches?: number | undefined;
  readonly mostClutches?: number | undefined;
  readonly lastMassRatio?: number | undefined;
}

const measure = (given: Given, system?: System): Record<Measure, Measured> => {
  const { age, mass, leastAge, leastMass, clutches, mostClutches, lastMassRatio } = given;
  const [months, leastMonths] = figures([age, leastAge], "none");
  const [now, least] = figures([mass, leastMass], "gram", system);
  // Beside the whole, so that a female just short of her weight is not told as 100 %.
  const [weight] = figures([(lastMassRatio ?? NaN) * 100, 100], "percent");
  const judged = clutches !== undefined && mostClutches !== undefined;
  return {
    monthsMissing: {
      value: leastAge - age,
      unit: "none",
      told: `${months} of ${leastMonths} months`,
    },
    gramsMissing: {
      value: leastMass - mass,
      unit: "gram",
      told: `${now.split(" ")[0]} of ${least}`,
    },
    clutchesLeft: {
      value: judged ? mostClutches - clutches : undefined,
      unit: "none",
      told: `${clutches} of ${mostClutches}`,
    },
    weight: { value: lastMassRatio, unit: "share", told: `${weight} of it` },
    age: { value: age, unit: "none" },
    clutchesUnjudged: {
      value: Number(!judged && clutches !== mostClutches),
      unit: "none",
      told: clutches === undefined ? "clutches" : "mostClutches",
    },
  };
};

/**
 * The rules stand in rules/pairing.ts, one line each. A limit itself passes: the least age is old enough. What is
 * left out is not judged; of clutches and their limit, one alone gives a note.
 */
export const pairingCheck = defineFunction({
  name: "PAIRINGCHECK",
  summary: "What speaks against pairing an animal now, gravest first: stop, care or note, and the words.",
  parameters: {
    age: quantity("none", "Age in months, as AGE answers", MONTHS),
    mass: quantity("gram", "Body mass now", BODY_MASS),
    leastAge: quantity("none", "Your own least age in months; practice for males: 18", MONTHS),
    leastMass: quantity("gram", "Your own least mass", BODY_MASS),
    clutches: optional(count("none", "Clutches laid this season", CLUTCHES), "not judged"),
    mostClutches: optional(count("none", "Your own most clutches in a season", CLUTCHES), "not judged"),
    lastMassRatio: optional(
      quantity("share", "Mass now divided by mass before her last clutch", [0.2, 5], {
        hint: "90 % is 0.9",
      }),
      "not judged",
    ),
  },
  result: table(
    { name: "Level", unit: "text", about: "stop, care or note" },
    { name: "Words", unit: "text", about: "What stands out, and whether that is your own limit or practice" },
  ),
  sources: ["ownLimit", "practice"],
  cautions: ["spentFemale", "noVetCheck", "noVet"],
  examples: [
    { given: [30, 260, 24, 220, 0, 1], gives: [["note", NOTHING]], within: 0 },
    {
      given: [20, 260, 24, 220, 1, 2, 0.94],
      gives: [
        ["stop", "Too young, 20 of 24 months (your own limit)."],
        ["care", "Not back to her weight, 94 % of it: feed her up first (common practice, no source)."],
      ],
      within: 0,
    },
  ],
  calculate: ({ units, ...given }) => checkRows(pairingRules, measure(given, units), units),
});
