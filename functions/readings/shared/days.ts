import { dayOf, HALF_SECOND, isGap, LONGEST_GAP } from "./readingRange";
import type { Series } from "./series";

/** What the readings of a calendar day say. */
export interface Day {
  readonly day: number;
  readonly high: number;
  readonly low: number;
  /** Weighed by time over what is covered of the day. */
  readonly mean: number;
  readonly readings: number;
}

/** Fewer moments than these lie more than LONGEST_GAP apart even if they are spread evenly over the day. */
const FEWEST_TO_WEIGH = 1440 / LONGEST_GAP;

/** The part of the line from reading `i - 1` to reading `i` that lies before or after midnight: its days and its area. */
const cutAt = (
  { times, temperatures }: Series,
  i: number,
  midnight: number,
  part: "before" | "after",
): { readonly length: number; readonly area: number } => {
  const length = (times[i] as number) - (times[i - 1] as number);
  // Before the first reading and after the last there is no line.
  if (Number.isNaN(length) || isGap(length, LONGEST_GAP)) return { length: 0, area: 0 };
  const [from, to] = [temperatures[i - 1] as number, temperatures[i] as number];
  const before = Math.min(midnight - (times[i - 1] as number), length);
  const atMidnight = from + ((to - from) * before) / length;
  return part === "before"
    ? { length: before, area: ((from + atMidnight) / 2) * before }
    : { length: length - before, area: ((atMidnight + to) / 2) * (length - before) };
};

/** The day that begins with reading `first`, and the reading with which the next one begins. */
const dayFrom = (series: Series, first: number): { readonly day: Day; readonly next: number } => {
  const { times, temperatures } = series;
  const day = dayOf(times[first] as number);
  const end = day + 1 - HALF_SECOND;
  let { length: covered, area } = cutAt(series, first, day, "after");
  let time = times[first] as number;
  let temperature = temperatures[first] as number;
  let [high, low, sum] = [temperature, temperature, temperature];
  let moments = 1;
  let next = first + 1;
  for (; next < times.length && (times[next] as number) < end; next++) {
    const before = temperature;
    const length = (times[next] as number) - time;
    time = times[next] as number;
    temperature = temperatures[next] as number;
    if (temperature > high) high = temperature;
    if (temperature < low) low = temperature;
    sum += temperature;
    if (length > 0) moments++;
    if (isGap(length, LONGEST_GAP)) continue;
    area += ((before + temperature) / 2) * length;
    covered += length;
  }
  const last = cutAt(series, next, day + 1, "before");
  covered += last.length;
  area += last.area;
  const readings = next - first;
  const mean = moments >= FEWEST_TO_WEIGH && covered > 0 ? area / covered : sum / readings;
  return { day: { day, high, low, mean, readings }, next };
};

/**
 * The days that have a reading, in order. The mean is the area under straight lines from reading to reading, divided by
 * the time that they cover; a line that crosses midnight is cut there. Over a gap there is no line. On a day with fewer
 * than 8 readings, one a day included, nothing need be joined, and the mean is the plain mean of the readings.
 */
export const daysOf = (series: Series): readonly Day[] => {
  const days: Day[] = [];
  for (let first = 0; first < series.times.length;) {
    const { day, next } = dayFrom(series, first);
    days.push(day);
    first = next;
  }
  return days;
};
