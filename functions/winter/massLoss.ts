import { cell, defineFunction, quantity } from "../define";
import { BODY_MASS } from "../shared/limits";

/** A share, not a percentage: 0.05 is a twentieth lost. A gain, after a drink perhaps, is negative. */
export const massLoss = defineFunction({
  name: "MASSLOSS",
  summary: "Share of body mass lost since the start; a gain is negative.",
  parameters: {
    start: quantity("gram", "Mass at the start, with an empty gut", BODY_MASS),
    now: quantity("gram", "Mass now", BODY_MASS),
  },
  result: cell("share", "Mass lost divided by mass at the start"),
  sources: ["definition"],
  cautions: ["noLossLimit", "noVet"],
  examples: [
    { given: [320, 312], gives: 0.025, within: 1e-12 },
    { given: [320, 324], gives: -0.0125, within: 1e-12 },
  ],
  calculate: ({ start, now }) => (start - now) / start,
  twin: ({ start, now }) => `(${start}-${now})/${start}`,
});
