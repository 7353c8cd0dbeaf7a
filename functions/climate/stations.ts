import { choice, count, defineFunction, optional, table, unitsParameter } from "../define";
import { fullName } from "../network/find";
import { networkKeys, networks } from "../network/networks";
import { notAvailable } from "../problem";
import { elevationBand, gapTo, upsideDown } from "./shared/elevationBand";
import { latitude, longitude } from "./shared/place";
import { stationScore, stationVerdict } from "./shared/stationRule";

const DEFAULT_COUNT = 10;
/** km. What is farther off says nothing of a place. */
const FARTHEST = 1000;

export const stations = defineFunction({
  name: "STATIONS",
  summary:
    "Weather stations of the built-in network that could speak for a place, best first, with a verdict in words.",
  needs: "network",
  parameters: {
    latitude,
    longitude,
    ...elevationBand,
    count: optional(count("none", "How many stations", [1, 50], { plausibility: false }), String(DEFAULT_COUNT)),
    network: optional(choice("Stations of one network only", networkKeys), "all networks"),
    units: unitsParameter,
  },
  result: table(
    { name: "station", unit: "text", about: "Name and country" },
    { name: "id", unit: "text", about: "WMO number, or the number in its own network" },
    { name: "elevation", unit: "metre", about: "Elevation of the station" },
    { name: "gap", unit: "metre", about: "Outside the band: 0 inside, negative below, positive above" },
    { name: "distance", unit: "kilometre", about: "Along a great circle" },
    { name: "years", unit: "none", about: "Fewest years behind a month" },
    { name: "verdict", unit: "text", about: "What the station is good for" },
    { name: "network", unit: "text", about: "Whose figures they are, and of which years" },
  ),
  sources: ["climatReports", "noaaNormals", "jmaNormals", "cwaNormals", "practice"],
  cautions: ["ruleOfThumb", "proxy", "stationNetwork"],
  examples: [
    {
      given: [46.5, 9.8, 1200, 1800, 3],
      gives: [
        [
          "St. Valentino alla Muta, Italy",
          "16008",
          1461,
          0,
          62.79,
          14,
          "In the band; near",
          "CLIMAT reports 2003-2021",
        ],
      ],
      within: 0.01,
      rows: 3,
    },
  ],
  calculate({ latitude, longitude, bandLow, bandHigh, count = DEFAULT_COUNT, network: of }, network) {
    const problem = upsideDown(bandLow, bandHigh);
    if (problem) return problem;
    const near = network.around(latitude, longitude, FARTHEST, of);
    if (near.length === 0)
      return notAvailable(`no station${of ? ` of ${networks[of].title}` : ""} within ${FARTHEST} km`);
    return near
      .map(({ station, km }) => ({ station, km, gap: gapTo(station.elevation, bandLow, bandHigh) }))
      .sort((one, other) => stationScore(one.gap, one.km) - stationScore(other.gap, other.km))
      .slice(0, count)
      .map(({ station, km, gap }) => {
        const { title, years } = networks[station.network];
        return [
          fullName(station),
          station.id,
          station.elevation,
          gap,
          km,
          Number.isNaN(station.years) ? "" : station.years,
          stationVerdict(gap, km),
          `${title} ${years.join("-")}`,
        ];
      });
  },
});
