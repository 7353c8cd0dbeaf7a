import { predict, type Model } from "../../functions/network/kriging";
import { quantiles } from "../tables/studentT.json";

/**
 * The prediction written out again, apart from the project's own: the covariance of the neighbours, solved by plain
 * elimination, and the exact quantile of Student's t. The spreads of the prior are those that were agreed: 30 K for the
 * level, 0.2 K a degree for the slopes, as much as four stations.
 */
const LEVEL = 30;
const SLOPE = 0.2;
const PRIOR = 4;
const T9 = quantiles.find(([degrees]) => degrees === 9)?.[1] ?? NaN;

const solve = (matrix: readonly (readonly number[])[], right: readonly number[]): number[] => {
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  for (const [i, pivot] of rows.entries()) {
    for (const [j, row] of rows.entries()) {
      if (j === i) continue;
      const share = (row[i] as number) / (pivot[i] as number);
      for (let k = 0; k <= rows.length; k++) row[k] = (row[k] as number) - share * (pivot[k] as number);
    }
  }
  return rows.map((row, i) => (row[rows.length] as number) / (row[i] as number));
};
const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * (other[i] as number), 0);

const MODEL: Model = {
  sill: 2.5,
  range: 60,
  rise: 0.8,
  nugget: 0.7,
  rates: [4, 6, 7, 5],
  rateSpread: 1.3,
  poleward: 0.6,
};
/** Places on a plane, km; the place that is asked for lies at 0, 0. */
const spots = [
  { x: 12, y: 5, higher: 0.9, poleward: 0.3, eastward: 0.4, value: (month: number) => 9 + month },
  { x: -30, y: 22, higher: -0.4, poleward: -0.8, eastward: -1.9, value: (month: number) => 17 - month },
  { x: 8, y: -41, higher: 0.1, poleward: 2.1, eastward: 0.2, value: (month: number) => 13 + (month % 5) },
  { x: 55, y: 60, higher: 1.6, poleward: -0.2, eastward: 3.3, value: (month: number) => 4 + 2 * (month % 3) },
  { x: -70, y: -15, higher: -0.9, poleward: 0.9, eastward: -2.7, value: (month: number) => 20 - (month % 7) },
  { x: 3, y: 90, higher: 0.5, poleward: 1.4, eastward: 0.9, value: (month: number) => 11 + (month % 2) },
] as const;
const apart = (i: number, j: number): number =>
  Math.hypot((spots[i]?.x ?? 0) - (spots[j]?.x ?? 0), (spots[i]?.y ?? 0) - (spots[j]?.y ?? 0));
const kmOf = (i: number): number => Math.hypot(spots[i]?.x ?? 0, spots[i]?.y ?? 0);

/** December to February first, on the northern hemisphere. */
const SEASON = [0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 0];

const bySchoolbook = (month: number, isSouthern: boolean) => {
  const shared = (km: number, higher: number): number =>
    MODEL.sill * MODEL.sill * Math.exp(-Math.sqrt((km / MODEL.range) ** 2 + (higher / MODEL.rise) ** 2));
  const covariance = spots.map((one, i) =>
    spots.map((other, j) => {
      const alone = i === j ? MODEL.nugget * MODEL.nugget : 0;
      const slopes =
        MODEL.rateSpread * MODEL.rateSpread * one.higher * other.higher +
        SLOPE * SLOPE * (one.poleward * other.poleward + one.eastward * other.eastward);
      return LEVEL * LEVEL + shared(apart(i, j), one.higher - other.higher) + alone + slopes;
    }),
  );
  const rate = MODEL.rates[((SEASON[month] as number) + (isSouthern ? 2 : 0)) % 4] as number;
  const level = spots.map(({ value, higher, poleward }) => value(month) + rate * higher + MODEL.poleward * poleward);
  const mean = level.reduce((sum, one) => sum + one, 0) / level.length;
  const off = level.map((one) => one - mean);
  const toPlace = spots.map(({ higher }, i) => LEVEL * LEVEL + shared(kmOf(i), higher));
  const weights = solve(covariance, toPlace);
  const variance = LEVEL * LEVEL + MODEL.sill * MODEL.sill + MODEL.nugget * MODEL.nugget - dot(weights, toPlace);
  const size = (PRIOR + dot(off, solve(covariance, off))) / (PRIOR + spots.length - 1);
  return { likely: mean + dot(weights, off), half: T9 * Math.sqrt(variance * size) };
};

test.each([false, true])("the year of a place as the schoolbook has it; south of the equator: %s", (isSouthern) => {
  const neighbours = spots.map(({ higher, poleward, eastward }, i) => ({ km: kmOf(i), higher, poleward, eastward }));
  const year = predict(MODEL, neighbours, isSouthern, apart, (i, month) => spots[i]?.value(month) ?? NaN);
  expect(year).toHaveLength(12);
  for (const [month, { likely, half }] of year.entries()) {
    const wanted = bySchoolbook(month, isSouthern);
    expect(likely).toBeCloseTo(wanted.likely, 6);
    expect(half / wanted.half).toBeCloseTo(1, 4); // the expansion of t is 2e-5 off at nine degrees
  }
});
