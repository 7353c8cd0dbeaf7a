import { cell, defineFunction, unitsParameter } from "../define";
import { air, vapourPressure, vapourText } from "./shared/vapour";

/** g·K per m³ and hPa: 1000 g · 100 Pa ÷ 461.5 J/(kg·K), the gas constant of water vapour. */
const GRAMS = 1e5 / 461.5;
const FREEZING = 273.15; // K

export const waterInAir = defineFunction({
  name: "WATERINAIR",
  summary: "Grams of water in a cubic metre of air: absolute humidity.",
  parameters: { ...air, units: unitsParameter },
  result: cell("gramPerCubicMetre", "Water vapour in the air"),
  sources: ["wmo8", "idealGas"],
  cautions: ["overWater"],
  examples: [{ given: [20, 50], gives: 8.63, within: 0.01 }],
  calculate({ temperature, humidity }) {
    return (GRAMS * vapourPressure(temperature, humidity)) / (temperature + FREEZING);
  },
  twin: ({ temperature, humidity }) => `${GRAMS}*${vapourText(temperature, humidity)}/(${temperature}+${FREEZING})`,
});
