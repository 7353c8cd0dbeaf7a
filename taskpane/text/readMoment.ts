import { FIRST_DAY, LAST_DAY } from "../../functions/dates";
import type { DateOrder } from "./form";

const CLOCK = String.raw`(\d{1,2})[:.](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?(?:\s*([ap])\.?m\.?)?(?:\s*(?:Z|[+-]\d{2}:?\d{2}))?`;
const MOMENT = new RegExp(String.raw`^\s*(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?:(?:T|,?\s+)${CLOCK})?\s*$`, "i");
const CLOCK_ALONE = new RegExp(String.raw`^\s*${CLOCK}\s*$`, "i");
/** A date as a spreadsheet counts it, from 1954 to 2119: what it writes when a date cell has lost its format. */
const SERIAL = /^\s*([2-7]\d{4}(?:[.,]\d+)?)\s*$/;

/** 1 January 1970, the day from which the built-in dates count. */
const SERIAL_1970 = 25_569;

const secondsOf = (hour: string, minute: string, second = "0", half?: string): number | undefined => {
  let hours = Number(hour);
  if (half !== undefined && (hours < 1 || hours > 12)) return undefined;
  if (half !== undefined) hours = (hours % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  if (hours > 23 || Number(minute) > 59 || Number(second) > 59) return undefined;
  return hours * 3600 + Number(minute) * 60 + Number(second);
};

/**
 * The day of a date whose three figures stand in that order; undefined where there is no such day. A year of four figures
 * at the front is followed by month and day everywhere.
 */
const dayOf = (figures: readonly [string, string, string], wanted: DateOrder): number | undefined => {
  const order = figures[0].length === 4 ? "ymd" : wanted;
  const [yearText, month, day] = [
    figures[order.indexOf("y")],
    figures[order.indexOf("m")],
    figures[order.indexOf("d")],
  ] as [string, string, string];
  if ((yearText.length !== 4 && yearText.length !== 2) || month.length > 2 || day.length > 2) return undefined;
  const year = yearText.length === 2 ? 2000 + Number(yearText) : Number(yearText); // no logger is older than that
  const date = new Date(Date.UTC(year, Number(month) - 1, Number(day)));
  if (date.getUTCFullYear() !== year || date.getUTCMonth() !== Number(month) - 1 || date.getUTCDate() !== Number(day))
    return undefined;
  const serial = date.getTime() / 86_400_000 + SERIAL_1970;
  return serial >= FIRST_DAY && serial <= LAST_DAY ? serial : undefined;
};

/**
 * A date with its time of day as a serial number; undefined where the text is none. The clock is kept as it was written:
 * a time zone behind it moves nothing. `clock` is the time of day where it stands in a cell of its own.
 */
export const readMoment = (text: string, order: DateOrder, clock?: string): number | undefined => {
  const found = MOMENT.exec(text);
  if (!found) {
    const serial = clock === undefined ? SERIAL.exec(text)?.[1] : undefined;
    return serial === undefined ? undefined : Number(serial.replace(",", "."));
  }
  const day = dayOf([found[1] as string, found[2] as string, found[3] as string], order);
  if (day === undefined) return undefined;
  const time = clock === undefined ? found.slice(4) : CLOCK_ALONE.exec(clock)?.slice(1);
  if (time === undefined) return undefined;
  const [hour, minute, second, half] = time;
  if (hour === undefined || minute === undefined) return day;
  const seconds = secondsOf(hour, minute, second, half);
  return seconds === undefined ? undefined : day + seconds / 86_400;
};

/** Whether the text is a time of day and nothing else. */
export const isClock = (text: string): boolean => /[:.]/.test(text) && CLOCK_ALONE.test(text) && /:|[ap]/i.test(text);

/** Whether the text is three figures as a date has them, with or without a time of day. */
export const isDate = (text: string): boolean => MOMENT.test(text);

/** Whether the text is a date that means the same day in every order, were it a day. */
export const isYearFirst = (text: string): boolean => MOMENT.exec(text)?.[1]?.length === 4;

/** Whether the text is a date without a time of day. */
export const isBareDate = (text: string): boolean => {
  const found = MOMENT.exec(text);
  return found !== null && found[4] === undefined;
};
