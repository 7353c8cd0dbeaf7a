import type { Validation } from "../sheet";

/** What an input takes, before it is known where it stands and in what unit. */
export type Takes =
  | { readonly kind: "number" | "whole"; readonly least: number; readonly most: number; readonly unit?: string }
  | { readonly kind: "date"; readonly least: string; readonly most: string }
  | { readonly kind: "list"; readonly words: readonly string[] }
  | { readonly kind: "cells"; readonly cells: string; readonly words: string };

/** Dates that a keeper's records may hold: anything else is a slip of the keyboard. */
const FIRST_RECORD = "1950-01-01";
const LAST_RECORD = "2100-12-31";

export const number = ([least, most]: readonly [number, number], unit?: string): Takes => ({
  kind: "number",
  least,
  most,
  ...(unit ? { unit } : {}),
});

export const whole = ([least, most]: readonly [number, number], unit?: string): Takes => ({
  kind: "whole",
  least,
  most,
  ...(unit ? { unit } : {}),
});

export const date: Takes = { kind: "date", least: FIRST_RECORD, most: LAST_RECORD };

/** What stands in some cells of the sheet; `words` say what that is. */
export const cellsOf = (cells: string, words: string): Takes => ({ kind: "cells", cells, words });

export const oneOf = (...words: readonly string[]): Takes => ({ kind: "list", words });

/** What a keeper reads who types something else. */
const message = (takes: Takes): string => {
  switch (takes.kind) {
    case "date":
      return "Give a date, such as 2026-10-05, or leave it blank.";
    case "cells":
      return `Choose ${takes.words}, or leave it blank.`;
    case "list":
      return `Choose ${takes.words.slice(0, -1).join(", ")} or ${takes.words.at(-1)}, or leave it blank.`;
    default: {
      const { kind, least, most, unit } = takes;
      const kindInWords = kind === "whole" ? "a whole number" : "a number";
      return `Give ${kindInWords} from ${least} to ${most}${unit ? ` ${unit}` : ""}, or leave it blank.`;
    }
  }
};

/** The same for the cells of a range. */
export const validationOf = (range: string, takes: Takes): Validation => {
  if (takes.kind === "cells") return { range, kind: "cells", cells: takes.cells, message: message(takes) };
  if (takes.kind !== "number" && takes.kind !== "whole") return { range, ...takes, message: message(takes) };
  const { kind, least, most, unit } = takes;
  return { range, kind, least, most, message: message(takes), ...(unit ? { unit } : {}) };
};

/** Limits that several sheets share, wide: they keep slips out, the functions judge. */
export const MASS = [0.1, 20_000] as const;
export const LATITUDE = [-90, 90] as const;
export const LONGITUDE = [-180, 180] as const;
export const HUMIDITY = [1, 100] as const;
export const DAYS = [0, 366] as const;
