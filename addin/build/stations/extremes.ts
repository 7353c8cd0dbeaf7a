import { networkOf } from "../../../functions/network/open";
import type { Station } from "../../../functions/network/station";
import { Problem } from "../../../functions/problem";

/**
 * Some services report the month's highest and lowest temperature where the mean daily ones are asked for. Such a station
 * is too warm by day and too cold by night beside what its neighbours say of its place, and its range is far too wide. K,
 * means of the year.
 */
const TOO_WARM = 2.5;
const TOO_COLD = 2.5;
const TOO_WIDE = 7;

export interface Extreme {
  readonly station: Station;
  readonly high: number;
  readonly low: number;
}

/** CLIMAT stations whose highs and lows are extremes and not means. */
export const extremesIn = (stations: readonly Station[]): readonly Extreme[] => {
  const { yearAt } = networkOf(stations);
  return stations.flatMap((station): Extreme[] => {
    const year = yearAt(
      station.latitude,
      station.longitude,
      station.elevation,
      (nearby) => nearby.station === station || nearby.km < 1,
    );
    if (year instanceof Problem) return [];
    const off = (kind: "high" | "low"): number =>
      year[kind].reduce((sum, { likely }, month) => sum + (station[kind][month] as number) - likely, 0) / 12;
    const [high, low] = [off("high"), off("low")];
    return high >= TOO_WARM && low <= -TOO_COLD && high - low >= TOO_WIDE ? [{ station, high, low }] : [];
  });
};
