import { LAST_DAY, isoOf } from "../dates";
import { type Answer, column, columns, date, defineFunction, optional, quantity } from "../define";
import { Problem, notAvailable, notUsable } from "../problem";
import { figure, figures } from "../shared/figure";
import { filledRows, type Log } from "../shared/log";
import {
  EGGS_DEADLY,
  EGGS_LEAST,
  EGGS_MOST,
  baseDays,
  baseTemperature,
  developmentPerDay,
  spreadOf,
  threshold,
  type Base,
} from "./shared/development";
import { laidTooLate } from "./shared/laidTooLate";

/** Days without a reading that may be bridged. */
const LONGEST_GAP = 7;

const outside = (temperature: number): boolean => temperature < EGGS_LEAST || temperature > EGGS_MOST;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const dateOf = (laid: number, hatching: number): Answer => {
  const day = Math.round(laid + hatching);
  return day > LAST_DAY ? notUsable(laidTooLate(laid)) : day;
};

/** A day of the eggs: its mean, and every temperature of it that is known. */
interface Day {
  readonly mean: number;
  readonly temperatures: readonly number[];
  readonly hottest: number;
}

const dayOf = (temperatures: readonly number[], highest = -Infinity): Day => ({
  mean: mean(temperatures),
  temperatures: swung(temperatures, highest),
  hottest: Math.max(highest, ...temperatures),
});

/** Steps of a half wave from the coldest to the warmest of a day: enough for a thousandth of a day's growth. */
const STEPS = 24;

/** The readings of a day; one mean whose high is known is swung around it as a wave, as far down as up. */
const swung = (temperatures: readonly number[], highest: number): readonly number[] => {
  const [middle, second] = temperatures;
  if (middle === undefined || second !== undefined || highest <= middle) return temperatures;
  return Array.from(
    { length: STEPS },
    (_, i) => middle + (highest - middle) * Math.sin(Math.PI * ((i + 0.5) / STEPS - 0.5)),
  );
};

/** The readings of each day, by day, and its highest where highs are given beside them. */
const byDay = ({ dates, values }: Log, highs: readonly (number | undefined)[]): Map<number, Day> => {
  const readings = new Map<number, number[]>();
  const highest = new Map<number, number>();
  for (const [i, day] of dates.entries()) {
    readings.set(day, [...(readings.get(day) ?? []), values[i] as number]);
    highest.set(day, Math.max(highest.get(day) ?? -Infinity, highs[i] ?? -Infinity));
  }
  return new Map([...readings].map(([day, temperatures]) => [day, dayOf(temperatures, highest.get(day))]));
};

/**
 * Every day from `first` to the last reading. Days between two readings lie on the straight line between their means, and
 * days before the first reading are taken as that one. At a gap that is too long to bridge it stops and gives the gap's
 * first and last day.
 */
const everyDay = (read: Map<number, Day>, first: number): { days: Day[]; gap?: readonly [number, number] } => {
  const days: Day[] = [];
  let [day, before] = [first - 1, undefined as number | undefined];
  for (const [next, value] of [...read].filter(([date]) => date >= first).sort(([a], [b]) => a - b)) {
    if (next - day - 1 > LONGEST_GAP) return { days, gap: [day + 1, next - 1] };
    const from = before ?? value.mean;
    for (let step = 1; step < next - day; step++) {
      days.push(dayOf([from + ((value.mean - from) * step) / (next - day)]));
    }
    days.push(value);
    [day, before] = [next, value.mean];
  }
  return { days };
};

/** How far the eggs have come by the end of the last day, and after how many days they hatch if its week goes on. */
const forecast = (days: readonly Day[], base: Base): { readonly developed: number; readonly hatching: number } => {
  const steps = days.map(({ temperatures }) => mean(temperatures.map((one) => developmentPerDay(one, base))));
  let developed = 0;
  for (const [i, step] of steps.entries()) {
    if (developed + step >= 1) return { developed: 1, hatching: i + (1 - developed) / step };
    developed += step;
  }
  return { developed, hatching: days.length + (1 - developed) / mean(steps.slice(-7)) };
};

/**
 * Counts what each day since laying has added, as the mean of what its readings would add: an hour above 31 °C adds no more
 * than one at 31, so that a day from 24 to 36 °C is no day at 30. Where the readings are means, the highs beside them show
 * how far the day swung. After a reading above 34 °C there is a share, but no date. Soonest and latest are the ends of what
 * other thresholds and quicker or slower clutches would make of it, as in INCUBATIONDAYS.
 *
 * Rows may stand in any order, a day may stand several times, a row without a temperature is left out, and readings from before laying are not counted.
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
    highs: optional(
      column(quantity("celsius", "Highest temperature of each day, where the temperatures are means", [-10, 60]), {
        blank: "keep",
      }),
      "the temperatures themselves",
    ),
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
    { name: "Soonest", unit: "date", about: "Low end of what other thresholds and clutches would make of the date" },
    { name: "Latest", unit: "date", about: "High end" },
    { name: "Hottest", unit: "celsius", about: "Highest temperature since laying; above 34 °C the eggs may be dead" },
  ),
  sources: ["duJi", "eggThresholds", "raynal", "practice"],
  cautions: ["hatchingSuccess", "hotEggs", "eggSpecies", "dailySwing", "lateEggs"],
  examples: [
    {
      given: [
        "2026-06-20",
        [["2026-06-20"], ["2026-06-21"], ["2026-06-22"], ["2026-06-23"], ["2026-06-24"], ["2026-06-25"]],
        [[26], [26], [26], [26], [26], [26]],
        60,
      ],
      gives: [[0.1, "2026-08-19", 0, "2026-08-16", "2026-08-22", 26]],
      within: 1e-9,
    },
  ],
  calculate({ laid, dates, temperatures, highs = [], units, ...base }) {
    const log = filledRows(dates, temperatures, "temperatures");
    if (log instanceof Problem) return log;
    if (highs.length > 0 && highs.length !== dates.length) {
      return notUsable(`dates holds ${dates.length} cells and highs ${highs.length}: give as many of each`);
    }
    const { days, gap } = everyDay(
      byDay(
        log,
        highs.filter((_, i) => temperatures[i] !== undefined),
      ),
      laid,
    );
    const found = forecast(days, base);
    const isHatched = found.developed === 1;
    if (gap && !isHatched) {
      const [from, to] = gap.map(isoOf);
      return notUsable(`dates has no reading from ${from} to ${to}: give one at least every ${LONGEST_GAP + 1} days`);
    }
    if (days.length === 0) return notAvailable(`dates has no reading since ${isoOf(laid)}, when the eggs were laid`);

    const lived = isHatched ? days.slice(0, Math.ceil(found.hatching)) : days;
    const daysOutside = lived.filter((day) => outside(day.mean)).length;
    const hottest = Math.max(...lived.map((day) => day.hottest));
    const week = mean(days.slice(-7).map((day) => day.mean));
    const [average, least, most] = figures([week, EGGS_LEAST, EGGS_MOST], "celsius", units);
    const deadly = lived.findIndex((day) => day.hottest > EGGS_DEADLY);
    const noDate =
      deadly >= 0
        ? notUsable(
            `temperatures reach ${figure(lived[deadly]?.hottest as number, "celsius", units)} on ${isoOf(laid + deadly)}: above ${figure(EGGS_DEADLY, "celsius", units)} eggs may be dead, ask a reptile vet`,
          )
        : !isHatched && outside(week)
          ? notUsable(`temperatures of the last week average ${average}: a date can be given from ${least} to ${most}`)
          : undefined;
    const ends = spreadOf(base).map((one) => forecast(days, one).hatching);
    const [likely, soonest, latest] = [found.hatching, Math.min(...ends), Math.max(...ends)].map(
      (hatching) => noDate ?? dateOf(laid, hatching),
    ) as [Answer, Answer, Answer];
    return [found.developed, likely, daysOutside, soonest, latest, hottest];
  },
});
