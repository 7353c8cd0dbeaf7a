import { pairsOf, ratesOf, type Pair } from "../../../addin/build/stations/rates";
import {
  isTropical,
  KINDS,
  observedRates,
  seasonOf,
  type Spread,
} from "../../../functions/climate/shared/observedRates";
import { networkAsShipped } from "../../network";

const MONTHS = Array.from({ length: 12 }, (_, i) => i + 1);
const SEASONS = [0, 1, 2, 3, "tropical"] as const;

/** Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt; normals of NOAA, JMA and CWA. */
describe("the rates are derived from the network", () => {
  let pairs: readonly Pair[] | undefined;
  test.each(KINDS.flatMap((kind) => SEASONS.map((season) => [kind, season] as const)))(
    "%s, season %s",
    (kind, season) => {
      const [latitude, month] = season === "tropical" ? [0, 1] : [46, [1, 4, 7, 10][season]];
      const [table] = observedRates(kind, month, latitude, undefined) as [Spread];
      // The table has a decimal.
      pairs ??= pairsOf(networkAsShipped().stations);
      expect(ratesOf(pairs, kind, season).map((rate) => Number(rate.toFixed(1)))).toEqual(table);
    },
  );
});

test("monsoon Asia is from the Indus to Tibet up to 36° north, and farther east up to 46°, ends included", () => {
  const inside = [
    [36, 65],
    [36, 100],
    [46, 100],
    [46, 150],
    [24, 80],
    [45.9, 125],
    [23.5, undefined],
    [-23.5, -60],
  ] as const;
  const outside = [
    [36.01, 65],
    [30, 64.9],
    [36.01, 99.9],
    [46.01, 100],
    [40, 150.1],
    [-30, 80],
    [-30, 120],
    [23.6, undefined],
    [-23.6, undefined],
  ] as const;
  for (const [latitude, longitude] of inside)
    expect([latitude, longitude, isTropical(latitude, longitude)]).toEqual([latitude, longitude, true]);
  for (const [latitude, longitude] of outside)
    expect([latitude, longitude, isTropical(latitude, longitude)]).toEqual([latitude, longitude, false]);
});

test("seasons are the meteorologists', half a year apart in the south", () => {
  expect(MONTHS.map((month) => seasonOf(month, false))).toEqual([0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 0]);
  expect(MONTHS.map((month) => seasonOf(month, true))).toEqual([2, 2, 3, 3, 3, 0, 0, 0, 1, 1, 1, 2]);
});
