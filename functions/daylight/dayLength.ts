import { cell, date, defineFunction, quantity } from "../define";
import { daylightText, hoursOfDaylight } from "./shared/sun";

export const dayLength = defineFunction({
  name: "DAYLENGTH",
  summary: "Hours from sunrise to sunset at a latitude: 24 on a polar day, 0 in a polar night.",
  parameters: {
    latitude: quantity("degree", "Latitude, south negative", [-90, 90], { plausibility: false }),
    date: date("Day wanted"),
  },
  result: cell("hour", "Sunrise to sunset, upper limb of the sun, standard refraction"),
  sources: ["meeus"],
  cautions: ["farFromGreenwich"],
  examples: [{ given: [52, "2025-07-15"], gives: 16.25, within: 1 / 60 }],
  calculate({ latitude, date }) {
    return hoursOfDaylight(latitude, date);
  },
  twin: ({ latitude, date }) => daylightText(latitude, date),
});
