import fc from "fast-check";

/** A plan in practice: a fortnight of clearing, six weeks down, twelve weeks cold, six weeks up, a week to settle. */
export const practicePlan = [
  ["Last meal", "2026-09-21"],
  ["Cooling starts", "2026-10-05"],
  ["Into the cold", "2026-11-16"],
  ["Warming starts", "2027-02-08"],
  ["Warm again", "2027-03-22"],
  ["First meal", "2027-03-29"],
];

/** Any six dates in order, some of them perhaps the same day. */
export const anyPlan = fc
  .tuple(
    fc.integer({ min: 46_000, max: 46_800 }),
    fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 5, maxLength: 5 }),
  )
  .map(([start, lengths]) => lengths.reduce((dates, days) => [...dates, (dates.at(-1) as number) + days], [start]));

export const insideFastOf = (dates: readonly number[], day: number): boolean =>
  day > (dates[0] as number) && day < (dates[5] as number);
