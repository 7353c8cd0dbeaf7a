import Papa from "papaparse";
import type { Separator } from "./form";

/** About so many letters are parsed at a time, so that the pane stays awake. */
const PIECE = 256 * 1024;

/** Rows of cells, and how much of the text has been read with them, 0..1. */
export interface Piece {
  readonly rows: readonly (readonly string[])[];
  readonly share: number;
}

/** The rows of a text, a piece at a time. Cells are as they stand in the file, without their quotation marks. */
export function* piecesOf(text: string, separator: Separator, size = PIECE): Generator<Piece> {
  const unmarked = text.replace(/^\uFEFF/, "");
  const whole = unmarked.includes("\r") ? unmarked.replace(/\r\n?/g, "\n") : unmarked;
  const parser = new Papa.Parser({ delimiter: separator, newline: "\n" });
  let length = size;
  for (let at = 0; at < whole.length;) {
    const isLast = at + length >= whole.length;
    // The last row of a piece may go on in the next one, so it waits for it; a row longer than a piece gets a longer one.
    const { data, meta } = parser.parse(whole.slice(at, at + length), 0, !isLast) as Papa.ParseResult<string[]>;
    if (meta.cursor === 0 && !isLast) {
      length *= 2;
      continue;
    }
    at = isLast ? whole.length : at + meta.cursor;
    length = size;
    yield { rows: data, share: at / whole.length };
  }
}

/** Whether a line holds nothing at all. */
export const isEmptyRow = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === "");

/** The first rows of a text. */
export const firstRows = (text: string, separator: Separator, count: number): readonly (readonly string[])[] => {
  const rows: (readonly string[])[] = [];
  for (const piece of piecesOf(text.slice(0, 4 * PIECE), separator)) {
    for (const row of piece.rows) {
      if (rows.length === count) return rows;
      rows.push(row);
    }
  }
  return rows;
};
