import { gapTo, elevationBand, upsideDown } from "../climate/shared/elevationBand";
import { perKilometre, rateParameter } from "../climate/shared/rate";
import { cell, defineFunction, optional, quantity, text, unitsParameter } from "../define";
import { ELEVATION } from "../shared/limits";
import { fromMetric, symbol, type Unit } from "../units";

export const proxyNote = defineFunction({
  name: "PROXYNOTE",
  summary:
    "One honest sentence on a weather station used as a proxy: gap, distance, correction, and what it cannot show.",
  parameters: {
    station: text("Name of the station"),
    stationElevation: quantity("metre", "Elevation of the station", ELEVATION),
    ...elevationBand,
    km: optional(
      quantity("kilometre", "Distance from the animal's home, in miles where the units are imperial", [0, 20_040]),
      "not mentioned",
    ),
    rate: optional(rateParameter, "said to be uncorrected"),
    lowRate: optional(rateParameter, "the same as rate, for highs and lows alike"),
    units: unitsParameter,
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
  calculate({ station, stationElevation, bandLow, bandHigh, km, rate, lowRate, units = "metric" }) {
    const problem = upsideDown(bandLow, bandHigh, units);
    if (problem) return problem;
    const rounded = (value: number, unit: Unit): number => Math.round(fromMetric(value, unit, units));
    const metres = (value: number): string => `${rounded(value, "metre")} ${symbol("metre", units)}`;
    const gap = gapTo(stationElevation, bandLow, bandHigh);
    const band = `the animal's band of ${rounded(bandLow, "metre")} to ${metres(bandHigh)}`;
    const lies = gap === 0 ? `in ${band}` : `${metres(Math.abs(gap))} ${gap < 0 ? "below" : "above"} ${band}`;
    const away = km === undefined ? "" : ` and ${rounded(km, "kilometre")} ${symbol("kilometre", units)} away`;
    const fall = (one: NonNullable<typeof rate>): string =>
      String(Number(fromMetric(perKilometre(one), "kelvinPerKilometre", units).toFixed(2)));
    const each = units === "metric" ? "K per km" : symbol("kelvinPerKilometre", units);
    const corrected =
      rate === undefined
        ? "temperatures are not corrected for elevation"
        : lowRate === undefined
          ? `temperatures are corrected at ${fall(rate)} ${each}`
          : `highs are corrected at ${fall(rate)} and its lows at ${fall(lowRate)} ${each}`;
    return `${station.trim()}, ${metres(stationElevation)}, lies ${lies}${away}; its ${corrected}, and show the year's curve, not the place where the animal sits.`;
  },
});
