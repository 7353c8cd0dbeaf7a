import * as published from "numfmt";
import { formats } from "../../taskpane/sheets/sheet";
import { isDate, readMoment } from "../../taskpane/text/readMoment";
import { mannerNow } from "./manner";

/**
 * Stands in the place of the package in which the engine reads what is typed or pasted, and reads dates and decimals in
 * the keeper's manner: the package reads 05/10/2026 month first, whoever types it. All else is the package's own.
 */
export * from "numfmt";

type Parsed = ReturnType<typeof published.parseDate>;

const DAY_AND_MONTH = /^\s*(\d{1,2})\/(\d{1,2})\s*$/;
const MONTH_OF_YEAR = /^\s*(\d{4}[-/]\d{1,2}|\d{1,2}\/\d{4})\s*$/;
const LETTERS = /\p{L}/u;

const dated = (moment: number | undefined): Parsed =>
  moment === undefined ? null : { v: moment, z: Number.isInteger(moment) ? formats.date : formats.moment };

/** A date by figures is read in the keeper's order or not at all; one that names its month is the package's to read. */
export const parseDate = (text: string, options?: object): Parsed => {
  const { dateOrder } = mannerNow();
  const short = DAY_AND_MONTH.exec(text);
  if (short) {
    const year = new Date().getFullYear();
    const [, one, other] = short;
    return dated(readMoment(dateOrder === "ymd" ? `${year}/${one}/${other}` : `${one}/${other}/${year}`, dateOrder));
  }
  if (isDate(text)) return dated(readMoment(text, dateOrder));
  const bySomebody = MONTH_OF_YEAR.test(text) || (LETTERS.test(text) && !/\d[-/.]\d+[-/.]\d/.test(text));
  return bySomebody ? published.parseDate(text, options) : null;
};

const COMMA = /^\s*([-+]?(?:\d+|\d{1,3}(?:\.\d{3})+(?=,)|\d{1,3}(?:\.\d{3}){2,})?(?:,\d*)?(?:e[-+]?\d+)?)\s*(%?)\s*$/i;

/** With a decimal comma, points only group thousands, and one alone says nothing: "1.234" is left as it stands. */
export const parseNumber = (text: string, options?: object): Parsed => {
  if (isDate(text)) return null;
  if (mannerNow().decimal === ".") return published.parseNumber(text, options);
  const [, figure = "", percent] = COMMA.exec(text) ?? [];
  if (!/\d/.test(figure)) return null;
  const value = Number(figure.replaceAll(".", "").replace(",", "."));
  if (!Number.isFinite(value)) return null;
  return percent ? { v: value / 100, z: figure.includes(",") ? "0.00%" : "0%" } : { v: value };
};
