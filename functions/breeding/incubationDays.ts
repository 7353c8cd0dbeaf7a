import { cell, defineFunction, unitsParameter } from "../define";
import { baseDays, baseTemperature, developmentPerDay, incubationTemperature, threshold } from "./shared/development";

/**
 * baseDays · (baseTemperature − threshold) / (temperature − threshold). Scaled from 26 °C with the threshold of 14 °C,
 * within 7.5 % of the published means of four Asian ratsnakes at steady temperatures of 24 to 30 °C, and within 12 % of
 * those of three other colubrids; scaled from 27 °C, within 0.5 % of Du & Ji's means.
 */
export const incubationDays = defineFunction({
  name: "INCUBATIONDAYS",
  summary: "Days of incubation at another temperature, scaled from your own figure for the same species.",
  parameters: { temperature: incubationTemperature, baseDays, baseTemperature, threshold, units: unitsParameter },
  result: cell("day", "Days from laying to hatching"),
  sources: ["duJi", "eggThresholds"],
  cautions: ["hatchingSuccess", "eggSpecies", "lateEggs"],
  examples: [
    { given: [28, 60], gives: 51.4286, within: 1e-4 },
    { given: [24, 60], gives: 72, within: 1e-9 },
  ],
  calculate: ({ temperature, ...base }) => 1 / developmentPerDay(temperature, base),
});
