import { cell, defineFunction, unitsParameter } from "../define";
import { dailyExtremes, lowAboveHigh } from "./shared/dailyExtremes";
import { refusedIf } from "../twin";

export const fluctuation = defineFunction({
  name: "FLUCTUATION",
  summary: "Diurnal fluctuation: how far the temperature swings between the day's high and its low.",
  parameters: { ...dailyExtremes, units: unitsParameter },
  result: cell("kelvin", "High less low"),
  sources: ["definition"],
  cautions: [],
  examples: [{ given: [18.5, 7], gives: 11.5, within: 1e-9 }],
  calculate({ high, low, units }) {
    return lowAboveHigh(high, low, units) ?? high - low;
  },
  twin: ({ high, low }) => refusedIf(`${low}>${high}`, `${high}-${low}`),
});
