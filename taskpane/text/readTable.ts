import type { Form, Manner } from "./form";
import { misfitWords } from "./misfit";
import { isEmptyRow, piecesOf } from "./pieces";
import { readFigure } from "./readFigure";
import { isDate, readMoment } from "./readMoment";

/** A cell of a text. A date is its serial number, told apart because it is to be shown as one. */
export type TextCell = number | string | boolean | null | { readonly date: number };

/** Digits with a leading zero are a label and no number: "007" stays text. */
const LABEL = /^[-+]?0\d/;
const UNIT = /[°CF]\s*$/i;

const cellOf = (raw: string, { dateOrder, decimal }: Manner): TextCell => {
  const text = raw.trim();
  if (text === "") return null;
  const figure = LABEL.test(text) || UNIT.test(text) ? undefined : readFigure(text, decimal);
  if (figure !== undefined && Number.isFinite(figure)) return figure;
  const date = isDate(text) ? readMoment(text, dateOrder) : undefined;
  if (date !== undefined) return { date };
  if (/^true$/i.test(text)) return true;
  if (/^false$/i.test(text)) return false;
  // Everything else is text, a "=" or "@" at its start too.
  return raw;
};

/** What of a text looks like a date or a figure and stays text, because it can be none in that form. */
export interface Misfit {
  /** Counted from 1, as they stand in the file. */
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export interface TextTable {
  readonly cells: readonly (readonly TextCell[])[];
  readonly misfits: readonly Misfit[];
}

/** The cells of a text: plain figures, dates, TRUE and FALSE are read, the rest is text. */
export const readTable = (text: string, form: Form): TextTable => {
  const cells: TextCell[][] = [];
  const misfits: Misfit[] = [];
  let last = 0;
  for (const { rows } of piecesOf(text, form.separator)) {
    for (const row of rows) {
      const line = row.map((raw, column) => {
        const cell = cellOf(raw, form);
        if (typeof cell === "string" && misfitWords(cell, form) !== undefined)
          misfits.push({ row: cells.length + 1, column: column + 1, text: cell.trim() });
        return cell;
      });
      cells.push(line);
      if (!isEmptyRow(row)) last = cells.length;
    }
  }
  return { cells: cells.slice(0, last), misfits };
};

/** So many are told one by one. */
const TOLD = 3;

/** What stays text although it looks like a date or a figure, in a sentence, with the first places. */
export const misfitsInWords = (misfits: readonly Misfit[]): readonly string[] => {
  if (misfits.length === 0) return [];
  const places = misfits.slice(0, TOLD).map(({ row, column, text }) => `row ${row}, column ${column}: '${text}'`);
  const more = misfits.length > TOLD ? ` and ${misfits.length - TOLD} more` : "";
  const stay = misfits.length === 1 ? "1 cell that looks" : `${misfits.length} cells that look`;
  const text = misfits.length === 1 ? "stays text" : "stay text";
  return [`${stay} like a date or a figure ${text} (${places.join("; ")}${more})`];
};
