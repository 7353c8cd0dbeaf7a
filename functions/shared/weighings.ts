import { isoOf } from "../dates";
import { Problem, notAvailable, notUsable } from "../problem";
import { filledRows } from "./log";
import { severalAnimals } from "./severalAnimals";
import { MOST_POINTS, theilSen, type Line } from "./theilSen";

/** Three or more weighings, oldest first, and the Theil-Sen line through them; its x counts days from the first. */
export interface Weighings {
  readonly dates: readonly number[];
  readonly masses: readonly number[];
  readonly line: Line;
}

/**
 * The weighings of a log, whose rows may stand in any order; a row without a mass is left out. Two weighings of one day
 * both count, though the pair that they make has no slope. Where no animal is named, figures of one day that lie far
 * apart are taken for those of several.
 */
export const weighingsOf = (
  dates: readonly (number | undefined)[],
  masses: readonly (number | undefined)[],
  named?: string,
): Weighings | Problem => {
  const log = filledRows(dates, masses, "masses");
  if (log instanceof Problem) return log;
  const weighings = log.values
    .map((mass, i) => ({ date: log.dates[i] as number, mass }))
    .sort((a, b) => a.date - b.date);
  const [oldest] = weighings;
  if (!oldest || weighings.length < 3) {
    return notAvailable(`masses holds ${weighings.length} with a date: give three or more`);
  }
  if (weighings.length > MOST_POINTS) {
    return notUsable(`masses holds ${weighings.length} figures: give at most ${MOST_POINTS}`);
  }
  const sorted = { dates: weighings.map(({ date }) => date), masses: weighings.map(({ mass }) => mass) };
  const several = named === undefined ? severalAnimals(sorted.dates, sorted.masses, "masses", "gram") : undefined;
  if (several) return several;
  // Days are counted from the first weighing: with serial numbers the height of the line would lose digits.
  const line = theilSen(
    sorted.dates.map((date) => date - oldest.date),
    sorted.masses,
  );
  return line
    ? { ...sorted, line }
    : notUsable(`dates holds ${isoOf(oldest.date)} throughout: give weighings of several days`);
};
