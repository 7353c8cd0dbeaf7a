import fc from "fast-check";
import { cautions } from "../../../functions/cautions";
import { lapseBand } from "../../../functions/climate/lapseBand";
import { pairsOf, ratesOf, regionOf, warmerBelow, type Pair } from "../../../addin/build/stations/rates";
import { bandOf } from "../../../functions/climate/shared/bandOf";
import { isTropical, KINDS, seasonOf, type Kind, type Spread } from "../../../functions/climate/shared/observedRates";
import { call, down } from "../../call";
import { networkAsShipped } from "../../network";
import { yardstickOf } from "../../yardstick";
import { rows as pairs } from "../../tables/stationPairs.json";

const band = (...given: readonly unknown[]): [number, number, number] =>
  call(lapseBand, ...given)[0] as [number, number, number];
const MONTHS = Array.from({ length: 12 }, (_, i) => i + 1);

/** Made when it is first asked for, and once. */
const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/**
 * The band holds pairs of a region that had no part in its rates; that these are what the network says is tried in
 * observedRates.test.ts. Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt; normals of NOAA, JMA and CWA.
 */
const high = once(() => pairsOf(networkAsShipped().stations));

interface Held {
  readonly region: string;
  readonly gap: number;
  readonly isInside: boolean;
  readonly off: number;
  readonly offStandard: number;
}
/** Every month of the pairs, by rates from which the upper station's region was left out. */
const heldOut = (pairs: readonly Pair[], kind: Kind): readonly Held[] => {
  const rates = new Map<string, Spread>();
  return pairs.flatMap((pair) =>
    MONTHS.map((month): Held => {
      const { upper, lower } = pair;
      const region = regionOf(upper);
      const season = isTropical(upper.latitude, upper.longitude) ? "tropical" : seasonOf(month, upper.latitude < 0);
      const key = `${region} ${season}`;
      const spread = rates.get(key) ?? ratesOf(high(), kind, season, region);
      rates.set(key, spread);
      const km = (upper.elevation - lower.elevation) / 1000;
      // The lower station at 0 °C: what counts is the difference.
      const [least, likely, most] = bandOf(0, km, kind, spread);
      const seen = -warmerBelow(pair, kind, month - 1);
      return {
        region,
        gap: 1000 * km,
        isInside: least <= seen && seen <= most,
        off: seen - likely,
        offStandard: seen + 6.5 * km,
      };
    }),
  );
};
const share = (held: readonly Held[]): number => held.filter(({ isInside }) => isInside).length / held.length;
const rms = (offs: readonly number[]): number => Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length);

describe.each(KINDS)("pairs of a region that was left out: %s", (kind) => {
  const held = once(() => heldOut(high(), kind));
  // Smaller gaps are so many that every seventh pair will do.
  const smaller = once(() =>
    heldOut(
      pairsOf(networkAsShipped().stations, 50)
        .filter(({ upper, lower }) => upper.elevation - lower.elevation < 500)
        .filter((_, i) => i % 7 === 0),
      kind,
    ),
  );
  const against = `pairs of stations of regions that were left out, 500 m or more apart (CLIMAT reports, normals), ${kind}`;
  yardstickOf(
    lapseBand,
    {
      against,
      figure: "share of months inside the band",
      least: 0.86,
      most: 0.95,
      unit: "",
    },
    () => ({ figure: share(held()), values: held().length }),
  );
  test("small gaps, of 50 to 300 m and of 300 to 500 m: 85 % or more", () => {
    for (const [from, to] of [
      [50, 300],
      [300, 500],
    ] as const) {
      const of = smaller().filter(({ gap }) => gap >= from && gap < to);
      expect(of.length).toBeGreaterThan(1000);
      expect(share(of)).toBeGreaterThanOrEqual(0.85);
    }
  });
  test("the worst large region, western North America, holds as much as the caution says", () => {
    const worst = share(held().filter(({ region }) => region === "western North America"));
    expect(worst).toBeGreaterThan(0.78);
    expect(worst).toBeLessThan(0.86);
    expect(cautions.lapseBand).toMatch(/one in five in the valleys of western North America/);
    expect(Math.round(1 / (1 - share(held())))).toBeGreaterThanOrEqual(8);
    expect(cautions.lapseBand).toMatch(/one month in nine/);
  });
  for (const [figure, off] of [
    ["root mean square error of the likely value", ({ off }) => off],
    ["root mean square error of 6.5 K/km", ({ offStandard }) => offStandard],
  ] as const satisfies readonly (readonly [string, (one: Held) => number])[]) {
    yardstickOf(lapseBand, { against, figure, least: 2, most: 3.5, unit: "K" }, () => ({
      figure: rms(held().map(off)),
      values: held().length,
    }));
  }
  test("the likely value beats 6.5 K/km, for highs it is as good", () => {
    const [own, standard] = [rms(held().map(({ off }) => off)), rms(held().map(({ offStandard }) => offStandard))];
    if (kind === "high") expect(own).toBeLessThan(standard + 0.02);
    else expect(own).toBeLessThan(standard - 0.15);
  });
});

test("monsoon Asia has the tropics' rates where its longitude is told, and no season", () => {
  const tropics = band(20, 500, 1500, "high", 7, 0);
  expect(band(20, 500, 1500, "high", 7, 28, null, 92)).toEqual(tropics);
  expect(band(20, 500, 1500, "high", 1, 28, null, 92)).toEqual(tropics);
  expect(band(20, 500, 1500, "high", 7, 28)).toEqual(band(20, 500, 1500, "high", 7, 46));
  expect(band(20, 500, 1500, "high", 7, 42, null, 75)).toEqual(band(20, 500, 1500, "high", 7, 46));
});

/** Pairs of earlier reports, averaged elsewhere: the band's other half, from the upper station down, is held as well. */
yardstickOf(
  lapseBand,
  {
    against: "station pairs of CLIMAT reports 2004-2020, averaged elsewhere, from the upper station down",
    figure: "share of months inside the band",
    least: 0.85,
    most: 1,
    unit: "",
  },
  () => {
    const inside = pairs.flatMap((pair) =>
      (["high", "low"] as const).flatMap((kind) => {
        const [from, to] = kind === "high" ? [pair.highHighs, pair.lowHighs] : [pair.highLows, pair.lowLows];
        const answers = call(
          lapseBand,
          down(from),
          pair.highElevation,
          pair.lowElevation,
          kind,
          down(MONTHS),
          pair.lowLatitude,
        ) as [number, number, number][];
        return answers.map(([least, , most], i) => least <= (to[i] as number) && (to[i] as number) <= most);
      }),
    );
    return { figure: inside.filter(Boolean).length / inside.length, values: inside.length };
  },
);

/** Rates of other authors, which the middle of the band must hold: read back as K per km over one kilometre. */
describe("holds the rates that others published", () => {
  const rates = (kind: string, month?: number): [number, number] => {
    const [least, , most] = band(20, 0, 1000, kind, month, 46);
    return [20 - most, 20 - least];
  };
  test.each([
    // Abstracts: northern Italy, annual means; Cascades, annual means, late-summer lows, spring highs.
    ["Rolland 2003, year", "median", undefined, 5.4, 5.8],
    ["Minder et al. 2010, year", "median", undefined, 3.9, 5.2],
    ["Minder et al. 2010, late-summer lows", "low", 8, 2.5, 3.5],
    ["Minder et al. 2010, spring highs", "high", 4, 6.5, 7.5],
  ])("%s", (_, kind, month, from, to) => {
    const [least, most] = rates(kind, month);
    expect(least).toBeLessThanOrEqual(from);
    expect(most).toBeGreaterThanOrEqual(to);
  });
});

test("the season turns with the hemisphere", () => {
  expect(band(20, 500, 1500, "high", 1, -35)).toEqual(band(20, 500, 1500, "high", 7, 46));
  expect(band(20, 500, 1500, "high", 12, 46)).toEqual(band(20, 500, 1500, "high", 2, 46));
  expect(band(20, 500, 1500, "high", 3, 46)).not.toEqual(band(20, 500, 1500, "high", 2, 46));
});

test("without a month the band holds that of every month, and the likely is LAPSE's", () => {
  for (const kind of ["high", "low", "median"]) {
    const [least, likely, most] = band(20, 500, 1500, kind);
    for (const month of MONTHS) {
      const [seasonLeast, , seasonMost] = band(20, 500, 1500, kind, month, 46);
      expect(least).toBeLessThanOrEqual(seasonLeast);
      expect(most).toBeGreaterThanOrEqual(seasonMost);
    }
    expect(likely).toBeCloseTo(20 - { high: 6.5, low: 4.5, median: 5.5 }[kind as "high"], 12);
  }
});

test("is in order and never narrower than 1.7 K to either side", () =>
  fc.assert(
    fc.property(
      fc.double({ min: -90, max: 60, noNaN: true }),
      fc.double({ min: -430, max: 9000, noNaN: true }),
      fc.double({ min: -430, max: 9000, noNaN: true }),
      fc.constantFrom("high", "low", "median"),
      fc.constantFrom(undefined, ...MONTHS),
      (temperature, station, home, kind, month) => {
        const [least, likely, most] = band(temperature, station, home, kind, month);
        expect(likely - least).toBeGreaterThanOrEqual(1.7 - 1e-9);
        expect(most - likely).toBeGreaterThanOrEqual(1.7 - 1e-9);
      },
    ),
  ));

// As agreed, and as the pairs of small gaps above bear out: what stations of one elevation differ by.
test.each([
  ["high", 1.8],
  ["low", 2.8],
  ["median", 1.7],
] as const)("at the station's own elevation the band of a %s is %d K to either side", (kind, margin) =>
  expect(band(20, 500, 500, kind, 7, 46)).toEqual([20 - margin, 20, 20 + margin]),
);

test("2.8 K are 5.04 °F in the imperial system", () => {
  const [least, likely, most] = band(50, 1000, 1000, "low", 1, 46, "imperial");
  expect([least, likely, most].map((value) => Number(value.toFixed(9)))).toEqual([44.96, 50, 55.04]);
});

test("an unknown kind is refused", () =>
  expect(call(lapseBand, 20, 500, 1500, "average")[0]?.[0]).toBe(
    `#VALUE! kind holds 'average': give "high", "low", "median"`,
  ));

test("without a latitude the months are those of the temperate north, on either side of the equator the tropics'", () => {
  expect(band(20, 0, 1000, "high", 1)).toEqual(band(20, 0, 1000, "high", 1, 46));
  const tropics = band(20, 0, 1000, "high", 1, 0);
  for (const latitude of [-23.5, 23.5]) expect(band(20, 0, 1000, "high", 7, latitude)).toEqual(tropics);
  expect(band(20, 0, 1000, "high", 7, -24)).toEqual(band(20, 0, 1000, "high", 1, 46));
  expect(tropics).not.toEqual(band(20, 0, 1000, "high", 1, 46));
});
