import { gapTo, elevationBand, upsideDown } from "../climate/shared/elevationBand";
import { perKilometre, rateParameter } from "../climate/shared/rate";
import { cell, defineFunction, optional, quantity, text } from "../define";
import { ELEVATION } from "../shared/limits";

const rounded = (value: number): number => Math.round(value);

export const proxyNote = defineFunction({
  name: "PROXYNOTE",
  summary:
    "One honest sentence on a weather station used as a proxy: gap, distance, correction, and what it cannot show.",
  parameters: {
    station: text("Name of the station"),
    stationElevation: quantity("metre", "Elevation of the station", ELEVATION),
    ...elevationBand,
    km: optional(quantity("kilometre", "Distance from the animal's home", [0, 20_040]), "not mentioned"),
    rate: optional(rateParameter, "said to be uncorrected"),
    lowRate: optional(rateParameter, "the same as rate, for highs and lows alike"),
  },
  result: cell("text", "The sentence"),
  sources: ["definition"],
  cautions: ["proxy", "lapseRate"],
  examples: [
    {
      given: ["Pass (invented)", 700, 1200, 1800, 35, "high"],
      gives:
        "Pass (invented), 700 m, lies 500 m below the animal's band of 1200 to 1800 m and 35 km away; its temperatures are corrected at 6.5 K per km, and show the year's curve, not the place where the animal sits.",
      within: 0,
    },
    {
      given: ["Pass (invented)", 700, 1200, 1800, null, "high", "low"],
      gives:
        "Pass (invented), 700 m, lies 500 m below the animal's band of 1200 to 1800 m; its highs are corrected at 6.5 and its lows at 4.5 K per km, and show the year's curve, not the place where the animal sits.",
      within: 0,
    },
  ],
  calculate({ station, stationElevation, bandLow, bandHigh, km, rate, lowRate }) {
    const problem = upsideDown(bandLow, bandHigh);
    if (problem) return problem;
    const gap = gapTo(stationElevation, bandLow, bandHigh);
    const band = `the animal's band of ${rounded(bandLow)} to ${rounded(bandHigh)} m`;
    const lies = gap === 0 ? `in ${band}` : `${rounded(Math.abs(gap))} m ${gap < 0 ? "below" : "above"} ${band}`;
    const away = km === undefined ? "" : ` and ${rounded(km)} km away`;
    const fall = (one: NonNullable<typeof rate>): string => String(Number(perKilometre(one).toFixed(2)));
    const corrected =
      rate === undefined
        ? "temperatures are not corrected for elevation"
        : lowRate === undefined
          ? `temperatures are corrected at ${fall(rate)} K per km`
          : `highs are corrected at ${fall(rate)} and its lows at ${fall(lowRate)} K per km`;
    return `${station.trim()}, ${rounded(stationElevation)} m, lies ${lies}${away}; its ${corrected}, and show the year's curve, not the place where the animal sits.`;
  },
});
