import type { Validation } from "../sheet";

type Without<T, K extends keyof T> = T extends unknown ? Omit<T, K> : never;

/** What an input takes, before it is known where it stands. */
export type Takes = Without<Validation, "range">;

const unitAfter = (unit: string): string => unit && ` ${unit}`;

/** Dates that a keeper's records may hold: anything else is a slip of the keyboard. */
const FIRST_RECORD = "1950-01-01";
const LAST_RECORD = "2100-12-31";

export const number = ([least, most]: readonly [number, number], unit = ""): Takes => ({
  kind: "number",
  least,
  most,
  message: `Give a number from ${least} to ${most}${unitAfter(unit)}, or leave it blank.`,
});

export const whole = ([least, most]: readonly [number, number], unit = ""): Takes => ({
  kind: "whole",
  least,
  most,
  message: `Give a whole number from ${least} to ${most}${unitAfter(unit)}, or leave it blank.`,
});

export const date: Takes = {
  kind: "date",
  least: FIRST_RECORD,
  most: LAST_RECORD,
  message: "Give a date, such as 2026-10-05, or leave it blank.",
};

export const oneOf = (...words: readonly string[]): Takes => ({
  kind: "list",
  words,
  message: `Choose ${words.slice(0, -1).join(", ")} or ${words.at(-1)}, or leave it blank.`,
});

/** Limits that several sheets share, wide: they keep slips out, the functions judge. */
export const MASS = [0.1, 20_000] as const;
export const LATITUDE = [-90, 90] as const;
export const LONGITUDE = [-180, 180] as const;
export const HUMIDITY = [1, 100] as const;
export const DAYS = [0, 366] as const;
