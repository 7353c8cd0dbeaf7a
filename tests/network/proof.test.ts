import { siteClimate } from "../../functions/climate/siteClimate";
import { leaveOneOut } from "../../functions/network/leaveOneOut";
import { sources } from "../../functions/sources";
import { networkAsShipped } from "../network";
import { yardstickOf } from "../yardstick";
import { isInValley, prove, rms, share, type Residual } from "./proof";

/**
 * Every third station from 500 m, by leave-one-out; npm run proof does all of them. Datenbasis: Deutscher Wetterdienst,
 * Einzelwerte gemittelt; normals of NOAA, JMA and CWA.
 */
const network = networkAsShipped();
const high = network.stations.filter(({ elevation }) => elevation >= 500);
const sample = prove(
  network,
  high.filter((_, i) => i % 3 === 0),
);
const of = (kind: "high" | "low"): readonly Residual[] => sample.residuals.filter((one) => one.kind === kind);

describe.each([
  ["high", 1.75],
  ["low", 1.85],
] as const)("%s", (kind, most) => {
  const against = `${kind}s of weather stations from 500 m, each left out (CLIMAT reports, normals of NOAA, JMA and CWA)`;
  yardstickOf(siteClimate, { against, figure: "root mean square error", least: 0, most, unit: "°C" }, () => ({
    figure: rms(of(kind).map(({ off }) => off)),
    values: of(kind).length,
  }));
  yardstickOf(
    siteClimate,
    { against, figure: "share of months inside the band", least: 0.87, most: 0.93, unit: "" },
    () => ({ figure: share(of(kind).map(({ isInside }) => isInside)), values: of(kind).length }),
  );
  test("is nearer than the nearest station with 6.5 K/km, and than LAPSEBAND's likely, by a quarter", () => {
    const own = rms(of(kind).map(({ off }) => off));
    expect(own).toBeLessThan(0.75 * rms(of(kind).map(({ nearest }) => nearest)));
    expect(own).toBeLessThan(0.75 * rms(of(kind).map(({ lapse }) => lapse)));
  });
  test("from 2000 m too, nearly nine in ten", () => {
    const far = of(kind).filter(({ station }) => station.elevation >= 2000);
    expect(far.length).toBeGreaterThan(500);
    expect(share(far.map(({ isInside }) => isInside))).toBeGreaterThan(0.83);
  });
});

test("valleys of US mountains, where cold air pools: at least 85 % of the lows inside", () => {
  const valleys = high.filter(
    (station) => station.network === "noaa" && station.elevation >= 1000 && isInValley(network, station),
  );
  expect(valleys.length).toBeGreaterThan(50);
  const lows = prove(network, valleys).residuals.filter(({ kind }) => kind === "low");
  expect(share(lows.map(({ isInside }) => isInside))).toBeGreaterThanOrEqual(0.85);
});

test("rain and humidity are nearer than the nearest station's", () => {
  for (const pairs of [sample.rain, sample.humidity]) {
    expect(pairs.length).toBeGreaterThan(1000);
    const mean = (i: 0 | 1): number => pairs.reduce((sum, pair) => sum + pair[i], 0) / pairs.length;
    expect(mean(0)).toBeLessThan(0.85 * mean(1));
  }
});

test("the source says what the proof finds", () => {
  expect(sources.siteEstimate.text).toMatch(/off by 1\.2 K \(highs\) and 1\.8 K \(lows\)/);
  expect(Math.abs(rms(of("high").map(({ off }) => off)) - 1.2)).toBeLessThan(0.1);
  expect(Math.abs(rms(of("low").map(({ off }) => off)) - 1.8)).toBeLessThan(0.1);
});

test("what the handbook draws is of this network and this estimate: npm run proof writes it", () => {
  const [all] = leaveOneOut;
  // A few stations have no estimate: beyond 80°, or too far from others.
  expect(all?.number).toBeLessThanOrEqual(high.length);
  expect(all?.number).toBeGreaterThan(0.98 * high.length);
  for (const [kind, left] of [
    ["high", all?.highs],
    ["low", all?.lows],
  ] as const) {
    // A third of the stations stands for all of them to a tenth of a degree, and to two points in a hundred.
    expect(Math.abs(rms(of(kind).map(({ off }) => off)) - (left?.off ?? NaN))).toBeLessThan(0.1);
    expect(Math.abs(rms(of(kind).map(({ nearest }) => nearest)) - (left?.nearest ?? NaN))).toBeLessThan(0.1);
    expect(Math.abs(share(of(kind).map(({ isInside }) => isInside)) - (left?.inside ?? NaN))).toBeLessThan(0.02);
  }
});
