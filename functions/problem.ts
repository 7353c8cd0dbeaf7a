/**
 * A cell that has no answer, with the words that the user reads on it.
 * Only these two codes exist because only they carry a message to the user: `#N/A` for something that is not there
 * (a blank, nothing found), `#VALUE!` for something that cannot be used.
 */
export class Problem {
  constructor(
    readonly code: "#N/A" | "#VALUE!",
    readonly message: string,
  ) {}
}

/** Something is missing: a blank, or nothing to be found. */
export const notAvailable = (message: string): Problem => new Problem("#N/A", message);

/** Something was given that cannot be used. */
export const notUsable = (message: string): Problem => new Problem("#VALUE!", message);
