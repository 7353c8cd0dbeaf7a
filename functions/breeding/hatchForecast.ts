import { LAST_DAY, isoOf } from "../dates";
import { column, columns, date, defineFunction, quantity } from "../define";
import { Problem, notAvailable, notUsable } from "../problem";
import { figures } from "../shared/figure";
import { filledRows, type Log } from "../shared/log";
import { EGGS_LEAST, EGGS_MOST, baseDays, baseTemperature, developmentPerDay, threshold } from "./shared/development";
import { laidTooLate } from "./shared/laidTooLate";

/** Days without a reading that may be bridged. */
const LONGEST_GAP = 7;

const outside = (temperature: number): boolean => temperature < EGGS_LEAST || temperature > EGGS_MOST;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The mean of each day's readings, by day. */
const dailyMeans = ({ dates, values }: Log): Map<number, number> => {
  const days = new Map<number, number[]>();
  for (const [i, day] of dates.entries()) {
    const readings = days.get(day);
    if (readings) readings.push(values[i] as number);
    else days.set(day, [values[i] as number]);
  }
  return new Map([...days].map(([day, readings]) => [day, mean(readings)]));
};

/**
 * The temperature of every day from `first` to the last reading. Days between two readings lie on the straight line
 * between them, and days before the first reading are taken as that one. At a gap that is too long to bridge it stops
 * and gives the gap's first and last day.
 */
const everyDay = (
  means: Map<number, number>,
  first: number,
): { temperatures: number[]; gap?: readonly [number, number] } => {
  const temperatures: number[] = [];
  let [day, temperature] = [first - 1, undefined as number | undefined];
  for (const [next, value] of [...means].filter(([read]) => read >= first).sort(([a], [b]) => a - b)) {
    if (next - day - 1 > LONGEST_GAP) return { temperatures, gap: [day + 1, next - 1] };
    const from = temperature ?? value;
    for (let step = 1; step <= next - day; step++) temperatures.push(from + ((value - from) * step) / (next - day));
    [day, temperature] = [next, value];
  }
  return { temperatures };
};

/**
 * Counts what each day since laying has added, at the mean of its readings. Rows may stand in any order, a day may
 * stand several times, a row without a temperature is left out, and readings from before laying are not counted.
 * Up to seven days without a reading are bridged by a straight line; more are refused with their dates. The last day read
 * counts as a whole one, even where the morning has been its only reading.
 */
export const hatchForecast = defineFunction({
  name: "HATCHFORECAST",
  summary: "How far a clutch has come and when it should hatch, from the incubator's readings so far.",
  parameters: {
    laid: date("Day on which the eggs were laid"),
    dates: column(date("Days of the readings, in any order; the last counts as a whole day, even with one reading"), {
      blank: "keep",
    }),
    temperatures: column(quantity("celsius", "Temperature of the eggs on each; a blank is left out", [-10, 60]), {
      blank: "keep",
    }),
    baseDays,
    baseTemperature,
    threshold,
  },
  forEach: "clutch",
  result: columns(
    {
      name: "Developed",
      unit: "share",
      about: "Share of the development done by the end of the last day read; at most 1",
    },
    { name: "Hatching", unit: "date", about: "Day to expect hatchlings if the mean of the last seven days goes on" },
    {
      name: "Days outside",
      unit: "day",
      about: "Days so far with a mean outside 23-31 °C, where the date is less sure",
    },
  ),
  sources: ["duJi", "eggThresholds"],
  cautions: ["hatchingSuccess", "eggSpecies", "lateEggs"],
  examples: [
    {
      given: [
        "2026-06-20",
        [["2026-06-20"], ["2026-06-21"], ["2026-06-22"], ["2026-06-23"], ["2026-06-24"], ["2026-06-25"]],
        [[26], [26], [26], [26], [26], [26]],
        60,
      ],
      gives: [[0.1, "2026-08-19", 0]],
      within: 1e-9,
    },
  ],
  calculate({ laid, dates, temperatures, ...base }) {
    const log = filledRows(dates, temperatures, "temperatures");
    if (log instanceof Problem) return log;
    const { temperatures: days, gap } = everyDay(dailyMeans(log), laid);

    let developed = 0;
    let daysOutside = 0;
    for (const [i, temperature] of days.entries()) {
      const step = developmentPerDay(temperature, base);
      if (outside(temperature)) daysOutside++;
      if (developed + step >= 1) return [1, Math.round(laid + i + (1 - developed) / step), daysOutside];
      developed += step;
    }
    if (gap) {
      const [from, to] = gap.map(isoOf);
      return notUsable(`dates has no reading from ${from} to ${to}: give one at least every ${LONGEST_GAP + 1} days`);
    }
    if (days.length === 0) return notAvailable(`dates has no reading since ${isoOf(laid)}, when the eggs were laid`);

    const week = mean(days.slice(-7));
    const [average, least, most] = figures([week, EGGS_LEAST, EGGS_MOST], "celsius");
    const hatching = Math.round(laid + days.length + (1 - developed) / developmentPerDay(week, base));
    const expected = outside(week)
      ? notUsable(`temperatures of the last week average ${average}: a date can be given from ${least} to ${most}`)
      : hatching > LAST_DAY
        ? notUsable(laidTooLate(laid))
        : hatching;
    return [developed, expected, daysOutside];
  },
});
