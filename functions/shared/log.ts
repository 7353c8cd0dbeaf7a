import { EntryProblem, type Problem, notUsable } from "../problem";

/** The filled rows of a log, as two lists of the same length. */
export interface Log {
  readonly dates: readonly number[];
  readonly values: readonly number[];
}

/**
 * The rows of a log that hold both a date and a figure, in the order in which they stand. A date without a figure is a
 * row not yet filled, or a weighing that was missed: it is left out. A figure without a date cannot be placed and is
 * refused with its row, and so are lists of different lengths, whose rows do not belong together.
 */
export const filledRows = (
  dates: readonly (number | undefined)[],
  values: readonly (number | undefined)[],
  valuesName: string,
): Log | Problem => {
  if (dates.length !== values.length) {
    return notUsable(`dates holds ${dates.length} cells and ${valuesName} ${values.length}: give as many of each`);
  }
  const filled: { dates: number[]; values: number[] } = { dates: [], values: [] };
  for (const [i, value] of values.entries()) {
    if (value === undefined) continue;
    const date = dates[i];
    if (date === undefined) return new EntryProblem("#N/A", "dates", i, "is blank");
    filled.dates.push(date);
    filled.values.push(value);
  }
  return filled;
};
