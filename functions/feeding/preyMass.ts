import { cell, defineFunction, quantity } from "../define";
import { BODY_MASS } from "../shared/limits";
import { RATIO } from "./shared/ratio";

/** A share, not a percentage: 0.1 asks for a meal of a tenth of the body. */
export const preyMass = defineFunction({
  name: "PREYMASS",
  summary: "The prey mass that makes a given share of the animal's body mass.",
  parameters: {
    body: quantity("gram", "Mass of the animal before the meal", BODY_MASS),
    ratio: quantity("share", "Prey mass divided by body mass", ...RATIO),
  },
  result: cell("gram", "Mass of the prey, all items of the meal together"),
  sources: ["definition"],
  cautions: ["meal", "noVet"],
  examples: [{ given: [240, 0.1], gives: 24, within: 1e-9 }],
  calculate: ({ body, ratio }) => body * ratio,
  twin: ({ body, ratio }) => `${body}*${ratio}`,
});
