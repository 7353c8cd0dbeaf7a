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

/** The sources outside of the project, or the words for a function that rests on its own definition. */
export const heldAgainst = (name: string): string =>
  [...new Set(yardsticksOf(name).map(({ against }) => against))].join("; ") || "its own definition";
