import { PLAIN_NUMBER } from "./shared/plainNumber";

/** The vocabulary of native twins: pieces of formula text that the definitions write their `twin` with. */

/** What every spreadsheet answers #VALUE! to. */
export const REFUSED = 'VALUE("?")';
/** What every spreadsheet answers #N/A to. */
export const MISSING = "NA()";

/** #VALUE! where the condition holds. */
export const refusedIf = (condition: string, otherwise: string): string => `IF(${condition},${REFUSED},${otherwise})`;

/** A word's figure: the first of the pairs whose word stands in the cell, else the last figure. */
export const byWord = (word: string, pairs: readonly (readonly [word: string, text: string])[]): string => {
  const known = PLAIN_NUMBER.test(word) ? word : literalText(word);
  const last = pairs.at(-1) as readonly [string, string];
  if (known !== undefined) return (pairs.find(([one]) => one === known) ?? last)[1];
  return pairs.slice(0, -1).reduceRight((rest, [one, text]) => `IF(${word}=${quoted(one)},${text},${rest})`, last[1]);
};

/** The value at `share` of the way from one figure to another, and never outside the two. */
export const between = (from: string, to: string, share: string): string =>
  `MEDIAN(${from},${to},${from}*(1-${share})+${to}*${share})`;

/** Text as a formula writes it. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

const literalText = (text: string): string | undefined =>
  /^"(?:[^"]|"")*"$/.test(text) ? text.slice(1, -1).replaceAll('""', '"').trim().toLowerCase() : undefined;

/** A number as every spreadsheet reads and keeps it, to 15 digits; a negative one in brackets, as one piece. */
export const numeral = (value: number): string => {
  const text = String(Number(value.toPrecision(15))).toUpperCase();
  return value < 0 ? `(${text})` : text;
};
