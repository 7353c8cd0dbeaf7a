import { columnLetters } from "../../taskpane/sheets/shared/address";
import type { Argument } from "./argument";
import type { CellsAt } from "./cell";

/** " (C14)": the entry's cell as the sheet names it. A list may stand in a row or a column, rows of several cells below one another. */
const cellOf = ({ cells, row, column }: CellsAt, entry: number): string => {
  if (cells.length === 1) return ` (${columnLetters(column + entry + 1)}${row + 1})`;
  const isWide = (cells[0]?.length ?? 1) > 1;
  return isWide ? ` (row ${row + entry + 1} of the sheet)` : ` (${columnLetters(column + 1)}${row + entry + 1})`;
};

/** Where an entry of a list stands, for a message: "row 13 of masses (C14)", "month 7 of temperatures". */
export const placeOf = ({ name, parameter, rows, at }: Argument, entry: number): string => {
  const own = rows?.[entry] ?? entry;
  return `${parameter.kind === "months" ? "month" : "row"} ${own + 1} of ${name}${at ? cellOf(at, own) : ""}`;
};
