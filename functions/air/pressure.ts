import { cell, defineFunction, quantity, unitsParameter } from "../define";
import { ELEVATION } from "../shared/limits";
import { pressureText, standardPressure } from "../shared/standardPressure";

export const pressure = defineFunction({
  name: "PRESSURE",
  summary: "Air pressure at an elevation in the standard atmosphere.",
  parameters: { elevation: quantity("metre", "Elevation above sea level", ELEVATION), units: unitsParameter },
  result: cell("hectopascal", "Air pressure"),
  sources: ["standardAtmosphere"],
  cautions: ["standardDay"],
  examples: [{ given: [2000], gives: 794.95, within: 0.01 }],
  calculate({ elevation }) {
    return standardPressure(elevation);
  },
  twin: ({ elevation }) => pressureText(elevation),
});
