import { cell, choice, defineFunction, optional, quantity } from "../define";
import { BODY_MASS } from "../shared/limits";
import { byWord } from "../twin";

const BASES = ["total", "spent"] as const;

/** Both ratios are in use; "total" cannot exceed 1, "spent" is the older one and is always the larger of the two. */
export const clutchRatio = defineFunction({
  name: "CLUTCHRATIO",
  summary: "Relative clutch mass: what a clutch cost the female, as a share of her mass.",
  parameters: {
    clutch: quantity("gram", "Mass of all the eggs, weighed when laid", BODY_MASS),
    female: quantity("gram", "Mass of the female after laying", BODY_MASS),
    basis: optional(choice('"total": clutch ÷ (female + clutch); "spent": clutch ÷ female', BASES), '"total"'),
  },
  result: cell("share", "Relative clutch mass"),
  sources: ["iverson", "seigelFitch"],
  cautions: ["twoBases", "spentFemale", "noVet"],
  examples: [
    { given: [60, 180], gives: 0.25, within: 1e-12 },
    { given: [60, 180, "spent"], gives: 0.333333, within: 1e-6 },
  ],
  calculate: ({ clutch, female, basis = "total" }) => clutch / (basis === "total" ? female + clutch : female),
  twin: ({ clutch, female, basis }) =>
    basis(`${clutch}/(${female}+${clutch})`, (word) =>
      byWord(word, [
        ["spent", `${clutch}/${female}`],
        ["total", `${clutch}/(${female}+${clutch})`],
      ]),
    ),
});
