import { cell, defineFunction, optional, quantity, unitsParameter } from "../define";
import { air, MAGNUS_LIMITS, saturation, saturationText, vapourPressure, vapourText } from "./shared/vapour";

const HPA_PER_KPA = 10;

export const vapourDeficit = defineFunction({
  name: "VAPOURDEFICIT",
  summary: "Vapour pressure deficit: how strongly the air draws water out of skin, shed and substrate.",
  parameters: {
    ...air,
    units: unitsParameter,
    skin: optional(
      quantity("celsius", "Temperature of the skin, shed or substrate from which the water goes", MAGNUS_LIMITS, {
        plausibility: false,
      }),
      "that of the air",
    ),
  },
  result: cell("kilopascal", "Saturation at the skin less the vapour pressure of the air; below 0 water settles on it"),
  sources: ["wmo8"],
  cautions: ["warmSkin", "overWater"],
  examples: [
    { given: [25, 50], gives: 1.581, within: 0.001 },
    { given: [25, 50, null, 32], gives: 3.165, within: 0.001 },
  ],
  calculate({ temperature, humidity, skin = temperature }) {
    return (saturation(skin) - vapourPressure(temperature, humidity)) / HPA_PER_KPA;
  },
  twin: ({ temperature, humidity, skin }) =>
    `(${skin(saturationText(temperature), saturationText)}-${vapourText(temperature, humidity)})/${HPA_PER_KPA}`,
});
