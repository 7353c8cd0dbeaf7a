import { toMetric, type System } from "../../../functions/units";
import { figureIn } from "../../sheets/shared/quantities";
import { orderWords } from "../../text/form";
import { isEmptyRow, piecesOf } from "../../text/pieces";
import { readFigure } from "../../text/readFigure";
import { readMoment } from "../../text/readMoment";
import type { Layout } from "./layout";

/** What lands in a cell: a figure, text that stays text whatever it begins with, or nothing. */
export type Landed = number | string | null;

/** A row with its temperature, which is read as °C, in the units of a sheet. */
export const inUnits = (row: readonly Landed[], system: System): readonly Landed[] =>
  system === "metric"
    ? row
    : row.map((one, i) => (i === 1 && typeof one === "number" ? figureIn(one, "celsius", system) : one));

/** A row of the file that could not be read as it should be. Rows count from 1, headings included, as the file has them. */
export interface Refused {
  readonly row: number;
  readonly reason: string;
  /** True where the row lands all the same, its temperature blank or as text: DAYTABLE counts it as skipped. */
  readonly lands: boolean;
}

/** Rows as they will land: time as a serial number, temperature in °C, then the further columns. */
export interface Block {
  readonly rows: readonly (readonly Landed[])[];
  readonly refused: readonly Refused[];
  /** How much of the file has been read, 0..1. */
  readonly share: number;
}

/** At most so many letters of a cell are shown in a reason. */
const SHOWN = 40;
const shown = (text: string): string => (text.length > SHOWN ? `'${text.slice(0, SHOWN)}…'` : `'${text}'`);

/** A further cell as it stands: a plain figure, else its text. */
const asItStands = (text: string, decimal: Layout["decimal"]): Landed => {
  if (text.trim() === "") return null;
  const figure = /[CF]\s*$/i.test(text) ? undefined : readFigure(text, decimal);
  return figure !== undefined && Number.isFinite(figure) ? figure : text;
};

const readRow = (cells: readonly string[], layout: Layout): { landed?: Landed[]; reason?: string } => {
  const { decimal, dateOrder, unit, timeColumn, clockColumn, temperatureColumn, others } = layout;
  const date = cells[timeColumn] ?? "";
  const clock = clockColumn === undefined ? undefined : (cells[clockColumn] ?? "");
  const time = readMoment(date, dateOrder, clock);
  if (time === undefined) {
    const written = clock === undefined ? date : `${date} ${clock}`;
    if (written.trim() === "") return { reason: "no time" };
    return { reason: `time ${shown(written)} is no moment in the order ${orderWords[dateOrder]}` };
  }
  const written = cells[temperatureColumn] ?? "";
  const figure = readFigure(written, decimal);
  const further = others.map((column) => asItStands(cells[column] ?? "", decimal));
  if (figure !== undefined && Number.isFinite(figure)) {
    const celsius = unit === "fahrenheit" ? toMetric(figure, "celsius", "imperial") : figure;
    return { landed: [time, celsius, ...further] };
  }
  return written.trim() === ""
    ? { landed: [time, null, ...further], reason: "no temperature" }
    : { landed: [time, written, ...further], reason: `temperature ${shown(written)} is no number` };
};

/** Lets the page draw and take a click on Cancel. */
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * Reads a text of readings, a block at a time. Empty lines are passed over; every other row lands, is refused, or both.
 * Aborting ends it with the signal's own reason before the next block; nothing is written here, so nothing is left over.
 */
export async function* readReadings(
  text: string,
  layout: Layout,
  { signal }: { readonly signal?: AbortSignal | undefined } = {},
): AsyncGenerator<Block> {
  let row = 0;
  for (const { rows: pieces, share } of piecesOf(text, layout.separator)) {
    signal?.throwIfAborted();
    const rows: Landed[][] = [];
    const refused: Refused[] = [];
    for (const cells of pieces) {
      row++;
      if (row <= layout.headings || isEmptyRow(cells)) continue;
      const { landed, reason } = readRow(cells, layout);
      if (landed) rows.push(landed);
      if (reason !== undefined) refused.push({ row, reason, lands: landed !== undefined });
    }
    yield { rows, refused, share };
    await breathe();
  }
  signal?.throwIfAborted();
}

/** The first rows as they will land, with what was refused among them. */
export const previewReadings = async (text: string, layout: Layout, count = 8): Promise<Omit<Block, "share">> => {
  for await (const { rows, refused } of readReadings(text.slice(0, 256 * 1024), layout)) {
    return { rows: rows.slice(0, count), refused: refused.slice(0, count) };
  }
  return { rows: [], refused: [] };
};
