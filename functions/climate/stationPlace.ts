import { columns, defineFunction, unitsParameter } from "../define";
import { fullName } from "../network/find";
import { creditOf, networks } from "../network/networks";
import { Problem } from "../problem";
import { orEmpty } from "./shared/orEmpty";
import { stationParameter } from "./shared/stationParameter";

export const stationPlace = defineFunction({
  name: "STATIONPLACE",
  summary: "Where a station of the built-in network stands, how many years it has, and whose figures they are.",
  needs: "network",
  parameters: { station: stationParameter, units: unitsParameter },
  result: columns(
    { name: "latitude", unit: "degree", about: "North positive" },
    { name: "longitude", unit: "degree", about: "East positive" },
    { name: "elevation", unit: "metre", about: "Elevation of the station" },
    { name: "years", unit: "none", about: "Fewest years behind a month" },
    { name: "country", unit: "text", about: "Country, as the service writes it" },
    { name: "id", unit: "text", about: "WMO number, or the number in its own network" },
    { name: "network", unit: "text", about: "Whose figures they are, and of which years" },
    { name: "name", unit: "text", about: "Name and country, as STATIONS answers them" },
    { name: "credit", unit: "text", about: "What stands wherever its figures are shown: credit, terms, years" },
  ),
  sources: ["climatReports", "noaaNormals", "jmaNormals", "cwaNormals"],
  cautions: ["proxy"],
  examples: [
    {
      given: [16008],
      gives: [
        [
          46.76,
          10.53,
          1461,
          14,
          "Italy",
          "16008",
          "CLIMAT reports 2003-2021",
          "St. Valentino alla Muta, Italy",
          "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0), 2003-2021",
        ],
      ],
      within: 0.01,
    },
  ],
  calculate({ station }, network) {
    const found = network.find(station);
    if (found instanceof Problem) return found;
    const { latitude, longitude, elevation, years, country, id } = found;
    const of = networks[found.network];
    return [
      latitude,
      longitude,
      elevation,
      orEmpty(years),
      country,
      id,
      `${of.title} ${of.years.join("-")}`,
      fullName(found),
      creditOf(found.network),
    ];
  },
});
