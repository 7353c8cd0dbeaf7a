import { isoOf } from "../../functions/dates";
import { dateOrders, orderWords, type Manner } from "./form";
import { readFigure } from "./readFigure";
import { isDate, readMoment } from "./readMoment";

const YEAR = /\d{4}/;

/**
 * Why a text that looks like a date or a figure is none to somebody who writes in that manner; undefined where it looks
 * like neither, or is one. It never becomes another day or another figure: it stays text, and these are its words.
 */
export const misfitWords = (raw: string, { dateOrder, decimal }: Manner): string | undefined => {
  const text = raw.trim();
  if (isDate(text)) {
    if (readMoment(text, dateOrder) !== undefined) return undefined;
    const others = dateOrders
      .map((order) => ({ order, moment: readMoment(text, order) }))
      .filter((one): one is typeof one & { moment: number } => one.moment !== undefined);
    const [only] = others;
    if (!only) return YEAR.test(text) ? `'${text}' is no day of the calendar: it stays text` : undefined;
    const meant = others.map(({ order, moment }) => `${isoOf(Math.floor(moment))} if that is ${orderWords[order]}`);
    return `'${text}' is no date in the order ${orderWords[dateOrder]}: it stays text. Write ${meant.join(", or ")}`;
  }
  const other = decimal === "." ? "," : ".";
  if (!/\d/.test(text) || !text.includes(other)) return undefined;
  if (readFigure(text, decimal) !== undefined || readFigure(text, other) === undefined) return undefined;
  const figure = text.replace(other, decimal);
  // Three figures behind the mark may be thousands as well.
  const thousands = /^[-+]?\d{1,3}[.,]\d{3}$/.test(text) ? ` or ${text.replace(other, "")}` : "";
  const [mark, own] = other === "," ? ["comma", "point"] : ["point", "comma"];
  return `'${text}' has a decimal ${mark}, and figures are read with a decimal ${own}: it stays text. Write ${figure}${thousands}`;
};
