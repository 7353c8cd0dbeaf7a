import { addressOf, areaOf, columnLetters } from "../sheets/shared/address";
import { areaOfBlock } from "../sheets/shared/part";
import type { Chart, Sheet } from "../sheets/sheet";
import { plainSeries } from "./plainSeries";

/** Cells from which a spreadsheet program's own chart is drawn, in place of those of the sheet. */
export interface Plotted {
  readonly at: string;
  readonly formulas: readonly (readonly string[])[];
}

/** Free columns between the sheet and what its charts are drawn from. */
const APART = 2;

/**
 * Such charts plot any text as 0, an answer that looks empty too: a day without a reading would be one of 0 °C. Of each
 * range that a chart of the sheet shows, a copy far to the right that says #N/A in place of text, by the range's address.
 * The programs leave #N/A out.
 */
export const plottedBeside = (charts: readonly Chart[], lastColumn: number): ReadonlyMap<string, Plotted> => {
  const right = Math.max(lastColumn, ...charts.map(({ area }) => areaOf(area).right));
  const ranges = new Set(charts.flatMap((chart) => plainSeries(chart).map(({ values }) => values)));
  let next = right + 1 + APART;
  return new Map(
    [...ranges].map((range) => {
      const { top, left, bottom, right: last } = areaOf(range);
      const [first, width] = [next, last - left + 1];
      next += width;
      const at = addressOf({ top, bottom, left: first, right: first + width - 1 });
      const formulas = Array.from({ length: bottom - top + 1 }, (_, i) =>
        Array.from({ length: width }, (_, j) => {
          const cell = `${columnLetters(left + j)}${top + i}`;
          return `=IF(ISNUMBER(${cell}),${cell},NA())`;
        }),
      );
      return [range, { at, formulas }] as const;
    }),
  );
};

/**
 * The dates along a picture in a file, a copy in that column, by row. LibreOffice takes a row without a date for one of 1899,
 * which would leave the days of a log a line at the right edge: such a row repeats the last date, and has no figure there.
 */
export const datesBeside = (along: string, column: number): Plotted => {
  const { top, left, bottom } = areaOf(along);
  const letters = columnLetters(left);
  const all = `${letters}$${top}:${letters}$${bottom}`;
  const formulas = Array.from({ length: bottom - top + 1 }, (_, i) => [
    `=IF(ISNUMBER(${letters}${top + i}),${letters}${top + i},MAX(${all}))`,
  ]);
  return { at: addressOf({ top, bottom, left: column, right: column }), formulas };
};

/** The same of a sheet as it is drawn anew. */
export const plottedOf = ({ charts, widths, blocks }: Sheet): ReadonlyMap<string, Plotted> =>
  plottedBeside(charts, Math.max(widths.length, ...blocks.map((block) => areaOfBlock(block).right)));

/** Whether a formula is one of these: no part of the keeper's sheet. */
export const isPlotted = (formula: string): boolean =>
  /^=IF\(ISNUMBER\((\$?[A-Z]{1,3}\$?\d+)\),\1,(NA\(\)|MAX\(([A-Z]{1,3})\$\d+:\3\$\d+\))\)$/i.test(formula);

/** The same formula for another row, from 1. */
export const plottedOn = (formula: string, row: number): string =>
  formula.replace(/\b([A-Z]{1,3})\d+/gi, (_, letters: string) => `${letters}${row}`);
