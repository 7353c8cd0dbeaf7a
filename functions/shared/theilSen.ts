/** A straight line: y = intercept + slope · x. The slope lies from `least` to `most` with 90 % confidence. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly least: number;
  readonly most: number;
}

/**
 * The most points that are taken: every pair has its slope, so that the work grows with the square of their number.
 * More than eight years of daily figures.
 */
export const MOST_POINTS = 3000;

/** Of 90 %, in standard deviations of a normal distribution: 5 % lie below it and 5 % above. */
export const NINETY_PERCENT = 1.6448536269514722;

/**
 * The value that would stand at `rank`, counted from 0, were the values of `from` to the end in order. They are moved so
 * that none before it is greater and none behind it less (Hoare's selection): a part of the work of sorting all of them,
 * and the same value.
 */
const select = (values: Float64Array, rank: number, from = 0): number => {
  let [left, right] = [from, values.length - 1];
  while (left < right) {
    const pivot = values[(left + right) >> 1] as number;
    let [i, j] = [left, right];
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i > j) break;
      const swapped = values[i] as number;
      values[i++] = values[j] as number;
      values[j--] = swapped;
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else break;
  }
  return values[rank] as number;
};

/** The middle of the values, which it moves; of an even number of them, the mean of the two in the middle. */
const middle = (values: Float64Array): number => {
  const half = values.length >> 1;
  const upper = select(values, half);
  if (values.length % 2 === 1) return upper;
  // Those before `half` are no greater: the greatest of them is the other one.
  let lower = values[0] as number;
  for (let i = 1; i < half; i++) if ((values[i] as number) > lower) lower = values[i] as number;
  return (lower + upper) / 2;
};

/** The median; of an even number of values, the mean of the two in the middle. */
export const median = (values: ArrayLike<number>): number => middle(Float64Array.from(values));

/** What equal values take off the variance of Kendall's sum, times 18. */
const ties = (values: readonly number[]): number => {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].reduce((sum, k) => sum + k * (k - 1) * (2 * k + 5), 0);
};

/**
 * The Theil-Sen line through points (x, y): its slope is the median of the slopes of all pairs whose x differ, and
 * its height the median of what is left of y, so that as many points lie above it as below. One wild point, or several,
 * hardly move it. Its range is Sen's (1968): as many of the slopes are cut off at either end as Kendall's sum may come to
 * by chance. Undefined where all points share one x.
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
  const known = slopes.subarray(0, pairs);
  const slope = middle(known);
  const n = x.length;
  const variance = (n * (n - 1) * (2 * n + 5) - ties(x) - ties(y)) / 18;
  const reach = NINETY_PERCENT * Math.sqrt(Math.max(variance, 0));
  const last = pairs - 1;
  return {
    slope,
    intercept: median(y.map((value, i) => value - slope * (x[i] as number))),
    least: select(known, Math.max(Math.round((pairs - reach) / 2) - 1, 0)),
    most: select(known, Math.min(Math.round((pairs + reach) / 2), last)),
  };
};
