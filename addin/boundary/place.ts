import type { Argument } from "./argument";

/** Where an entry of a list stands, for a message: "row 14 of masses", "month 7 of temperatures". */
export const placeOf = ({ name, parameter, rows }: Argument, entry: number): string =>
  `${parameter.kind === "months" ? "month" : "row"} ${(rows?.[entry] ?? entry) + 1} of ${name}`;
