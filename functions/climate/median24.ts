import { cell, defineFunction, unitsParameter } from "../define";
import { dailyExtremes, lowAboveHigh } from "./shared/dailyExtremes";
import { refusedIf } from "../twin";

export const median24 = defineFunction({
  name: "MEDIAN24",
  summary: "24-hour median as keepers use the word: the mid-point between the day's high and its low.",
  parameters: { ...dailyExtremes, units: unitsParameter },
  result: cell("celsius", "Mid-point of high and low"),
  sources: ["practice", "midRange"],
  cautions: ["midPoint"],
  examples: [{ given: [18.5, 7], gives: 12.75, within: 1e-9 }],
  calculate({ high, low, units }) {
    return lowAboveHigh(high, low, units) ?? (high + low) / 2;
  },
  twin: ({ high, low }) => refusedIf(`${low}>${high}`, `(${high}+${low})/2`),
});
