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

/** A problem with one entry of a list, of which the boundary may know better where it stands. */
export class EntryProblem extends Problem {
  constructor(
    code: Problem["code"],
    /** The parameter, and the entry's number in it, from 0. */
    readonly list: string,
    readonly entry: number,
    /** What follows the place: "is blank". */
    readonly words: string,
  ) {
    super(code, `row ${entry + 1} of ${list} ${words}`);
  }
}

/** Something is missing: a blank, or nothing to be found. */
export const notAvailable = (message: string): Problem => new Problem("#N/A", message);

/** Something was given that cannot be used. */
export const notUsable = (message: string): Problem => new Problem("#VALUE!", message);
