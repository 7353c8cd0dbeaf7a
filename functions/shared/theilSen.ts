/** A straight line: y = intercept + slope · x. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * The most points that are taken: every pair has its slope, so that the work grows with the square of their number.
 * More than eight years of daily figures.
 */
export const MOST_POINTS = 3000;

/** The median; of an even number of values, the mean of the two in the middle. */
export const median = (values: ArrayLike<number>): number => {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] as number) + upper) / 2;
};

/**
 * The Theil-Sen line through points (x, y): its slope is the median of the slopes of all pairs whose x differ, and
 * its height the median of what is left of y, so that as many points lie above it as below. One wild point, or several,
 * hardly move it. Undefined where all points share one x.
 */
export const theilSen = (x: readonly number[], y: readonly number[]): Line | undefined => {
  const slopes = new Float64Array((x.length * (x.length - 1)) / 2);
  let pairs = 0;
  for (let i = 1; i < x.length; i++) {
    for (let j = 0; j < i; j++) {
      const run = (x[i] as number) - (x[j] as number);
      if (run !== 0) slopes[pairs++] = ((y[i] as number) - (y[j] as number)) / run;
    }
  }
  if (pairs === 0) return undefined;
  const slope = median(slopes.subarray(0, pairs));
  return { slope, intercept: median(y.map((value, i) => value - slope * (x[i] as number))) };
};
