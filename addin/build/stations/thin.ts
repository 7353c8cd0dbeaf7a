import { RATES } from "../../../functions/climate/shared/rate";
import { networks } from "../../../functions/network/networks";
import type { Station } from "../../../functions/network/station";
import { greatCircle } from "../../../functions/climate/shared/greatCircle";

/** Two stations so near are one and the same, of two networks. km, m */
const SAME = { km: 3, metres: 50 };
/** A neighbour as near as this that says the same (K, root mean square of the year) makes a station dispensable. */
const NEIGHBOUR = { km: 42, metres: 250, kelvin: 1.6 };
/** Networks so dense that they are thinned. */
const DENSE = new Set(["noaa"]);

interface Near {
  readonly km: number;
  readonly metres: number;
}
const isWithin = (one: Station, other: Station, { km, metres }: Near): boolean =>
  Math.abs(one.elevation - other.elevation) <= metres &&
  Math.abs(one.latitude - other.latitude) <= km / 110 && // spares most of the trigonometry
  greatCircle(one.latitude, one.longitude, other.latitude, other.longitude) <= km;

/** Root mean square difference of a year, K, elevation and the warming between the periods taken off. */
const differs = (one: Station, other: Station, kind: "high" | "low"): number => {
  const shift =
    networks[one.network].warming[kind] -
    networks[other.network].warming[kind] +
    (RATES[kind] * (one.elevation - other.elevation)) / 1000;
  let sum = 0;
  for (let i = 0; i < 12; i++) sum += ((one[kind][i] as number) - (other[kind][i] as number) + shift) ** 2;
  return Math.sqrt(sum / 12);
};

export interface Twins {
  readonly pairs: number;
  /** Mean of the other network less CLIMAT, K. */
  readonly high: number;
  readonly low: number;
}

/** What CLIMAT and another network say of one place: pairs within 10 km and 50 m. */
export const twinsOf = (climat: readonly Station[], others: readonly Station[]): Twins => {
  const pairs = climat.flatMap((one) =>
    others.filter((other) => isWithin(one, other, { km: 10, metres: 50 })).map((other) => [one, other] as const),
  );
  const mean = (kind: "high" | "low"): number => {
    const offs = pairs
      .map(([one, other]) =>
        Array.from({ length: 12 }, (_, i) => (other[kind][i] as number) - (one[kind][i] as number)),
      )
      .map((months) => months.reduce((sum, value) => sum + value, 0) / 12)
      .sort((a, b) => a - b);
    return offs[offs.length >> 1] ?? NaN; // the median: a few twins stand on different slopes
  };
  return { pairs: pairs.length, high: mean("high"), low: mean("low") };
};

/**
 * The stations of another network that add something: none that stands in the network already, and of a dense one none
 * whose neighbour says the same. Those with the longest records are taken first, of equals the highest.
 */
export const addingTo = (
  kept: readonly Station[],
  others: readonly Station[],
): { readonly stations: readonly Station[]; readonly same: number; readonly dispensable: number } => {
  const stations: Station[] = [];
  let same = 0;
  let dispensable = 0;
  const inOrder = [...others].sort(
    (one, other) =>
      (other.years || 0) - (one.years || 0) || other.elevation - one.elevation || one.id.localeCompare(other.id, "en"),
  );
  for (const station of inOrder) {
    if (kept.some((other) => isWithin(station, other, SAME))) same++;
    else if (
      DENSE.has(station.network) &&
      [kept, stations].some((list) =>
        list.some(
          (other) =>
            isWithin(station, other, NEIGHBOUR) &&
            differs(station, other, "high") <= NEIGHBOUR.kelvin &&
            differs(station, other, "low") <= NEIGHBOUR.kelvin,
        ),
      )
    ) {
      dispensable++;
    } else stations.push(station);
  }
  return { stations: stations.sort((one, other) => one.id.localeCompare(other.id, "en")), same, dispensable };
};
