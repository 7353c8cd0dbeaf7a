import { cell, defineFunction, quantity } from "../define";
import { ELEVATION } from "../shared/limits";
import { elevationBand, gapTo, upsideDown } from "./shared/elevationBand";
import { refusedIf } from "../twin";

export const stationGap = defineFunction({
  name: "STATIONGAP",
  summary:
    "Metres by which a station lies outside the animal's elevation band: 0 inside, negative below, positive above.",
  parameters: { stationElevation: quantity("metre", "Elevation of the station", ELEVATION), ...elevationBand },
  result: cell("metre", "Gap between station and band"),
  sources: ["definition"],
  cautions: ["proxy"],
  examples: [
    { given: [300, 1200, 1800], gives: -900, within: 0 },
    { given: [1500, 1200, 1800], gives: 0, within: 0 },
  ],
  calculate({ stationElevation, bandLow, bandHigh, units }) {
    return upsideDown(bandLow, bandHigh, units) ?? gapTo(stationElevation, bandLow, bandHigh);
  },
  twin: ({ stationElevation: at, bandLow: low, bandHigh: high }) =>
    refusedIf(`${low}>${high}`, `IF(${at}<${low},${at}-${low},IF(${at}>${high},${at}-${high},0))`),
});
