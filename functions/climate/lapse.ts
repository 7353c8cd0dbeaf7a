import { cell, defineFunction, optional, quantity, unitsParameter } from "../define";
import { ELEVATION, TEMPERATURE } from "../shared/limits";
import { correction, perKilometre, rateParameter, rateText } from "./shared/rate";

export const lapse = defineFunction({
  name: "LAPSE",
  summary: "Temperature at the animal's elevation, from a station above or below it.",
  parameters: {
    temperature: quantity("celsius", "Temperature at the station", TEMPERATURE),
    stationElevation: quantity("metre", "Elevation of the station", ELEVATION),
    homeElevation: quantity("metre", "Elevation where the animal lives", ELEVATION),
    rate: optional(rateParameter, '"standard", 6.5 K/km'),
    units: unitsParameter,
  },
  result: cell("celsius", "Temperature at the animal's elevation"),
  sources: ["standardAtmosphere", "observedLapse", "dryAdiabat"],
  cautions: ["proxy", "lapseRate"],
  examples: [
    { given: [24, 300, 1400], gives: 16.85, within: 1e-9 },
    { given: [8, 300, 1400, "low"], gives: 3.05, within: 1e-9 },
  ],
  calculate({ temperature, stationElevation, homeElevation, rate = "standard" }) {
    return temperature + correction(stationElevation, homeElevation, perKilometre(rate));
  },
  twin: ({ temperature, stationElevation, homeElevation, rate }) =>
    `${temperature}-${rateText(rate)}*(${homeElevation}-${stationElevation})/1000`,
});
