import { networks } from "../../../functions/network/networks";
import type { Station } from "../../../functions/network/station";
import { greatCircle } from "../../../functions/climate/shared/greatCircle";
import { isTropical, seasonOf, type Kind, type Spread } from "../../../functions/climate/shared/observedRates";

/**
 * The rates of LAPSEBAND, from the network: each upper station's fall of temperature to its lower neighbours, averaged over
 * these, by season; percentiles over the stations, in which every region of the world counts alike however many stations it has.
 */
const FARTHEST = 80; // km
const LEAST_GAP = 500; // m
/** A region of fewer upper stations than this counts as many times less. */
const FULL_REGION = 6;
const PERCENTILES = [0.05, 0.5, 0.95] as const;
/** In the tropics regions are few and unlike: farther out. */
const TROPICAL_PERCENTILES = [0.025, 0.5, 0.975] as const;

export interface Pair {
  readonly upper: Station;
  readonly lower: Station;
}

/** Pairs of stations at most 80 km apart, the upper one so many metres higher. Antarctica is left out. */
export const pairsOf = (stations: readonly Station[], leastGap = LEAST_GAP): readonly Pair[] => {
  const inOrder = stations.filter(({ latitude }) => latitude > -60).sort((one, other) => one.latitude - other.latitude);
  const pairs: Pair[] = [];
  for (let i = 0; i < inOrder.length; i++) {
    const one = inOrder[i] as Station;
    for (let j = i + 1; j < inOrder.length; j++) {
      const other = inOrder[j] as Station;
      if (other.latitude - one.latitude > FARTHEST / 110) break;
      if (Math.abs(one.elevation - other.elevation) < leastGap) continue;
      if (greatCircle(one.latitude, one.longitude, other.latitude, other.longitude) > FARTHEST) continue;
      pairs.push(one.elevation > other.elevation ? { upper: one, lower: other } : { upper: other, lower: one });
    }
  }
  return pairs;
};

/** A region of mountains that resemble one another more than others. */
export const regionOf = ({ latitude, longitude }: Station): string => {
  if (Math.abs(latitude) <= 23.5)
    return longitude < -30 ? "tropical America" : longitude < 60 ? "tropical Africa" : "tropical Asia";
  if (longitude < -30)
    return latitude < 13 ? "South America" : longitude < -100 ? "western North America" : "eastern North America";
  if (longitude >= 160 || (longitude > 95 && latitude < -10)) return "Oceania";
  if (longitude < 60 && latitude >= 30 && !(longitude > 35 && latitude < 38)) return "Europe and its neighbours";
  if (longitude < 60) return "Africa and Arabia";
  if (longitude >= 128) return "Japan";
  return latitude <= 36 ? "southern Asia" : "northern Asia";
};

const temperature = (station: Station, kind: Kind, month: number): number => {
  const of = (which: "high" | "low"): number =>
    (station[which][month] as number) + networks[station.network].warming[which];
  return kind === "median" ? (of("high") + of("low")) / 2 : of(kind);
};

/** K added to the lower station's temperature by a fall of so many K per km, and what the upper one has. */
export const warmerBelow = ({ upper, lower }: Pair, kind: Kind, month: number): number =>
  temperature(lower, kind, month) - temperature(upper, kind, month);

const quantile = (values: readonly (readonly [value: number, weight: number])[], share: number): number => {
  const inOrder = [...values].sort(([one], [other]) => one - other);
  const whole = inOrder.reduce((sum, [, weight]) => sum + weight, 0);
  let sum = 0;
  let before: readonly [at: number, value: number] | undefined;
  for (const [value, weight] of inOrder) {
    const at = (sum + weight / 2) / whole;
    if (at >= share) {
      return before ? before[1] + ((value - before[1]) * (share - before[0])) / (at - before[0]) : value;
    }
    before = [at, value];
    sum += weight;
  }
  return before?.[1] ?? NaN;
};

/** The rates of a season (0 is winter), or of the tropics and monsoon Asia, in K per km; without a region where it is named. */
export const ratesOf = (pairs: readonly Pair[], kind: Kind, season: number | "tropical", without?: string): Spread => {
  const partners = new Map<Station, Pair[]>();
  for (const pair of pairs) {
    const { upper } = pair;
    if (isTropical(upper.latitude, upper.longitude) !== (season === "tropical") || regionOf(upper) === without)
      continue;
    partners.set(upper, [...(partners.get(upper) ?? []), pair]);
  }
  const inRegion = new Map<string, number>();
  for (const upper of partners.keys()) inRegion.set(regionOf(upper), (inRegion.get(regionOf(upper)) ?? 0) + 1);
  const values = [...partners].flatMap(([upper, own]) => {
    const months = Array.from({ length: 12 }, (_, month) => month).filter(
      (month) => season === "tropical" || seasonOf(month + 1, upper.latitude < 0) === season,
    );
    const weight = 1 / months.length / Math.max(inRegion.get(regionOf(upper)) ?? 0, FULL_REGION);
    return months.map((month) => {
      const rates = own.map(
        (pair) => (1000 * warmerBelow(pair, kind, month)) / (pair.upper.elevation - pair.lower.elevation),
      );
      return [rates.reduce((sum, rate) => sum + rate, 0) / rates.length, weight] as const;
    });
  });
  const shares = season === "tropical" ? TROPICAL_PERCENTILES : PERCENTILES;
  return shares.map((share) => quantile(values, share)) as unknown as Spread;
};
