import { cell, defineFunction, quantity } from "../define";
import { BODY_MASS, PREY_MASS } from "../shared/limits";

/** A share, not a percentage: 0.1 is a meal of a tenth of the body. Prey may be the sum of several items. */
export const preyRatio = defineFunction({
  name: "PREYRATIO",
  summary: "Prey mass as a share of body mass.",
  parameters: {
    prey: quantity("gram", "Mass of the prey, all items of the meal together", PREY_MASS),
    body: quantity("gram", "Mass of the animal before the meal", BODY_MASS),
  },
  result: cell("share", "Prey mass divided by body mass"),
  sources: ["definition"],
  cautions: ["noVet"],
  examples: [{ given: [18, 240], gives: 0.075, within: 1e-12 }],
  calculate: ({ prey, body }) => prey / body,
  twin: ({ prey, body }) => `${prey}/${body}`,
});
