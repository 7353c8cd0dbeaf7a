import lines from "./leaveOneOut.json";

/** Of some stations' months, each station hidden and estimated from the others. K, and shares of months. */
export interface Left {
  /** Root mean square error of the estimate, and its median without sign. */
  readonly off: number;
  readonly median: number;
  /** Months inside the band. */
  readonly inside: number;
  /** Root mean square error of the nearest other station, corrected by 6.5 K per km, and by LAPSEBAND's likely rate. */
  readonly nearest: number;
  readonly lapseBand: number;
  readonly insideLapseBand: number;
}

export interface LeftOut {
  readonly stations: string;
  readonly number: number;
  readonly highs: Left;
  readonly lows: Left;
}

/** Written by `npm run proof`. The first line is of all stations from 500 m. */
export const leaveOneOut: readonly LeftOut[] = lines;
