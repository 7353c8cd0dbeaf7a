import {
  dateOrders,
  decimalWords,
  orderWords,
  separators,
  separatorWords,
  type DateOrder,
  type Decimal,
  type Form,
  type Separator,
} from "./form";
import { firstRows, isEmptyRow, piecesOf } from "./pieces";
import { readFigure } from "./readFigure";
import { isDate, isYearFirst, readMoment } from "./readMoment";

export type Rows = readonly (readonly string[])[];

/** So many rows tell the columns; the date order is looked for through the whole file if it has to be. */
export const SAMPLE = 200;

/** The share of lines that are cut into the commonest number of cells, two at least. */
const evenness = (rows: Rows): number => {
  const counts = new Map<number, number>();
  for (const { length } of rows) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  return Math.max(0, ...counts.values()) / Math.max(1, rows.length);
};

/** The sign that cuts the lines most evenly, the first of several: between other cells, a comma is a decimal mark. */
export const guessSeparator = (text: string): Separator => {
  const shares = separators.map((separator) =>
    evenness(firstRows(text, separator, SAMPLE).filter((row) => !isEmptyRow(row))),
  );
  const most = Math.max(...shares);
  return most === 0 ? "," : (separators[shares.indexOf(most)] ?? ",");
};

/** The mark that more figures with decimals have. */
export const guessDecimal = (rows: Rows, columns?: readonly number[]): Decimal => {
  let commas = 0;
  for (const row of rows) {
    for (const [column, cell] of row.entries()) {
      if (columns && !columns.includes(column)) continue;
      if (/\d,\d/.test(cell) && readFigure(cell, ",") !== undefined) commas++;
      if (/\d\.\d/.test(cell) && readFigure(cell, ".") !== undefined) commas--;
    }
  }
  return commas > 0 ? "," : ".";
};

/**
 * The order in which the most dates are days of the calendar, and whether it is the only one: `ambiguous` is a date that
 * could be another day. The file is read until one order is ahead; where day and month are both 12 or less throughout,
 * none ever is.
 */
export const guessDateOrder = (
  text: string,
  separator: Separator,
  column?: number,
): { readonly order: DateOrder; readonly ambiguous?: string } => {
  const valid = dateOrders.map((order) => ({ order, count: 0 }));
  let dated: string | undefined;
  for (const { rows } of piecesOf(text, separator)) {
    for (const row of rows) {
      for (const cell of column === undefined ? row : [row[column] ?? ""]) {
        // What is the same in every order, as a bare serial number is, says nothing and needs no question.
        if (!isDate(cell) || isYearFirst(cell)) continue;
        for (const tally of valid) {
          if (readMoment(cell, tally.order) === undefined) continue;
          tally.count++;
          dated ??= cell.trim();
        }
      }
    }
    valid.sort((a, b) => b.count - a.count);
    if ((valid[0]?.count ?? 0) > (valid[1]?.count ?? 0)) break;
  }
  const [first, second] = valid as [(typeof valid)[number], (typeof valid)[number]];
  return { order: first.order, ...(first.count > second.count || dated === undefined ? {} : { ambiguous: dated }) };
};

/** What stands in a text of rows and cells, as far as it can be told without asking. */
export interface FormGuess {
  readonly form: Form;
  /** A date of the text that could be one of two days: the keeper has to say in which order the dates stand. */
  readonly ambiguous?: string;
}

/** Why nothing is read before the keeper has said something. */
export const ambiguousWords = (ambiguous: string): string =>
  `Say first in which order the dates stand: '${ambiguous}' can be read in more than one way.`;

/** Without the sign or the example behind it: "semicolon ;" is a choice of a list. */
const named = (words: string): string => words.replace(/ .*$/, "");

/** A form in a line, for the keeper to agree with. */
export const formWords = ({ separator, decimal, dateOrder }: Form): string =>
  `${named(separatorWords[separator])} between cells, decimal ${named(decimalWords[decimal])}, dates as ${orderWords[dateOrder]}`;

/** What the keeper has already said is taken as said, and the rest guessed around it. */
export const guessForm = (text: string, said: Partial<Form> = {}): FormGuess => {
  const separator = said.separator ?? guessSeparator(text);
  const rows = firstRows(text, separator, SAMPLE).filter((row) => !isEmptyRow(row));
  const { order, ambiguous } = guessDateOrder(text, separator);
  return {
    form: {
      separator,
      decimal: said.decimal ?? guessDecimal(rows),
      dateOrder: said.dateOrder ?? order,
    },
    ...(ambiguous === undefined || said.dateOrder ? {} : { ambiguous }),
  };
};
