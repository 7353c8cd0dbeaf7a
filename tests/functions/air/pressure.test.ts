import psychrolib from "psychrolib";
import { pressure } from "../../../functions/air/pressure";
import { call, callCell, down } from "../../call";
import { mean } from "../../statistics";
import table from "../../tables/standardAtmosphere.json";
import { rows as pairs } from "../../tables/stationPairs.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (elevation: number): number => callCell(pressure, elevation) as number;

// 0.001 hPa: half of the last digit given, and a rounding.
yardstick(pressure, { against: "ICAO Doc 7488/3", within: 0.001, unit: "hPa" }, () =>
  table.published.flatMap(({ H_ft, p_hPa, p_over_p0 }) => {
    const answer = callCell(pressure, H_ft, "imperial") as number;
    if (p_over_p0 !== undefined) expect(Math.abs(answer / 1013.25 - p_over_p0)).toBeLessThan(1e-6);
    return p_hPa === undefined ? [] : [[answer, p_hPa]];
  }),
);

// The hydrostatic equation, integrated: 0.001 hPa. Elevation read as geometric: 0.3 hPa at 5000 m.
test.each(table.rows)("standard atmosphere at $elevation m", (row) => {
  expect(Math.abs(at(row.elevation) - row.pressure)).toBeLessThan(0.001);
  expect(Math.abs(at(row.elevation) - row.pressureGeometric)).toBeLessThan(0.3);
});

// It rounds the constants as ASHRAE prints them: 0.01 hPa up to 9000 m.
yardstick(pressure, { against: "PsychroLib", within: 0.01, unit: "hPa" }, () =>
  [-430, 0, 500, 1200, 2500, 4000, 9000].map((m) => [at(m), psychrolib.GetStandardAtmPressure(m) / 100]),
);

// Real stations, mean pressure as reported (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt): their air is not
// the standard's, but warmer by up to 20 K, which is 2 % at 3600 m.
test("mean pressures of stations", () => {
  const stations = pairs
    .flatMap((pair) => [
      [pair.lowElevation, pair.lowPressure],
      [pair.highElevation, pair.highPressure],
    ])
    .filter((station): station is [number, number] => typeof station[1] === "number");
  expect(stations.length).toBeGreaterThan(15);
  const off = stations.map(([elevation, observed]) => at(elevation) / observed - 1);
  for (const one of off) expect(Math.abs(one)).toBeLessThan(0.02);
  expect(Math.abs(mean(off))).toBeLessThan(0.01);
});

test("falls with every metre", () => {
  const answers = call(pressure, down(Array.from({ length: 95 }, (_, i) => -430 + 100 * i))).map(
    ([value]) => value as number,
  );
  expect(answers).toEqual([...answers].sort((one, other) => other - one));
});
