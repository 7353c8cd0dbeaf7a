import { columns, defineFunction, unitsParameter } from "../define";
import {
  BASE_TEMPERATURE,
  baseDays,
  baseTemperature,
  CLUTCHES,
  developmentPerDay,
  incubationTemperature,
  OWN_THRESHOLD,
  spreadOf,
  THRESHOLD,
  THRESHOLDS,
  threshold,
} from "./shared/development";

/**
 * baseDays · (baseTemperature − threshold) / (temperature − threshold). Scaled from 26 °C with the threshold of 14 °C,
 * within 7.5 % of the published means of four Asian colubrids at steady temperatures of 24 to 30 °C, and within 12 % of
 * those of three other colubrids; scaled from 27 °C, within 0.5 % of Du & Ji's means. Soonest and latest are the ends of
 * what other thresholds, 8.4 to 17 °C or 1.5 K either way of one's own, and clutches 5 % quicker or slower would make.
 */
export const incubationDays = defineFunction({
  name: "INCUBATIONDAYS",
  summary: "Days of incubation at another temperature, scaled from your own figure for the same species.",
  parameters: { temperature: incubationTemperature, baseDays, baseTemperature, threshold, units: unitsParameter },
  result: columns(
    { name: "", unit: "day", about: "Days from laying to hatching, the likely figure" },
    { name: "Soonest", unit: "day", about: "Low end of what other thresholds and clutches would make of it" },
    { name: "Latest", unit: "day", about: "High end" },
  ),
  sources: ["duJi", "eggThresholds"],
  cautions: ["hatchingSuccess", "eggSpecies", "dailySwing", "lateEggs"],
  examples: [
    { given: [28, 60], gives: [[51.4286, 46.6364, 56.5714]], within: 1e-4 },
    { given: [23, 60, 26, 14], gives: [[80, 73.2857, 88.2]], within: 1e-4 },
  ],
  calculate({ temperature, ...base }) {
    const spread = spreadOf(base).map((one) => 1 / developmentPerDay(temperature, one));
    return [1 / developmentPerDay(temperature, base), Math.min(...spread), Math.max(...spread)];
  },
  twin: ({ temperature, baseDays, baseTemperature, threshold }) => {
    const from = baseTemperature(String(BASE_TEMPERATURE));
    // Between the limits of the temperature the line is straight, and no threshold reaches it.
    const times = (end: string): string => `(${from}-${end})/(${temperature}-${end})`;
    const ends = [
      threshold(String(THRESHOLDS[0]), (own) => `(${own}-${OWN_THRESHOLD})`),
      threshold(String(THRESHOLDS[1]), (own) => `(${own}+${OWN_THRESHOLD})`),
    ].map(times);
    return [
      `${baseDays}*${times(threshold(String(THRESHOLD)))}`,
      `${baseDays}*${1 - CLUTCHES}*MIN(${ends.join(",")})`,
      `${baseDays}*${1 + CLUTCHES}*MAX(${ends.join(",")})`,
    ];
  },
});
