import { cell, defineFunction, unitsParameter } from "../define";
import { air, saturatedAt, saturatedAtText, vapourPressure, vapourText } from "./shared/vapour";

export const dewPoint = defineFunction({
  name: "DEWPOINT",
  summary: "Temperature to which air must cool before water condenses from it.",
  parameters: { ...air, units: unitsParameter },
  result: cell("celsius", "Dew point over water"),
  sources: ["wmo8"],
  cautions: ["overWater"],
  examples: [{ given: [25, 80], gives: 21.31, within: 0.01 }],
  calculate({ temperature, humidity }) {
    return saturatedAt(vapourPressure(temperature, humidity));
  },
  twin: ({ temperature, humidity }) => saturatedAtText(vapourText(temperature, humidity)),
});
