import type { Problem } from "../problem";
import type { NetworkKey } from "./networks";
import type { Station } from "./station";

/** Twelve months at a place. Rain and humidity are NaN where fewer than three stations report them. */
export interface SiteYear {
  readonly high: readonly Band[];
  readonly low: readonly Band[];
  /** mm a month. */
  readonly rain: readonly number[];
  /** Relative humidity in % at the mid-point of high and low. */
  readonly humidity: readonly number[];
  /** The stations behind the temperatures, nearest first. */
  readonly stations: readonly Nearby[];
}

export interface Band {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

export interface Nearby {
  readonly station: Station;
  readonly km: number;
}

/**
 * The network as the functions are given it: a definition that `needs: "network"` gets it beside its arguments. What it
 * is made of is fetched when first needed (open.ts), so that it costs nothing before.
 */
export interface Network {
  readonly stations: readonly Station[];
  /** The station of an identifier or a name; #VALUE! with the names where several fit, #N/A with the nearest spellings. */
  readonly find: (wanted: string) => Station | Problem;
  /** The stations within so many kilometres, nearest first; of one network where it is named. */
  readonly around: (latitude: number, longitude: number, km: number, of?: NetworkKey) => readonly Nearby[];
  /** The estimated year. `without` leaves stations out, for the proof. */
  readonly yearAt: (
    latitude: number,
    longitude: number,
    elevation: number,
    without?: (nearby: Nearby) => boolean,
  ) => SiteYear | Problem;
}
