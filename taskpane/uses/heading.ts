import type { AnyDefinition } from "../../functions/define";
import { symbol, type Unit } from "../../functions/units";

/** Names of arguments that would be no heading. */
const HEADINGS: Readonly<Record<string, string>> = {
  body: "Body mass",
  item: "Item mass",
  km: "Distance",
  laid: "Laid on",
  last: "Last meal",
  months: "Mean",
  now: "Mass now",
  paired: "Paired on",
  plan: "Winter plan",
  prey: "Prey mass",
  range: "Value",
  winters: "Winters",
};

/** "Mass, g"; the unit only where the words do not end with it. */
export const withUnit = (words: string, unit: Unit): string => {
  const sign = symbol(unit);
  return sign && !words.toLowerCase().endsWith(sign) ? `${words}, ${sign}` : words;
};

const single = (word: string): string =>
  /(ss|ch)es$/.test(word) ? word.slice(0, -2) : /[^s]s$/.test(word) ? word.slice(0, -1) : word;

const wordsOf = (name: string): readonly string[] =>
  name
    .replace(/\d+$/, "")
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .split(" ");

const capital = (words: readonly string[]): string => words.join(" ").replace(/^./, (letter) => letter.toUpperCase());

/** The label of a cell for an argument: "Station elevation, m" of `stationElevation`. */
export const labelOf = (name: string, unit: Unit): string => withUnit(HEADINGS[name] ?? capital(wordsOf(name)), unit);

/** The heading of a column for it, which speaks of one row: "Mass, g" of `masses`. */
export const headingOf = (name: string, unit: Unit): string =>
  withUnit(HEADINGS[name] ?? capital(wordsOf(name).map(single)), unit);

/** The headings over an answer of a row. */
export const answerHeadings = ({ result }: AnyDefinition): readonly string[] =>
  result.columns.map(({ name, about, unit }) => (name ? withUnit(name, unit) : about));
