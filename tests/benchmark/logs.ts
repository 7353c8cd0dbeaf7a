/** Invented one-minute readings as a sheet hands them over: a column of times, a column of temperatures. */
export interface Cells {
  readonly times: readonly (readonly [number])[];
  readonly temperatures: readonly (readonly [number])[];
}

export const YEAR = 525_600;
export const START = 46_023; // 1 January 2026

/** A warm day, a cool night, and the trembling of a sensor that reads to 0.1 °C. */
export const temperatureAt = (minute: number): number =>
  Math.round((22 + 6 * Math.sin((minute / 1440) * 2 * Math.PI) + ((minute * 7919) % 11) / 10 - 0.5) * 10) / 10;

export const cells = (minutes: number): Cells => ({
  times: Array.from({ length: minutes }, (_, i) => [START + i / 1440] as const),
  temperatures: Array.from({ length: minutes }, (_, i) => [temperatureAt(i)] as const),
});
