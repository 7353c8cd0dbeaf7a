import { UTCDate } from "@date-fns/utc";
import { differenceInCalendarDays } from "date-fns";

/**
 * Dates are serial numbers of the 1900 system, as spreadsheets count them: 1 March 1900 is 61, and a time of day is a
 * fraction. Days are counted in UTC, so that no time zone and no daylight saving can move one.
 * Serials below 61 are refused everywhere: that system counts a 29 February 1900 that never was.
 */
export const FIRST_DAY = 61;
/** 31 December 9999, the last day that a spreadsheet knows. */
export const LAST_DAY = 2_958_465;

const DAY_ZERO = new UTCDate(1899, 11, 30);

/** The serial number of a UTC date, whole days. */
export const serialOf = (date: Date): number => differenceInCalendarDays(date, DAY_ZERO);

/** The UTC date of a serial number; a time of day is dropped. */
export const dateOf = (serial: number): UTCDate => new UTCDate(1899, 11, 30 + Math.floor(serial));

/** The serial number of a calendar day; `month` counts from 1. */
export const serial = (year: number, month: number, day: number): number => serialOf(new UTCDate(year, month - 1, day));

/** "2026-11-02", or undefined for text that is no ISO 8601 calendar date, or no day of the calendar. */
export const serialOfIso = (text: string): number | undefined => {
  const found = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?)?$/.exec(text);
  if (!found) return undefined;
  const [year, month, day, hour, minute, second] = found
    .slice(1)
    .map((part: string | undefined) => Number(part ?? 0)) as [number, number, number, number, number, number];
  // The built-in date reads a year of a logger's minutes as text in a tenth of the time, and knows no time zone here either.
  const at = new Date(Date.UTC(year, month - 1, day));
  // A month that is none turns the year, a day that is none turns the day.
  if (at.getUTCFullYear() !== year || at.getUTCDate() !== day) return undefined;
  if (hour > 23 || minute > 59 || second > 59) return undefined;
  return (at.getTime() - DAY_ZERO.getTime()) / 86_400_000 + (hour * 3600 + minute * 60 + second) / 86_400;
};

/** "2026-11-02", and "2026-11-02T14:30:00" where there is a time of day, to the second. */
export const isoOf = (value: number): string => {
  const text = new UTCDate(1899, 11, 30, 0, 0, Math.round(value * 86_400)).toISOString().slice(0, 19);
  return text.replace("T00:00:00", "");
};
