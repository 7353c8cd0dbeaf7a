import { stationPlace } from "../../../functions/climate/stationPlace";
import { call } from "../../call";
import { networkAsShipped } from "../../network";
import pairs from "../../tables/stationPairs.json";
import { yardstick, type Pair } from "../../yardstick";

const known = pairs.rows.flatMap((row) => [
  [row.lowWmo, row.lowLatitude, row.lowLongitude, row.lowElevation] as const,
  [row.highWmo, row.highLatitude, row.highLongitude, row.highElevation] as const,
]);

// Degrees and metres as the list has them, in the file to a hundredth and to a metre.
yardstick(
  stationPlace,
  { against: "places of stations in CLIMAT reports, read elsewhere (Deutscher Wetterdienst)", within: 0.5, unit: "" },
  () =>
    known
      .filter(([id]) => networkAsShipped().stations.some((station) => station.id === id))
      .flatMap(([id, ...place]): Pair[] => {
        const [answer = []] = call(stationPlace, id);
        return place.map((value, i) => [answer[i] as number, value]);
      }),
);

test("country, number, network, name and credit are text; years a count", () =>
  expect(call(stationPlace, 1001)[0]?.slice(3)).toEqual([
    18,
    "Norway",
    "01001",
    "CLIMAT reports 2003-2021",
    "Jan Mayen, Norway",
    "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0), 2003-2021",
  ]));

test("an unknown station is words in every column", () =>
  expect(new Set(call(stationPlace, "Xanadu Peak")[0]).size).toBe(1));
