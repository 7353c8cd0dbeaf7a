import { dateOrders } from "../../text/form";
import { guessDateOrder, guessDecimal, guessSeparator, SAMPLE, type Rows } from "../../text/guessForm";
import { firstRows, isEmptyRow } from "../../text/pieces";
import { readFigure } from "../../text/readFigure";
import { isBareDate, isClock, readMoment } from "../../text/readMoment";
import type { Guess, Layout } from "./layout";

/** °C. Half of the readings above this are in °F: nothing that this is made for is kept so warm. */
const TOO_WARM = 45;

const isMoment = (text: string): boolean => dateOrders.some((order) => readMoment(text, order) !== undefined);

/** A figure that could be a temperature, with either decimal mark; a date as a bare number is none. */
const isFigure = (text: string): boolean => readFigure(text, ".") !== undefined || readFigure(text, ",") !== undefined;

const share = (rows: Rows, column: number, holds: (text: string) => boolean): number =>
  rows.filter((row) => holds(row[column] ?? "")).length / Math.max(rows.length, 1);

/** The column of which most cells are as they should be, the first of several; undefined if fewer than half are. */
const mostly = (rows: Rows, columns: readonly number[], holds: (text: string) => boolean): number | undefined => {
  const shares = columns.map((column) => share(rows, column, holds));
  const most = Math.max(0, ...shares);
  return most < 0.5 ? undefined : columns[shares.indexOf(most)];
};

/** Whether a column only numbers the rows. */
const isRowNumber = (rows: Rows, column: number): boolean =>
  rows.length > 1 && rows.every((row, i) => i === 0 || Number(row[column]) === Number(rows[i - 1]?.[column]) + 1);

const guessUnit = (rows: Rows, title: string, column: number, decimal: Layout["decimal"]): Layout["unit"] => {
  const words = [title, ...rows.map((row) => row[column] ?? "")];
  if (words.some((word) => /°\s*F\b|fahrenheit|[([]F[)\]]|\dF\b/i.test(word))) return "fahrenheit";
  if (words.some((word) => /°\s*C\b|celsius|[([]C[)\]]|\dC\b/i.test(word))) return "celsius";
  const figures = rows
    .map((row) => readFigure(row[column] ?? "", decimal))
    .filter((figure) => figure !== undefined)
    .sort((a, b) => a - b);
  return (figures[figures.length >> 1] ?? 0) > TOO_WARM ? "fahrenheit" : "celsius";
};

/** What stands in a text of readings. What the keeper has already said is taken as said, and the rest guessed around it. */
export const guessLayout = (text: string, said: Partial<Layout> = {}): Guess => {
  const separator = said.separator ?? guessSeparator(text);
  const sample = firstRows(text, separator, SAMPLE);
  const firstReading = sample.findIndex((row) => row.some(isMoment) && row.some((cell) => isFigure(cell)));
  const headings = said.headings ?? Math.max(firstReading, 0);
  const rows = sample.slice(headings).filter((row) => !isEmptyRow(row));
  const width = Math.max(1, ...rows.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, column) => column);
  const heading =
    sample
      .slice(0, headings)
      .filter((row) => !isEmptyRow(row))
      .at(-1) ?? [];
  const titles = columns
    .map((column) => heading[column]?.trim() ?? "")
    .map((title, column) => (title === "" ? `column ${column + 1}` : title));

  const timeColumn = said.timeColumn ?? mostly(rows, columns, isMoment) ?? 0;
  const others = columns.filter((column) => column !== timeColumn);
  const clockColumn =
    "clockColumn" in said
      ? said.clockColumn
      : share(rows, timeColumn, isBareDate) > 0.5
        ? mostly(rows, others, isClock)
        : undefined;
  const figures = others.filter((column) => column !== clockColumn);
  const measured = figures.filter((column) => !isRowNumber(rows, column));
  const named = figures.filter((column) => /temp|°|celsius|fahrenheit/i.test(titles[column] ?? ""));
  const temperatureColumn =
    said.temperatureColumn ??
    [named, measured, figures].reduce<number | undefined>(
      (found, some) => found ?? mostly(rows, some, isFigure),
      undefined,
    ) ??
    figures[0] ??
    timeColumn;
  const decimal = said.decimal ?? guessDecimal(rows, figures);
  const { order, ambiguous } = guessDateOrder(text, separator, timeColumn);
  return {
    layout: {
      separator,
      decimal,
      headings,
      dateOrder: said.dateOrder ?? order,
      unit: said.unit ?? guessUnit(rows, titles[temperatureColumn] ?? "", temperatureColumn, decimal),
      timeColumn,
      clockColumn,
      temperatureColumn,
      others: said.others ?? [],
    },
    ask: said.dateOrder === undefined && ambiguous !== undefined ? ["dateOrder"] : [],
    titles,
  };
};
