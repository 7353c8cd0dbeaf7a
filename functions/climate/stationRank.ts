import { defineFunction, quantity, rows, table, text } from "../define";
import { ELEVATION } from "../shared/limits";
import { elevationBand, gapTo, upsideDown } from "./shared/elevationBand";
import { latitude, longitude } from "./shared/place";
import { greatCircle } from "./shared/greatCircle";
import { stationScore, stationVerdict } from "./shared/stationRule";

export const stationRank = defineFunction({
  name: "STATIONRANK",
  summary: "Weather stations put in order, best first, by elevation gap and distance, with a verdict in words.",
  parameters: {
    stations: rows("Stations, a row each: name, elevation, latitude, longitude", {
      name: text("Name of the station"),
      elevation: quantity("metre", "Elevation of the station", ELEVATION),
      latitude,
      longitude,
    }),
    ...elevationBand,
    latitude: { ...latitude, about: "Latitude of the animal's home, south negative" },
    longitude: { ...longitude, about: "Longitude of the animal's home, west negative" },
  },
  result: table(
    { name: "station", unit: "text", about: "Name of the station" },
    { name: "gap", unit: "metre", about: "Outside the band: 0 inside, negative below, positive above" },
    { name: "distance", unit: "kilometre", about: "Along a great circle" },
    { name: "verdict", unit: "text", about: "What the station is good for" },
  ),
  sources: ["practice"],
  cautions: ["ruleOfThumb", "proxy"],
  examples: [
    {
      given: [
        [
          ["Valley (invented)", 300, 46.1, 11.2],
          ["Pass (invented)", 1450, 46.3, 11.6],
        ],
        1200,
        1800,
        46.2,
        11.5,
      ],
      gives: [
        ["Pass (invented)", 0, 13.52, "In the band; near"],
        ["Valley (invented)", -900, 25.64, "Well below: correct it and show the band; near"],
      ],
      within: 0.01,
    },
  ],
  calculate({ stations, bandLow, bandHigh, latitude, longitude, units }) {
    return (
      upsideDown(bandLow, bandHigh, units) ??
      stations
        .map((station) => ({
          name: station.name,
          gap: gapTo(station.elevation, bandLow, bandHigh),
          km: greatCircle(station.latitude, station.longitude, latitude, longitude),
        }))
        .sort((one, other) => stationScore(one.gap, one.km) - stationScore(other.gap, other.km))
        .map(({ name, gap, km }) => [name, gap, km, stationVerdict(gap, km)])
    );
  },
});
