/** What a test file does with no number changed: which numbers it works with, and how long it takes. */
export interface Known {
  readonly test: string;
  /** Milliseconds until its tests stand. */
  readonly opening: number;
  /** The numbers that it meets until then. */
  readonly atFirst: readonly number[];
  readonly tests: readonly { readonly took: number; readonly met: readonly number[]; readonly passes: boolean }[];
}

/** Tests of a file to try, by their places in it. */
export interface Trial {
  readonly test: string;
  readonly places: readonly number[];
}

export type Job =
  | { readonly kind: "know"; readonly test: string }
  | { readonly kind: "try"; readonly which: number; readonly trials: readonly Trial[] };

/** `by`: the test that found it; undefined where none has. `worked`: milliseconds of work that it took. */
export type Outcome = { readonly known: Known } | { readonly by: string | undefined; readonly worked: number };
