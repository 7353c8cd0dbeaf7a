import type { WrittenOption } from "../../define";

export type Kind = "high" | "low" | "median";
export const KINDS: readonly Kind[] = ["high", "low", "median"];

/** K per km: least, middle, most. */
export type Spread = readonly [number, number, number];

/**
 * Observed fall of temperature with elevation, K per km: 5th, 50th and 95th percentile over the stations of the network
 * that have others 500 m or more below and at most 80 km away, on coasts and inland; every region of the world counts
 * alike. Seasons of the hemisphere from winter on; "median" is the mid-point. addin/build/stations/rates.ts derives the
 * table, and a test holds it to that.
 */
const SEASONAL: Readonly<Record<Kind, readonly Spread[]>> = {
  high: [
    [1.7, 5.8, 9.4],
    [2.3, 7.0, 9.7],
    [-0.8, 7.3, 9.8],
    [1.7, 6.5, 9.1],
  ],
  low: [
    [-0.8, 4.2, 10.1],
    [0.7, 4.7, 9.7],
    [0.1, 4.7, 10.3],
    [-0.7, 4.2, 9.6],
  ],
  median: [
    [1.0, 5.0, 9.4],
    [1.9, 5.7, 8.9],
    [0.3, 6.1, 9.3],
    [1.5, 5.2, 8.7],
  ],
};
/**
 * Within the tropics and in monsoon Asia the seasons of Europe mislead (the Himalaya runs opposite to the Alps): one
 * spread serves the year, from the 2.5th to the 97.5th percentile, because regions there are few and unlike.
 */
const TROPICAL: Readonly<Record<Kind, Spread>> = {
  high: [2.0, 6.0, 9.5],
  low: [2.9, 6.0, 10.6],
  median: [3.2, 6.1, 8.9],
};

const TROPIC = 23.5;
/** Monsoon Asia: boxes of longitudes, with the latitude up to which it rules. From the Indus to Tibet, and farther east. */
const MONSOON = [
  { west: 65, east: 100, north: 36 },
  { west: 100, east: 150, north: 46 },
] as const;

/** Within the tropics, or where the monsoon rules: from the Indus to Tibet up to 36° north, farther east up to 46°. */
export const isTropical = (latitude: number, longitude: number | undefined): boolean =>
  Math.abs(latitude) <= TROPIC ||
  (longitude !== undefined &&
    latitude > 0 &&
    MONSOON.some(({ west, east, north }) => longitude >= west && longitude <= east && latitude <= north));

/** The same in a formula. */
export const tropicalText = (latitude: string, longitude: WrittenOption<string>): string => {
  const belt = `ABS(${latitude})<=${TROPIC}`;
  return longitude(belt, (own) => {
    const boxes = MONSOON.map(
      ({ west, east, north }) => `AND(${latitude}>0,${latitude}<=${north},${own}>=${west},${own}<=${east})`,
    );
    return `OR(${[belt, ...boxes].join(",")})`;
  });
};

/** Meteorological season of a month, 1 to 12, on the hemisphere, 0 for winter: December to February is the northern one. */
export const seasonOf = (month: number, isSouthern: boolean): number =>
  (Math.floor(month / 3) + (isSouthern ? 2 : 0)) % 4;

/** The same in a formula, counted from 1. */
export const seasonText = (month: string, latitude: WrittenOption<string>): string =>
  `(MOD(INT(${month}/3)+${latitude("0", (own) => `IF(${own}<0,2,0)`)},4)+1)`;

/** The rates of a kind: in a month, or in each of the seasons. Without a latitude those of the temperate north. */
export const observedRates = (
  kind: Kind,
  month: number | undefined,
  latitude: number | undefined,
  longitude: number | undefined,
): readonly Spread[] => {
  if (latitude !== undefined && isTropical(latitude, longitude)) return [TROPICAL[kind]];
  const spreads = SEASONAL[kind];
  return month === undefined ? spreads : [spreads[seasonOf(month, (latitude ?? 0) < 0)] as Spread];
};
