import { dateOf } from "../../dates";

const SWEEPS = 40;

/** The curve of one year, from its twelve means and the days of its months. */
const curveOf = (means: readonly number[], days: readonly number[]): ((month: number, day: number) => number) => {
  const at = (list: readonly number[], i: number): number => list[(i + 12) % 12] as number;
  // Second derivatives of the cubic spline at the beginnings of the months. The rows of the system sum to half their
  // diagonal, so each sweep at least halves the error, and forty reach the last digit. Whatever they hold, the average
  // of a month is its mean, because the spline passes through the sums.
  const bends = means.map(() => 0);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (const i of bends.keys()) {
      const before = at(days, i - 1);
      const after = at(days, i);
      const turn = 6 * (at(means, i) - at(means, i - 1));
      bends[i] = (turn - before * at(bends, i - 1) - after * at(bends, i + 1)) / (2 * (before + after));
    }
  }
  // The sum at the end of the day less the sum at its beginning.
  return (month, day) => {
    const length = at(days, month);
    const first = at(bends, month);
    const last = at(bends, month + 1);
    return (
      at(means, month) -
      (length * (2 * first + last)) / 6 +
      first * (day - 0.5) +
      ((last - first) * (3 * day * day - 3 * day + 1)) / (6 * length)
    );
  };
};

const daysOf = (february: number): readonly number[] => [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

type Curve = (serial: number) => number;
/** One year's curve serves all the cells of a spread, which share one array of means. */
const known = new WeakMap<readonly number[], Curve>();

/**
 * The value on a day (a serial number) from twelve monthly means, January first: a cubic spline with joined ends through
 * the running sum of the days (histospline, Boneva et al. 1971). The days of each month average to the month's mean, in
 * the length that February has in the day's own year.
 */
export const curveThrough = (means: readonly number[]): Curve => {
  const found = known.get(means);
  if (found) return found;
  const common = curveOf(means, daysOf(28));
  const leap = curveOf(means, daysOf(29));
  const curve: Curve = (serial) => {
    const date = dateOf(serial);
    return (isLeap(date.getFullYear()) ? leap : common)(date.getMonth(), date.getDate());
  };
  known.set(means, curve);
  return curve;
};
