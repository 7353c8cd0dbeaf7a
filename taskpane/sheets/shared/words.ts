import type { Decimals } from "./quantities";
import { decimalsOf } from "./systems";

/** Formulas that put figures into words. TEXT is not used: its codes change with the language of the spreadsheet. */

/** A date as 2026-10-05, inside a formula. */
export const isoText = (cell: string): string =>
  `YEAR(${cell})&"-"&RIGHT("0"&MONTH(${cell}),2)&"-"&RIGHT("0"&DAY(${cell}),2)`;

/** A figure rounded to so many decimals, inside a formula; of a unit whose figures are smaller in the other system to more there. */
export const rounded = (value: string, decimals: Decimals = 1, unit?: string): string =>
  `ROUND(${value},${unit === undefined ? decimals : decimalsOf(decimals, unit)})`;

/**
 * Empty while a cell is blank or shows nothing, the formula once all hold something. Errors of the cells pass through.
 * OR stands around a single cell too: it makes one answer of it, where some engines would make a column.
 */
export const once = (cells: readonly string[], formula: string): string =>
  `=IF(OR(${cells.map((cell) => `${cell}=""`).join(",")}),"",${formula})`;

/** Empty while fewer than `count` cells of a range of inputs are filled, whatever they hold; the formula after that. */
export const onceFilled = (range: string, count: number, formula: string): string =>
  `=IF(COUNTA(${range})<${count},"",${formula})`;

/** The last figure of a column, or the cell of another column beside it, inside a formula; an error where there is none. */
export const lastFigure = (range: string, ...beside: readonly string[]): string =>
  `LOOKUP(9E+300,${[range, ...beside].join(",")})`;

/**
 * A range with blanks inside, as an argument: its blanks as empty text. Old builds of a spreadsheet hand a function 0
 * for a blank cell of a range, and 0 g would be weighed.
 */
export const blanksKept = (range: string): string => `IF(${range}="","",${range})`;
