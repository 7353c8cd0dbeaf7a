import { columns, defineFunction, logged, moment, quantity } from "../define";
import { Problem } from "../problem";
import { dayOf, READING } from "./shared/readingRange";
import { seriesOf, type Series } from "./shared/series";

/** Days without a reading that are taken to be as the straight line between the days around them: a weekly log is whole. */
const LONGEST_GAP = 7;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The plain mean of each day's readings, in the order of the days. */
const dailyMeans = ({ times, temperatures }: Series): readonly (readonly [day: number, mean: number])[] => {
  const days = new Map<number, number[]>();
  for (const [i, time] of times.entries()) {
    const day = dayOf(time);
    const readings = days.get(day);
    if (readings) readings.push(temperatures[i] as number);
    else days.set(day, [temperatures[i] as number]);
  }
  return [...days].map(([day, readings]) => [day, mean(readings)]);
};

/**
 * Seven days whose mean is not above the threshold make a week, whether or not they follow one another. Up to seven days
 * without a reading lie on the straight line between the days around them; of a longer gap nothing is assumed: its days
 * are not counted, and it ends a spell.
 */
export const weeksBelow = defineFunction({
  name: "WEEKSBELOW",
  summary:
    "Weeks that a log spent at or below a temperature, in all and without a break, and the days it says nothing of.",
  parameters: {
    dates: logged(moment("Days or times of the readings, in any order")),
    temperatures: logged(quantity("celsius", "Temperature at each; what cannot be read is skipped", READING)),
    threshold: quantity("celsius", "Temperature to stay at or below, by the mean of each day", READING),
  },
  result: columns(
    { name: "Weeks", unit: "none", about: "Days at or below it, divided by seven" },
    { name: "Longest", unit: "none", about: "Longest unbroken time at or below it, in weeks" },
    { name: "Days not read", unit: "day", about: "Days in gaps of more than seven, of which nothing is assumed" },
  ),
  sources: ["definition", "bonaGalloLicht"],
  cautions: ["probePlace", "skippedReadings", "coldKills"],
  examples: [
    {
      given: [[["2026-11-16"], ["2026-11-23"], ["2026-11-30"], ["2026-12-07"]], [[4], [4], [4], [8]], 4],
      gives: [[2.142857, 2.142857, 0]],
      within: 1e-6,
    },
  ],
  calculate({ dates, temperatures, threshold }) {
    const series = seriesOf(dates, temperatures);
    if (series instanceof Problem) return series;
    let [below, spell, longest, unread] = [0, 0, 0, 0];
    const count = (temperature: number): void => {
      if (temperature > threshold) {
        spell = 0;
        return;
      }
      below++;
      spell++;
      longest = Math.max(longest, spell);
    };
    let before: readonly [day: number, mean: number] | undefined;
    for (const [day, value] of dailyMeans(series)) {
      if (before) {
        const missing = day - before[0] - 1;
        if (missing > LONGEST_GAP) {
          unread += missing;
          spell = 0;
        } else {
          for (let i = 1; i <= missing; i++) count(before[1] + ((value - before[1]) * i) / (missing + 1));
        }
      }
      count(value);
      before = [day, value];
    }
    return [below / 7, longest / 7, unread];
  },
});
