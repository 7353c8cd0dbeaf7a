import type { Engine } from "../../addin/preview/engine";
import { startHeadless } from "../../addin/preview/headless";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { catalogue } from "../../functions/catalogue";
import { isoOf } from "../../functions/dates";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { addressIn, type Places } from "../../taskpane/sheets/shared/names";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { CellState, Workbook } from "../../taskpane/workbook";

/** A workbook in the headless engine. Call `close` when done: its timers would keep the test process alive. */
export const openWorkbook = (): {
  readonly engine: Engine;
  readonly workbook: Workbook;
  readonly close: () => void;
} => {
  const engine = startHeadless(catalogue);
  return { engine, workbook: new PreviewWorkbook(engine), close: () => engine.univer.dispose() };
};

const shown = ({ value, format }: CellState): unknown => {
  if (typeof value === "object" && value !== null) return value.error;
  return typeof value === "number" && format?.startsWith("yyyy-mm-dd") ? isoOf(value) : value;
};

/** A sheet that has been worked out. Addresses are A1-style. */
export class Reading {
  constructor(
    readonly name: string,
    readonly cells: readonly (readonly CellState[])[],
    readonly places: Places = {},
  ) {}

  /** What a cell shows by its name, "now.last" or "log.mass[3]"; of a column, "log.mass", all its cells. */
  of(name: string): unknown {
    const address = addressIn(this.places, name);
    return address.includes(":") ? this.column(name) : this.at(address);
  }

  /** What the cells of a column show, from its first row down. */
  column(name: string): unknown[] {
    return this.block(addressIn(this.places, name)).map(([first]) => first);
  }

  /** The cell with its formula, format and where it is spilled from. */
  state(address: string): CellState {
    const { top, left } = areaOf(address);
    return this.cells[top - 1]?.[left - 1] ?? { value: null };
  }

  /** What a cell shows: a value, null, an error's code, a date as ISO text. */
  at(address: string): unknown {
    return shown(this.state(address));
  }

  /** What a range shows, as rows. */
  block(address: string): unknown[][] {
    const { top, left, bottom, right } = areaOf(address);
    return Array.from({ length: bottom - top + 1 }, (_, i) =>
      Array.from({ length: right - left + 1 }, (_, j) =>
        shown(this.cells[top - 1 + i]?.[left - 1 + j] ?? { value: null }),
      ),
    );
  }

  /** Every cell that shows an error: "B7 #N/A =VIV.LAPSE(...)". */
  errors(): string[] {
    return this.cells.flatMap((row, i) =>
      row.flatMap((cell, j) => {
        const { value, formula } = cell;
        if (typeof value !== "object" || value === null) return [];
        const letters =
          j < 26
            ? String.fromCharCode(65 + j)
            : `${String.fromCharCode(64 + Math.floor(j / 26))}${String.fromCharCode(65 + (j % 26))}`;
        return [`${letters}${i + 1} ${value.error} ${formula ?? "(spilled)"}`];
      }),
    );
  }
}

/** A sheet of a workbook; its names are those of the template that it was drawn from. */
export const readSheet = async (workbook: Workbook, name: string, template?: Sheet): Promise<Reading> => {
  const [contents] = await workbook.read([name]);
  if (!contents) throw new Error(`no sheet ${name}`);
  return new Reading(contents.name, contents.cells, template?.places);
};

/** Inserts templated sheets into a new workbook and answers them worked out, in order. */
export const drawn = async (...sheets: readonly Sheet[]): Promise<Reading[]> => {
  const { workbook, close } = openWorkbook();
  try {
    const names = await workbook.insert(sheets);
    return (await workbook.read(names)).map(({ name, cells }, i) => new Reading(name, cells, sheets[i]?.places));
  } finally {
    close();
  }
};
