import { RATES } from "./rate";

export type Kind = "high" | "low" | "median";
export const KINDS: readonly Kind[] = ["high", "low", "median"];
type Season = "winter" | "spring" | "summer" | "autumn";

/** K per km: least, middle, most. */
export type Spread = readonly [number, number, number];

/**
 * Observed fall of temperature with elevation, K per km: 5th, 50th and 95th percentile of 51 stations, each the average
 * over its inland partners 500 m or more below and at most 80 km away, 2004-2020; seasons of the hemisphere. "median"
 * is the monthly mean temperature. Nearly all stations lie in Europe and its neighbourhood.
 */
const OBSERVED: Record<Season, Record<Kind, Spread>> = {
  winter: { high: [3.2, 5.7, 7.1], low: [1.1, 4.1, 8.8], median: [2.4, 5.1, 7.3] },
  spring: { high: [4.1, 7.7, 9.4], low: [1.9, 4.1, 7.8], median: [3.4, 6.0, 7.8] },
  summer: { high: [2.3, 7.8, 10.1], low: [0.0, 4.2, 7.2], median: [1.8, 6.1, 7.9] },
  autumn: { high: [3.6, 6.2, 8.3], low: [2.0, 3.8, 7.0], median: [3.5, 5.0, 6.8] },
};
const SEASONS: readonly Season[] = ["winter", "spring", "summer", "autumn"];

/** Meteorological season of a month, 1 to 12: December to February is the northern winter. */
const seasonOf = (month: number, isSouthern: boolean): Season =>
  SEASONS[(Math.floor((month % 12) / 3) + (isSouthern ? 2 : 0)) % 4] as Season;

/** The rates of a kind in a month; without a month the annual median between the widest ends of the four seasons. */
export const observedRates = (kind: Kind, month: number | undefined, latitude: number): Spread => {
  if (month !== undefined) return OBSERVED[seasonOf(month, latitude < 0)][kind];
  const spreads = SEASONS.map((season) => OBSERVED[season][kind]);
  return [Math.min(...spreads.map(([least]) => least)), RATES[kind], Math.max(...spreads.map(([, , most]) => most))];
};
