import Papa from "papaparse";
import { serialOfIso } from "../../functions/dates";
import type { Value } from "../../functions/define";

/** A cell of a CSV file. A date is its serial number, told apart because it is to be shown as one. */
export type CsvCell = Value | null | { readonly date: number };

// A leading zero is a label's, not a number's: "007" stays text.
const NUMBER = /^[-+]?(0|[1-9]\d*)?(\.\d+)?(e[-+]?\d+)?$/i;

const cellOf = (raw: string): CsvCell => {
  const text = raw.trim();
  if (text === "") return null;
  if (/\d/.test(text) && NUMBER.test(text) && Number.isFinite(Number(text))) return Number(text);
  const date = serialOfIso(text);
  if (date !== undefined) return { date };
  if (/^true$/i.test(text)) return true;
  if (/^false$/i.test(text)) return false;
  // Everything else is text, a "=" or "@" at its start too.
  return raw;
};

/** The sign between the cells: the commonest of the first line, and not the comma where it may be a decimal sign. */
const delimiterOf = (text: string): string => {
  const [first = ""] = text
    .replace(/"[^"]*"/g, "")
    .trimStart()
    .split(/[\r\n]/, 1);
  const count = (sign: string): number => first.split(sign).length;
  return ["\t", ";", ","].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
};

/** The cells of a CSV text, whatever its delimiter: plain numbers, ISO dates, TRUE and FALSE are read, the rest is text. */
export const readCsv = (text: string): CsvCell[][] => {
  const plain = text.replace(/^\uFEFF/, "");
  return Papa.parse<string[]>(plain, { delimiter: delimiterOf(plain) })
    .data.map((row) => row.map(cellOf))
    .filter((row, i, rows) => i < rows.length - 1 || row.some((cell) => cell !== null));
};
