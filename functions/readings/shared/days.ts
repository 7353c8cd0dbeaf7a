import { dayOf, HALF_SECOND, isGap, LONGEST_GAP } from "./readingRange";
import type { Series } from "./series";

/** What the readings of a calendar day say. */
export interface Day {
  readonly day: number;
  readonly high: number;
  readonly low: number;
  /** Weighted by time over what is covered of the day; undefined where that is less than FEWEST_HOURS. */
  readonly mean: number | undefined;
  readonly hoursCovered: number;
  readonly readings: number;
}

/** Hours of a day that readings must cover before it has a mean: the hours of a night must not be missing. Practice. */
export const FEWEST_HOURS = 20;
/** The same in days, less what times lose that were worked out from one another. */
const FEWEST_COVERED = FEWEST_HOURS / 24 - HALF_SECOND;

/** The part of the line from reading `i - 1` to reading `i` that lies before or after midnight: its days and its area. */
const cutAt = (
  { times, temperatures }: Series,
  i: number,
  midnight: number,
  part: "before" | "after",
  longestGap: number,
): { readonly length: number; readonly area: number } => {
  const length = (times[i] as number) - (times[i - 1] as number);
  // Before the first reading and after the last there is no line.
  if (Number.isNaN(length) || isGap(length, longestGap)) return { length: 0, area: 0 };
  const [from, to] = [temperatures[i - 1] as number, temperatures[i] as number];
  const before = Math.min(midnight - (times[i - 1] as number), length);
  const atMidnight = from + ((to - from) * before) / length;
  return part === "before"
    ? { length: before, area: ((from + atMidnight) / 2) * before }
    : { length: length - before, area: ((atMidnight + to) / 2) * (length - before) };
};

/** The day that begins with reading `first`, and the reading with which the next one begins. */
const dayFrom = (series: Series, first: number, longestGap: number): { readonly day: Day; readonly next: number } => {
  const { times, temperatures } = series;
  const day = dayOf(times[first] as number);
  const end = day + 1 - HALF_SECOND;
  let { length: covered, area } = cutAt(series, first, day, "after", longestGap);
  let time = times[first] as number;
  let temperature = temperatures[first] as number;
  let [high, low] = [temperature, temperature];
  let next = first + 1;
  for (; next < times.length && (times[next] as number) < end; next++) {
    const before = temperature;
    const length = (times[next] as number) - time;
    time = times[next] as number;
    temperature = temperatures[next] as number;
    if (temperature > high) high = temperature;
    if (temperature < low) low = temperature;
    if (isGap(length, longestGap)) continue;
    area += ((before + temperature) / 2) * length;
    covered += length;
  }
  const last = cutAt(series, next, day + 1, "before", longestGap);
  covered += last.length;
  area += last.area;
  const readings = next - first;
  const mean = covered >= FEWEST_COVERED ? area / covered : undefined;
  return { day: { day, high, low, mean, hoursCovered: covered * 24, readings }, next };
};

/**
 * The days that have a reading, in order. The mean is the area under straight lines from reading to reading, divided by
 * the time that they cover; a line that crosses midnight is cut there. Over a gap there is no line, and a day that is not
 * covered for 20 hours has no mean: eight readings within an hour say nothing of its night.
 */
export const daysOf = (series: Series, longestGap = LONGEST_GAP): readonly Day[] => {
  const days: Day[] = [];
  for (let first = 0; first < series.times.length;) {
    const { day, next } = dayFrom(series, first, longestGap);
    days.push(day);
    first = next;
  }
  return days;
};
