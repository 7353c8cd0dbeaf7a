import { curveThrough } from "../../../functions/climate/shared/monthlyCurve";
import { dateOf, serial } from "../../../functions/dates";
import { DAYS, isFigure, STARTS, type Daily } from "./drawnYear";

const NEW_YEAR = serial(2026, 1, 1); // of a common year; the curve of a leap year differs by less than a line's width
const NONE: Daily = Array<number>(DAYS).fill(NaN);
/** Days between two figures over which nothing is drawn. */
const LONGEST = 31;

/** Each day of the curve through twelve means: the curve of ONDATE and COOLSPELL. */
export const dailyOf = (means: readonly number[]): Daily => {
  if (means.length !== 12 || !means.every(isFigure)) return NONE;
  const curve = curveThrough(means);
  return NONE.map((_, day) => curve(NEW_YEAR + day));
};

/** The day of the round year. */
export const dayOfYear = (day: number): number => {
  const date = dateOf(day);
  const month = date.getMonth();
  return Math.min((STARTS[month] as number) + date.getDate(), STARTS[month + 1] as number) - 1;
};

/** Each row with the days until the next; the last lasts as long as the one before it. */
const rowsOf = (days: readonly number[], values: readonly number[]) => {
  const rows = days
    .map((day, i) => ({ day, value: values[i] ?? NaN }))
    .filter(({ day }) => isFigure(day))
    .sort((one, other) => one.day - other.day);
  const [first, last] = [rows[0]?.day ?? 0, rows.at(-1)?.day ?? 0];
  // Fifty-two weeks lack a day or two of a year.
  const step = last - (rows.at(-2)?.day ?? last - 1);
  const end = last + step >= first + DAYS - 2 ? first + DAYS : last + step;
  return rows.map(({ day, value }, i) => {
    const next = rows[i + 1];
    const lasts = (next?.day ?? end) - day;
    return { day, value, next: next?.value, lasts };
  });
};

/** Figures of single days, on the straight between two of them; a gap where they lie more than a month apart. */
export const betweenDays = (days: readonly number[], figures: readonly number[]): Daily => {
  const daily = [...NONE];
  for (const { day, value, next = value, lasts } of rowsOf(days, figures)) {
    if (lasts > LONGEST || !isFigure(value)) continue;
    for (let i = 0; i < lasts; i++) {
      daily[dayOfYear(day + i)] = isFigure(next) ? value + ((next - value) * i) / lasts : value;
    }
  }
  return daily;
};
