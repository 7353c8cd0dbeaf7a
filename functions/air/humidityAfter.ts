import { cell, defineFunction, quantity, unitsParameter } from "../define";
import { air, MAGNUS_LIMITS, relativeHumidity, saturationText, vapourPressure, vapourText } from "./shared/vapour";

export const humidityAfter = defineFunction({
  name: "HUMIDITYAFTER",
  summary: "Relative humidity of the same air once warmed or cooled; 100 where the rest of its water condenses.",
  parameters: {
    ...air,
    newTemperature: quantity("celsius", "Temperature afterwards", MAGNUS_LIMITS, { plausibility: false }),
    units: unitsParameter,
  },
  result: cell("percent", "Relative humidity afterwards"),
  sources: ["wmo8"],
  cautions: ["ventedAir", "overWater"],
  examples: [
    { given: [10, 80, 26], gives: 29.25, within: 0.01 },
    { given: [12, 70, 4], gives: 100, within: 0 },
  ],
  calculate({ temperature, humidity, newTemperature }) {
    return relativeHumidity(vapourPressure(temperature, humidity), newTemperature);
  },
  twin: ({ temperature, humidity, newTemperature }) =>
    `MIN(100,100*${vapourText(temperature, humidity)}/${saturationText(newTemperature)})`,
});
