import { lapseBand } from "../../functions/climate/lapseBand";
import { relativeHumidity } from "../../functions/air/shared/vapour";
import type { Band, Nearby, Network } from "../../functions/network/network";
import { networks } from "../../functions/network/networks";
import type { Station } from "../../functions/network/station";
import { Problem } from "../../functions/problem";

/**
 * Leave-one-out: what the network says of a station's place without the station and without any other within 1 km of it,
 * beside the nearest of the others, corrected by 6.5 K per km, and beside LAPSEBAND from that one.
 */
export interface Residual {
  readonly kind: "high" | "low";
  readonly station: Station;
  /** What was measured, less what is likely; K. */
  readonly off: number;
  readonly isInside: boolean;
  readonly nearest: number;
  readonly lapse: number;
  readonly isInLapse: boolean;
}

export interface Proof {
  readonly residuals: readonly Residual[];
  /** mm of a month, and percent of relative humidity: the estimate's, and the nearest station's. */
  readonly rain: readonly (readonly [number, number])[];
  readonly humidity: readonly (readonly [number, number])[];
  /** Stations for which nothing is estimated. */
  readonly none: number;
}

const TWIN = 1; // km
const MONTHS = Array.from({ length: 12 }, (_, month) => month);

const humidityOf = ({ vapour, high, low }: Station, month: number): number =>
  relativeHumidity(vapour[month] as number, ((high[month] as number) + (low[month] as number)) / 2);

export const prove = (network: Network, stations: readonly Station[]): Proof => {
  const residuals: Residual[] = [];
  const rain: (readonly [number, number])[] = [];
  const humidity: (readonly [number, number])[] = [];
  let none = 0;
  for (const station of stations) {
    const { latitude, longitude, elevation } = station;
    const isItself = (nearby: Nearby): boolean => nearby.station === station || nearby.km < TWIN;
    const year = network.yearAt(latitude, longitude, elevation, isItself);
    if (year instanceof Problem) {
      none++;
      continue;
    }
    const near = network.around(latitude, longitude, 1000).filter((nearby) => !isItself(nearby));
    const of = (which: Station, kind: "high" | "low", month: number): number =>
      (which[kind][month] as number) + networks[which.network].warming[kind];
    const { station: nearest } = near[0] as Nearby;
    for (const kind of ["high", "low"] as const) {
      for (const month of MONTHS) {
        const seen = of(station, kind, month);
        const { least, likely, most } = year[kind][month] as Band;
        const [from, lapse, to] = lapseBand.calculate({
          temperature: of(nearest, kind, month),
          stationElevation: nearest.elevation,
          homeElevation: elevation,
          kind,
          month: month + 1,
          latitude,
          longitude,
          units: undefined,
        }) as [number, number, number];
        residuals.push({
          kind,
          station,
          off: seen - likely,
          isInside: least <= seen && seen <= most,
          nearest: seen - (of(nearest, kind, month) + (6.5 * (nearest.elevation - elevation)) / 1000),
          lapse: seen - lapse,
          isInLapse: from <= seen && seen <= to,
        });
      }
    }
    const wet = near.find((nearby) => !Number.isNaN(nearby.station.rain[0]))?.station;
    const damp = near.find((nearby) => !Number.isNaN(nearby.station.vapour[0]))?.station;
    for (const month of MONTHS) {
      const [seen, other] = [station.rain[month] as number, wet?.rain[month] as number];
      if (wet && !Number.isNaN(seen))
        rain.push([Math.abs(seen - (year.rain[month] as number)), Math.abs(seen - other)]);
      const share = humidityOf(station, month);
      if (damp && !Number.isNaN(share)) {
        humidity.push([Math.abs(share - (year.humidity[month] as number)), Math.abs(share - humidityOf(damp, month))]);
      }
    }
  }
  return { residuals, rain, humidity, none };
};

export const rms = (offs: readonly number[]): number =>
  Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length);
export const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;
export const median = (values: readonly number[]): number =>
  [...values].sort((one, other) => one - other)[values.length >> 1] as number;

/** A station well below those around it: in the mountains, a valley or a basin. */
export const isInValley = (network: Network, { latitude, longitude, elevation }: Station): boolean => {
  const near = network.around(latitude, longitude, 50).filter(({ km }) => km >= TWIN);
  const mean = near.reduce((sum, { station }) => sum + station.elevation, 0) / near.length;
  return near.length >= 3 && mean - elevation > 150;
};
