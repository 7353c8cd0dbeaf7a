import { serialOfIso } from "../../functions/dates";
import { clearing } from "../../taskpane/sheets/clear";
import { areaOf, inside } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { cellOf } from "../../taskpane/sheets/shared/page";
import type { Content, Sheet } from "../../taskpane/sheets/sheet";
import type { CellContent, Change } from "../../taskpane/workbook";
import { openWorkbook, readSheet, type Reading } from "../preview/engine";

/** What is typed into a cell by its name, "animal.start" or "log.mass[3]"; ISO text is a date, null empties it. */
export type Typed = Readonly<Record<string, CellContent>>;

const content = (typed: CellContent): CellContent =>
  typeof typed === "string" && /^\d{4}-\d\d-\d\d$/.test(typed) ? (serialOfIso(typed) as number) : typed;

/** The address of a cell by its name. */
export const addressFor = (template: Sheet, name: string): string =>
  /^[A-Z]{1,2}\d+$/.test(name) ? name : cellOf(template, name);

/** What is typed, as the Workbook port takes it. */
export const changesOf = (sheet: string, template: Sheet, typed: Typed): Change[] =>
  Object.entries(typed).map(([name, value]) => {
    const { top, left } = areaOf(addressFor(template, name));
    return { sheet, row: top - 1, column: left - 1, cells: [[content(value)]] };
  });

/** The example cleared, as the Workbook port takes it. */
export const emptied = (sheet: string, template: Sheet): Change[] =>
  clearing(template).map((address) => {
    const { top, left, bottom, right } = areaOf(address);
    return {
      sheet,
      row: top - 1,
      column: left - 1,
      cells: Array.from({ length: bottom - top + 1 }, () => Array<null>(right - left + 1).fill(null)),
    };
  });

/** The sheet worked out after a keeper has typed, and where `cleared`, has cleared the example before. */
export const filled = async (
  sheet: Sheet,
  typed: Typed,
  { cleared = false, beside = [] }: { readonly cleared?: boolean; readonly beside?: readonly Sheet[] } = {},
): Promise<Reading> => {
  const { workbook, close } = openWorkbook();
  try {
    const names = await workbook.insert([...beside, sheet]);
    const name = names.at(-1) as string;
    if (cleared) await workbook.write(emptied(name, sheet));
    await workbook.write(changesOf(name, sheet, typed));
    return await readSheet(workbook, name, sheet);
  } finally {
    close();
  }
};

/** The same for several, each typed into the example as it was: one engine serves them all. */
export const inTurn = async (sheet: Sheet, all: readonly Typed[]): Promise<readonly Reading[]> => {
  const { workbook, close } = openWorkbook();
  try {
    const [name] = (await workbook.insert([sheet])) as [string];
    const example = await readSheet(workbook, name, sheet);
    const asItWas = ({ row, column }: Change): CellContent => {
      const { value, formula } = example.cells[row]?.[column] ?? { value: null };
      return formula === undefined ? (value as CellContent) : { formula };
    };
    const readings: Reading[] = [];
    let back: readonly Change[] = [];
    for (const typed of all) {
      const changes = changesOf(name, sheet, typed);
      await workbook.write([...back, ...changes]);
      back = changes.map((change) => ({ ...change, cells: [[asItWas(change)]] }));
      readings.push(await readSheet(workbook, name, sheet));
    }
    return readings;
  } finally {
    close();
  }
};

/** Entries in a column, by its name, from one row on. */
export const down = (column: string, values: readonly CellContent[], from = 1): Typed => {
  if (/^[A-Z]{1,2}\d+$/.test(column)) {
    const { top } = areaOf(column);
    return Object.fromEntries(values.map((value, i) => [`${column.replace(/\d+/g, "")}${top + i}`, value]));
  }
  return Object.fromEntries(values.map((value, i) => [`${column}[${from + i}]`, value]));
};

/** Entries in a log, a row after the other from one row on, by the names of its columns. */
export const rows = (log: string, from: number, entries: readonly Typed[]): Typed =>
  Object.fromEntries(
    entries.flatMap((entry, i) =>
      Object.entries(entry).map(([column, value]) => [`${log}.${column}[${from + i}]`, value]),
    ),
  );

/** The first row of a log that the example leaves free. */
export const freeRow = (sheet: Sheet, log: string): number => {
  const columns = Object.entries(sheet.places).filter(([name]) => name.startsWith(`${log}.`));
  const used = columns.flatMap(([, address]) => {
    const { top, left } = areaOf(address);
    return sheet.blocks
      .filter(({ role, at }) => role === "input" && areaOf(at).top === top && areaOf(at).left === left)
      .map((block) => block.rows.findLastIndex(([first]) => first !== null) + 1);
  });
  return Math.max(0, ...used) + 1;
};

/** The sheet with one input or setting of the template typed anew. */
export const typedInto = (sheet: Sheet, name: string, value: Content): Sheet => {
  const address = areaOf(addressFor(sheet, name));
  return {
    ...sheet,
    blocks: sheet.blocks.map((block) => {
      const area = areaOfBlock(block);
      if (!["input", "setting"].includes(block.role) || !inside(address, area)) return block;
      return {
        ...block,
        rows: block.rows.map((row, i) =>
          row.map((old, j) => (i === address.top - area.top && j === address.left - area.left ? value : old)),
        ),
      };
    }),
  };
};
