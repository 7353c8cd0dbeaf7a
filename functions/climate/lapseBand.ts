import { choice, columns, count, defineFunction, optional, quantity, unitsParameter } from "../define";
import { ELEVATION, TEMPERATURE } from "../shared/limits";
import { byWord, numeral } from "../twin";
import { bandOf, bandText } from "./shared/bandOf";
import { KINDS, observedRates, seasonText, tropicalText, type Kind, type Spread } from "./shared/observedRates";
import { RATES } from "./shared/rate";

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
      "the temperate north",
    ),
    units: unitsParameter,
    longitude: optional(
      quantity("degree", "Longitude, west negative, for the monsoon of Asia", [-180, 180], { plausibility: false }),
      "outside of monsoon Asia",
    ),
  },
  result: columns(
    { name: "least", unit: "celsius", about: "Low end of the band" },
    { name: "likely", unit: "celsius", about: "By the middle rate observed" },
    { name: "most", unit: "celsius", about: "High end of the band" },
  ),
  sources: ["observedLapse"],
  cautions: ["proxy", "lapseBand"],
  examples: [
    { given: [24, 300, 1400, "high", 7, 46], gives: [[12.68, 15.97, 25.06]], within: 0.01 },
    { given: [10, 300, 350, "low"], gives: [[6.95, 9.775, 12.6]], within: 0.01 },
  ],
  calculate({ temperature, stationElevation, homeElevation, kind, month, latitude, longitude }) {
    const km = (homeElevation - stationElevation) / 1000;
    const bands = observedRates(kind, month, latitude, longitude).map((rates) => bandOf(temperature, km, kind, rates));
    const [only] = bands;
    if (only && bands.length === 1) return only;
    return [
      Math.min(...bands.map(([least]) => least)),
      temperature - RATES[kind] * km,
      Math.max(...bands.map(([, , most]) => most)),
    ];
  },
  twin: ({ temperature, stationElevation, homeElevation, kind, month, latitude, longitude }) => {
    const km = `((${homeElevation}-${stationElevation})/1000)`;
    /** The band by the rates that each kind has: one, or one a season of which a formula picks. */
    const by = (ratesOf: (kind: Kind) => readonly Spread[], season?: string): readonly string[] =>
      bandText(temperature, km, (figure) => {
        const figures = KINDS.map((one) => [one, ratesOf(one).map((rates) => numeral(figure(one, rates)))] as const);
        const picked = figures.map(([one, all]) => [one, season ? `CHOOSE(${season},${all.join(",")})` : all.join()]);
        return byWord(kind, picked as [string, string][]);
      });
    const seasons = (one: Kind): readonly Spread[] => observedRates(one, undefined, undefined, undefined);
    const each = seasons("high").map((_, season) => by((one) => [seasons(one)[season] as Spread]));
    const likely = `${temperature}-${byWord(
      kind,
      KINDS.map((one) => [one, String(RATES[one])]),
    )}*${km}`;
    const year = [
      `MIN(${each.map(([least]) => least).join(",")})`,
      likely,
      `MAX(${each.map((one) => one[2]).join(",")})`,
    ];
    const tropical = by((one) => observedRates(one, undefined, 0, undefined));
    const isTropics = latitude("FALSE", (own) => tropicalText(own, longitude));
    return year.map((whole, i) => {
      const elsewhere = month(whole, (own) => by(seasons, seasonText(own, latitude))[i] as string);
      return isTropics === "FALSE" ? elsewhere : `IF(${isTropics},${tropical[i]},${elsewhere})`;
    });
  },
});
