import fc from "fast-check";
import { serial } from "../../../functions/dates";

/** Lengths of a winter in days: clear, cool, cold, warm, settle. */
export type Lengths = readonly [number, number, number, number, number];

/** Cooling and warming take a day or more; the rest may be nothing. */
export const anyLengths: fc.Arbitrary<Lengths> = fc.tuple(
  fc.integer({ min: 0, max: 90 }),
  fc.integer({ min: 1, max: 90 }),
  fc.integer({ min: 0, max: 200 }),
  fc.integer({ min: 1, max: 90 }),
  fc.integer({ min: 0, max: 60 }),
);

/** Twenty-five autumns, so that plans run over new years and leap days. */
export const anyDay = fc.integer({ min: serial(2019, 7, 1), max: serial(2044, 6, 30) });

/** The six dates, worked out here on its own. */
export const datesFrom = (lastMeal: number, lengths: Lengths): number[] => {
  const dates = [lastMeal];
  for (const length of lengths) dates.push((dates[dates.length - 1] as number) + length);
  return dates;
};

/** Two weeks, six weeks, twelve weeks, six weeks, one week, over the new year and 29 February 2028. */
export const PRACTICE: Lengths = [14, 42, 84, 42, 7];
export const practicePlan = datesFrom(serial(2027, 9, 20), PRACTICE);
