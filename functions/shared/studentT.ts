import { NINETY_PERCENT as z } from "./theilSen";

/** What is divided by the powers of the degrees of freedom, from 0. */
const TERMS = [
  0,
  (z ** 3 + z) / 4,
  (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
  (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
  (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92_160,
];

/**
 * Student's t, below which 95 % lie: nine in ten within it either way. Exact for one and two degrees of freedom; from three
 * up by the expansion of Fisher and Cornish (1960; Abramowitz & Stegun 26.7.5), as published codes have it, DATAPAC's TPPF
 * of the NIST for one, which is 0.0013 off at three and less above.
 */
export const studentT95 = (freedom: number): number => {
  if (freedom === 1) return Math.tan(0.45 * Math.PI);
  if (freedom === 2) return 0.9 * Math.sqrt(2 / (1 - 0.9 ** 2));
  return TERMS.reduce((sum, term, power) => sum + term / freedom ** power, z);
};

/** The same in a formula. */
export const studentText = (freedom: string): string =>
  `IF(${freedom}=1,${studentT95(1)},IF(${freedom}=2,${studentT95(2)},` +
  `${TERMS.map((term, power) => (power === 0 ? String(term + z) : `${term}/${freedom}^${power}`)).join("+")}))`;
