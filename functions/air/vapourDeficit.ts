import { cell, defineFunction, unitsParameter } from "../define";
import { air, saturation, vapourPressure } from "./shared/vapour";

const HPA_PER_KPA = 10;

export const vapourDeficit = defineFunction({
  name: "VAPOURDEFICIT",
  summary: "Vapour pressure deficit: how strongly the air draws water out of skin, shed and substrate.",
  parameters: { ...air, units: unitsParameter },
  result: cell("kilopascal", "Saturation less actual vapour pressure"),
  sources: ["wmo8"],
  cautions: ["overWater"],
  examples: [{ given: [25, 50], gives: 1.581, within: 0.001 }],
  calculate({ temperature, humidity }) {
    return (saturation(temperature) - vapourPressure(temperature, humidity)) / HPA_PER_KPA;
  },
});
