import { choice, columns, count, defineFunction, optional, quantity, unitsParameter } from "../define";
import { ELEVATION, TEMPERATURE } from "../shared/limits";
import { KINDS, observedRates } from "./shared/observedRates";
import { correction } from "./shared/rate";

/** K. Stations of one region are off by about this much from a line through the others, however near their elevations. */
const LEAST_MARGIN = 1;

export const lapseBand = defineFunction({
  name: "LAPSEBAND",
  summary: "Temperature at the animal's elevation with the spread that mountain stations show: least, likely, most.",
  parameters: {
    temperature: quantity("celsius", "Temperature at the station, a month's mean", TEMPERATURE),
    stationElevation: quantity("metre", "Elevation of the station", ELEVATION),
    homeElevation: quantity("metre", "Elevation where the animal lives", ELEVATION),
    kind: choice("What the temperature is: daily high, daily low, or median for a mean or mid-point", KINDS),
    month: optional(
      count("none", "Month, 1 to 12", [1, 12], { plausibility: false }),
      "the widest of the four seasons",
    ),
    latitude: optional(
      quantity("degree", "Latitude, south negative, for the season", [-90, 90], { plausibility: false }),
      "north of the equator",
    ),
    units: unitsParameter,
  },
  result: columns(
    { name: "least", unit: "celsius", about: "Low end of the band" },
    { name: "likely", unit: "celsius", about: "By the middle rate observed" },
    { name: "most", unit: "celsius", about: "High end of the band" },
  ),
  sources: ["observedLapse"],
  cautions: ["proxy", "lapseBand"],
  examples: [
    { given: [24, 300, 1400, "high", 7, 46], gives: [[12.89, 15.42, 21.47]], within: 1e-9 },
    { given: [10, 300, 350, "low"], gives: [[8.775, 9.775, 10.775]], within: 1e-9 },
  ],
  calculate({ temperature, stationElevation, homeElevation, kind, month, latitude = 0 }) {
    const [slow, middle, fast] = observedRates(kind, month, latitude).map(
      (rate) => temperature + correction(stationElevation, homeElevation, rate),
    ) as [number, number, number];
    return [Math.min(slow, fast, middle - LEAST_MARGIN), middle, Math.max(slow, fast, middle + LEAST_MARGIN)];
  },
});
