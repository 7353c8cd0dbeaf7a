import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { seasonOf } from "../climate/shared/observedRates";
import { studentT95 } from "../shared/studentT";

/**
 * Kriging with external drift, as a Gaussian process whose mean falls with elevation and with distance from the equator
 * (Hengl, Heuvelink & Rossiter 2007). The slopes of the mean are not free: each has a prior, the rate that mountains
 * show and how far from it a region may lie, so that a few stations in one valley cannot turn it about. The size of the
 * errors is taken from the neighbourhood itself, which makes the prediction a Student's t (Handcock & Stein 1993, by its
 * title; so does DiceKriging in R): where neighbours contradict one another, as in mountains whose valleys pool cold air, the band widens.
 */
export interface Model {
  /** Of the part of the errors that neighbours share: standard deviation, and where it has fallen to 1/e, km and km of elevation. */
  readonly sill: number;
  readonly range: number;
  readonly rise: number;
  /** Of the part that a station has alone. */
  readonly nugget: number;
  /** Fall per km of elevation, by season of the hemisphere from winter on, and the standard deviation of a region's. */
  readonly rates: readonly [winter: number, spring: number, summer: number, autumn: number];
  readonly rateSpread: number;
  /** Fall per degree from the equator beyond 25°. */
  readonly poleward: number;
}

/** Standard deviations of the slopes per degree from the equator and per degree of longitude, and of the level. */
const POLEWARD_SPREAD = 0.2;
const EASTWARD_SPREAD = 0.2;
const LEVEL_SPREAD = 30;
/** How much the model's own size of the errors counts, in stations. */
const PRIOR_WEIGHT = 4;

/** Where a neighbour lies as seen from the place. */
export interface Neighbour {
  readonly km: number;
  /** km above the place. */
  readonly higher: number;
  /** Degrees farther from the equator than the place, counted from 25° on. */
  readonly poleward: number;
  readonly eastward: number;
}

export interface Prediction {
  readonly likely: number;
  /** From the likely to either end of a band that holds nine in ten. */
  readonly half: number;
}

/**
 * The year at a place from its neighbours. The weights depend on where they lie and on the model alone: one decomposition
 * serves the twelve months. `between` answers the kilometres between two neighbours, `at` a neighbour's month.
 */
export const predict = (
  model: Model,
  neighbours: readonly Neighbour[],
  isSouthern: boolean,
  between: (i: number, j: number) => number,
  at: (i: number, month: number) => number,
): Prediction[] => {
  const n = neighbours.length;
  const { sill, range, rise, nugget, rates, rateSpread, poleward } = model;
  const shared = (km: number, kmOfElevation: number): number =>
    sill ** 2 * Math.exp(-Math.sqrt((km / range) ** 2 + (kmOfElevation / rise) ** 2));
  const level = LEVEL_SPREAD ** 2;

  const covariance = new Matrix(n, n);
  const given = new Matrix(n, 13); // the covariances with the place, then the twelve months
  for (let i = 0; i < n; i++) {
    const one = neighbours[i] as Neighbour;
    for (let j = 0; j <= i; j++) {
      const other = neighbours[j] as Neighbour;
      const value =
        level +
        shared(i === j ? 0 : between(i, j), one.higher - other.higher) +
        (i === j ? nugget ** 2 : 0) +
        rateSpread ** 2 * one.higher * other.higher +
        POLEWARD_SPREAD ** 2 * one.poleward * other.poleward +
        EASTWARD_SPREAD ** 2 * one.eastward * other.eastward;
      covariance.set(i, j, value);
      covariance.set(j, i, value);
    }
    given.set(i, 0, level + shared(one.km, one.higher));
  }
  const levels = new Array<number>(12);
  for (let month = 0; month < 12; month++) {
    const rate = rates[seasonOf(month + 1, isSouthern)] as number;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const { higher, poleward: degrees } = neighbours[i] as Neighbour;
      const value = at(i, month) + rate * higher + poleward * degrees;
      given.set(i, month + 1, value);
      sum += value;
    }
    levels[month] = sum / n;
    for (let i = 0; i < n; i++) given.set(i, month + 1, given.get(i, month + 1) - sum / n);
  }

  const solved = new CholeskyDecomposition(covariance).solve(given);
  const product = (column: number, other: number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += given.get(i, column) * solved.get(i, other);
    return sum;
  };
  const variance = sill ** 2 + nugget ** 2 + level - product(0, 0);
  const degrees = PRIOR_WEIGHT + n - 1;
  return levels.map((mean, month) => {
    const size = (PRIOR_WEIGHT + product(month + 1, month + 1)) / degrees;
    return { likely: mean + product(0, month + 1), half: studentT95(degrees) * Math.sqrt(variance * size) };
  });
};
