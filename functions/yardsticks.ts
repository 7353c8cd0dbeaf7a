import register from "./yardsticks.json";

/**
 * What one function was held against in the last run of the tests, outside of the project: so many values compared, and
 * how far off the worst was; or, where `figure` says what was measured, what it came to.
 */
export interface Yardstick {
  readonly of: string;
  readonly against: string;
  readonly values: number;
  readonly unit: string;
  readonly worst: number;
  readonly within?: number;
  readonly figure?: string;
  readonly least?: number;
  readonly most?: number;
}

/** Written by `npm run generate` from what the tests recorded. Only the reference reads it. */
export const yardsticks: readonly Yardstick[] = register;

export const yardsticksOf = (name: string): readonly Yardstick[] => yardsticks.filter(({ of }) => of === name);

/**
 * Who or what stands behind the comparisons: a standard, a paper, a data set, a program that others wrote. What is compared
 * in several ways with one of them counts once; the first that a comparison names is its own. Where a number of winters,
 * mountains or clutches was drawn at random, nothing outside stands behind it.
 */
const OUTSIDE = [
  "Andrews & Pough",
  "Astronomy Engine",
  "Astropy",
  "Barry & Chorley",
  "CLIMAT",
  "ChickWeight",
  "Costanzo",
  "Formula.js",
  "GeographicLib",
  "IAPWS",
  "ICAO",
  "Iverson",
  "NIST StRD",
  "NOAA",
  "PsychroLib",
  "PyEphem",
  "Python",
  "R smatr",
  "RFC 5545",
  "RepDevo",
  "Sen 1968",
  "SquamataBase",
  "Stubblefield",
  "SunCalc",
  "TrenchR",
  "U.S. Climate Reference Network",
  "XML Schema",
  "arquero",
  "finite differences",
  "kgc",
  "NumPy",
  "pandas",
  "SciPy",
] as const;

/** What is drawn at random is held against what is known of it, and against nothing outside. */
export const isSimulated = ({ against }: Pick<Yardstick, "against">): boolean => /\bsimulated\b/.test(against);

/** Which of them a comparison names first. */
export const sourceOf = ({ against }: Pick<Yardstick, "against">): string | undefined => {
  const words = against.toLowerCase();
  const at = (name: string): number => words.indexOf(name.toLowerCase());
  return OUTSIDE.filter((name) => at(name) >= 0).sort((one, other) => at(one) - at(other))[0];
};

/** The values of a register; those of which several figures are told (how far off, how many inside) count once. */
const valuesOf = (register: readonly Yardstick[]): number => {
  const most = new Map<string, number>();
  for (const { of, against, values } of register) {
    const key = `${of} ${against}`;
    most.set(key, Math.max(values, most.get(key) ?? 0));
  }
  return [...most.values()].reduce((sum, values) => sum + values, 0);
};

/** How many functions, values and sources a register speaks of, and how many of the values are drawn at random. */
export const counted = (register: readonly Yardstick[]) => {
  const outside = register.filter((one) => !isSimulated(one));
  return {
    functions: new Set(register.map(({ of }) => of)).size,
    values: valuesOf(register),
    simulated: valuesOf(register.filter(isSimulated)),
    sources: new Set(outside.map(sourceOf)).size,
  };
};

/** The sources outside of the project, or the words for a function that rests on its own definition. */
export const heldAgainst = (name: string): string =>
  [...new Set(yardsticksOf(name).map(({ against }) => against))].join("; ") || "its own definition";
