/** Root of the mean of the squares. */
export const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The middle value, or the mean of the two middle ones. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length / 2;
  return mean([sorted[Math.ceil(middle) - 1] as number, sorted[Math.floor(middle)] as number]);
};

/** Numbers from 0 to below 1 that are the same in every run (Park & Miller's generator, which fits in a double). */
export const uniform = (seed: number): (() => number) => {
  let state = seed;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
};
