import { cell, defineFunction, quantity, unitsParameter } from "../define";
import { TEMPERATURE } from "../shared/limits";
import { MONTHLY_RAIN } from "./shared/rain";

export const dryMonth = defineFunction({
  name: "DRYMONTH",
  summary: "Whether a month is dry: less rain in mm than twice its temperature in °C. A frosty month is never dry.",
  parameters: {
    temperature: quantity("celsius", "Mean temperature of the month", TEMPERATURE),
    rain: quantity("millimetre", "Rain of the month", MONTHLY_RAIN),
    units: unitsParameter,
  },
  result: cell("true or false", "TRUE where the month is dry"),
  sources: ["walterLieth"],
  cautions: ["proxy"],
  examples: [
    { given: [17.8, 13.9], gives: true, within: 0 },
    { given: [8.6, 173.8], gives: false, within: 0 },
  ],
  calculate({ temperature, rain }) {
    return rain < 2 * temperature;
  },
  twin: ({ temperature, rain }) => `${rain}<2*${temperature}`,
});
