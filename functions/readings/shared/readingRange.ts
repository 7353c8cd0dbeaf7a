import { logged, moment, optional, quantity } from "../../define";

/**
 * °C. Wide on purpose: a probe under a lamp may show more than any weather, and a reading that is out of limits is
 * skipped, which must not happen to a true one. Figures that loggers write for a lost probe mostly lie outside.
 */
export const READING = [-100, 150] as const;

/** What a logger wrote, row by row; NaN where a cell is blank or cannot be read. */
export const readingTimes = logged(moment("Time of each reading, in any order"));
export const readingTemperatures = logged(quantity("celsius", "Temperature at that time", READING));

/** The same for answers that have no room to count what was skipped: they say who does. */
export const uncountedTimes = logged(
  moment("Time of each reading, in any order; what cannot be read is skipped, and DAYTABLE counts it"),
);
export const uncountedTemperatures = logged(
  quantity("celsius", "Temperature at that time; what cannot be read is skipped, and DAYTABLE counts it", READING),
);

/** Minutes between two readings up to which they are joined by a straight line. Common practice, no source. */
export const LONGEST_GAP = 180;

export const joinedUpTo = optional(
  quantity("minute", "Minutes between two readings up to which they are joined", [0, 100_000]),
  `${LONGEST_GAP}`,
);

/** Half a second, in days: times that were worked out from one another are off by less, and mean the full minute. */
export const HALF_SECOND = 0.5 / 86_400;

/** Whether so many days between two readings are a gap, of which nothing is assumed. */
export const isGap = (days: number, longestMinutes: number): boolean => days > longestMinutes / 1440 + HALF_SECOND;

/** The day that a time belongs to. */
export const dayOf = (time: number): number => Math.floor(time + HALF_SECOND);
