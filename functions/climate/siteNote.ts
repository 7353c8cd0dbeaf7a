import { cell, choice, defineFunction, optional, unitsParameter } from "../define";
import type { Band } from "../network/network";
import { creditOf, networkKeys } from "../network/networks";
import { Problem } from "../problem";
import { fromMetric, symbol } from "../units";
import { site } from "./shared/place";

/** m. As near in elevation as this, a station needs little correction. */
const SIMILAR = 300;
const SHOWN = 3;
const JUNE_TO_AUGUST = [5, 6, 7];
const DECEMBER_TO_FEBRUARY = [11, 0, 1];

const halfWidth = (bands: readonly Band[], months: readonly number[]): number =>
  months.reduce((sum, month) => sum + ((bands[month]?.most ?? NaN) - (bands[month]?.likely ?? NaN)), 0) / months.length;

export const siteNote = defineFunction({
  name: "SITENOTE",
  summary:
    "What SITECLIMATE rests on, how far off it may be, what it cannot show, and the credit of the data, in words.",
  needs: "network",
  parameters: {
    ...site,
    units: unitsParameter,
    part: optional(choice('"credit": only whose records they are, on which terms', ["all", "credit"]), "all of it"),
  },
  result: cell("text", "The note"),
  sources: ["siteEstimate", "climatReports", "noaaNormals", "jmaNormals", "cwaNormals"],
  cautions: ["proxy", "stationNetwork", "estimatedSite"],
  examples: [
    {
      given: [46.5, 9.8, 1500],
      gives:
        "Estimated from 24 weather stations, the nearest St. Valentino alla Muta, 1461 m, 63 km; Lugano, 301 m, 84 km; Saentis, 2494 m, 90 km; 3 lie within 300 m of this elevation. Nine months in ten, highs and lows lie within 1.6 and 2.2 K of the likely in summer, 1.4 and 2.6 K in winter. It shows the open air, not shade, slope, a hollow that pools cold air, or fog. Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0), 2003-2021.",
      within: 0,
    },
  ],
  calculate({ latitude, longitude, elevation, units = "metric", part = "all" }, network) {
    const year = network.yearAt(latitude, longitude, elevation);
    if (year instanceof Problem) return year;
    const { stations } = year;
    const used = networkKeys.filter((key) => stations.some(({ station }) => station.network === key));
    const credits = used.map(creditOf).join("; ");
    if (part === "credit") return credits;
    const metres = (value: number): string =>
      `${Math.round(fromMetric(value, "metre", units))} ${symbol("metre", units)}`;
    const kelvin = (value: number): string => fromMetric(value, "kelvin", units).toFixed(1);
    const nearest = stations
      .slice(0, SHOWN)
      .map(
        ({ station, km }) =>
          `${station.name}, ${metres(station.elevation)}, ${Math.round(fromMetric(km, "kilometre", units))} ${symbol("kilometre", units)}`,
      );
    const similar = stations.filter(({ station }) => Math.abs(station.elevation - elevation) <= SIMILAR).length;
    const [summer, winter] =
      latitude < 0 ? [DECEMBER_TO_FEBRUARY, JUNE_TO_AUGUST] : [JUNE_TO_AUGUST, DECEMBER_TO_FEBRUARY];
    const width = (months: readonly number[]): string =>
      `${kelvin(halfWidth(year.high, months))} and ${kelvin(halfWidth(year.low, months))} ${symbol("kelvin", units)}`;
    return [
      `Estimated from ${stations.length} weather stations, the nearest ${nearest.join("; ")}; ${similar === 0 ? "none lies" : similar === 1 ? "one lies" : `${similar} lie`} within ${metres(SIMILAR)} of this elevation.`,
      `Nine months in ten, highs and lows lie within ${width(summer)} of the likely in summer, ${width(winter)} in winter.`,
      "It shows the open air, not shade, slope, a hollow that pools cold air, or fog.",
      `${credits}.`,
    ].join(" ");
  },
});
