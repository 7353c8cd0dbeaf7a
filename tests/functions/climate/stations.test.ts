import { stations } from "../../../functions/climate/stations";
import { networkAsShipped } from "../../network";
import { call } from "../../call";
import pairs from "../../tables/stationPairs.json";
import { yardstick } from "../../yardstick";

yardstick(
  stations,
  {
    against: "WMO numbers of mountain stations in CLIMAT reports, read elsewhere (Deutscher Wetterdienst)",
    within: 0,
    unit: "",
  },
  () =>
    pairs.rows
      .filter(({ highWmo }) => networkAsShipped().stations.some(({ id }) => id === highWmo))
      .map(({ highWmo, highLatitude, highLongitude, highElevation }) => [
        call(stations, highLatitude, highLongitude, highElevation - 5, highElevation + 5, 1)[0]?.[1] as string,
        highWmo,
      ]),
);

describe("the list", () => {
  test("is ten long unless told otherwise, best first: 100 m of gap count as 10 km", () => {
    const rows = call(stations, 46.5, 9.8, 1200, 1800);
    expect(rows).toHaveLength(10);
    const scores = rows.map(([, , , gap, km]) => Math.abs(gap as number) / 10 + (km as number));
    expect(scores).toEqual([...scores].sort((a, b) => a - b));
    expect(call(stations, 46.5, 9.8, 1200, 1800, 50)).toHaveLength(50);
  });
  test("of one network holds no other, and says whose figures they are", () => {
    const rows = call(stations, 39, -106, 2800, 3300, 20, "noaa");
    expect(new Set(rows.map((row) => row[7]))).toEqual(new Set(["NOAA normals 1981-2010"]));
    expect(call(stations, 39, -106, 2800, 3300, 3, "jma")[0]?.[0]).toBe(
      "#N/A no station of JMA normals within 1000 km",
    );
  });
  test("years are blank where the service does not say, never 0", () =>
    expect(call(stations, 24, 121, 2000, 3000, 5, "cwa").map((row) => row[5])).toEqual(["", "", "", "", ""]));
  test("in feet, the gap too, and miles", () => {
    const metric = call(stations, 46.5, 9.8, 1524, 1828.8, 1)[0];
    const imperial = call(stations, 46.5, 9.8, 5000, 6000, 1, null, "imperial")[0];
    expect(imperial?.[3]).toBeCloseTo((metric?.[3] as number) / 0.3048, 9);
    expect(imperial?.[4]).toBeCloseTo((metric?.[4] as number) / 1.609344, 9);
  });
});

test.each([
  ["mid-ocean", [-45, -120, 0, 100], "#N/A no station within 1000 km"],
  ["a band upside down", [46, 10, 1800, 1200], "#VALUE! bandLow holds 1800 m, above bandHigh 1200 m"],
  [
    "an unknown network",
    [46, 10, 1200, 1800, 3, "mine"],
    `#VALUE! network holds 'mine': give "climat", "noaa", "jma", "cwa"`,
  ],
  ["more than fifty", [46, 10, 1200, 1800, 51], "#VALUE! count holds 51: give a whole number from 1 to 50"],
])("%s gives words", (_, given, words) => expect(String(call(stations, ...given)[0]?.[0])).toContain(words));
