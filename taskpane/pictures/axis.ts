import { dateOf } from "../../functions/dates";

/** What lies between two marks of an axis of days: days, or from the month on whole months. */
const DAY_STEPS = [1, 2, 7, 14] as const;
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120] as const;
export const DAY = 86_400_000; // ms

/**
 * The days that an axis marks, at most so many. An axis left to itself marks hours between two days, and of a summer
 * in a narrow picture a single month.
 */
export const marked = (from: Date, to: Date, most: number): Date[] => {
  const days = (to.getTime() - from.getTime()) / DAY;
  const step = DAY_STEPS.find((one) => days / one < most);
  if (step !== undefined && (days < 60 || step <= 7)) {
    return Array.from({ length: Math.floor(days / step) + 1 }, (_, i) => new Date(from.getTime() + i * step * DAY));
  }
  const first = 12 * from.getUTCFullYear() + from.getUTCMonth() + (from.getUTCDate() > 1 ? 1 : 0);
  const last = 12 * to.getUTCFullYear() + to.getUTCMonth();
  const by = MONTH_STEPS.find((one) => (last - first) / one < most) ?? 240;
  return Array.from(
    { length: Math.max(0, Math.floor((last - first) / by) + 1) },
    (_, i) => new Date(Date.UTC(1970, first + i * by - 12 * 1970)),
  );
};

/** A moment of the axis; `dateOf` drops the time of day. */
export const momentOf = (serial: number): Date => new Date(dateOf(serial).getTime() + (serial % 1) * DAY);

export const shifted = (x: Date | number, by: number): Date | number =>
  x instanceof Date ? new Date(x.getTime() + by) : x + by;
