import type { NetworkKey } from "./networks";

/** A weather station and its average year, as its service published it; what is missing is NaN. */
export interface Station {
  readonly network: NetworkKey;
  /** WMO number, five digits; in the other networks the service's own identifier. Text: 01001 has its zero. */
  readonly id: string;
  readonly name: string;
  readonly country: string;
  readonly latitude: number;
  readonly longitude: number;
  /** m */
  readonly elevation: number;
  /** The fewest years behind any month's high; NaN where the service does not say. */
  readonly years: number;
  /** Twelve months each. °C, °C, hPa, mm, days with at least 1 mm. */
  readonly high: readonly number[];
  readonly low: readonly number[];
  readonly vapour: readonly number[];
  readonly rain: readonly number[];
  readonly rainDays: readonly number[];
}
