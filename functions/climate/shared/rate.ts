import { quantity, type WrittenOption } from "../../define";
import { byWord } from "../../twin";

/**
 * Rates by name, K per km. "standard" is the standard atmosphere's; "high", "low" and "median" are the annual medians
 * observed for daily highs, lows and mid-points outside the tropics (6.7, 4.4, 5.4), rounded to half a kelvin; "dry" is the dry adiabat
 * g/cp = 9.76, "approximately 9.8".
 */
export const RATES = { standard: 6.5, high: 6.5, low: 4.5, median: 5.5, dry: 9.8 } as const;
export type RateWord = keyof typeof RATES;
const RATE_WORDS = Object.keys(RATES) as RateWord[];

/** A rate in K per km, or its word. Inversions are negative; the plausibility limits are half as much again as dry air's. */
export const rateParameter = quantity("kelvinPerKilometre", "Fall of temperature with elevation", [-15, 15], {
  words: RATE_WORDS,
});

/** K per km. */
export const perKilometre = (rate: number | RateWord): number => (typeof rate === "number" ? rate : RATES[rate]);

/** What is added to a temperature on the way from one elevation to another, in K; elevations in m. */
export const correction = (from: number, to: number, rate: number): number => (-rate * (to - from)) / 1000;

/** K per km in a formula: a number, or the figure of its word. */
export const rateText = (rate: WrittenOption<string>): string =>
  rate(String(RATES.standard), (own) =>
    byWord(own, [...RATE_WORDS.map((word) => [word, String(RATES[word])] as const), ["", own]]),
  );
