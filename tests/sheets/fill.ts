import { serialOfIso } from "../../functions/dates";
import { clearing } from "../../taskpane/sheets/clear";
import { areaOf } from "../../taskpane/sheets/shared/address";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { CellContent, Change } from "../../taskpane/workbook";
import { openWorkbook, readSheet, type Reading } from "../preview/engine";

/** What is typed into the cell of an address; ISO text is a date, null empties it. */
export type Typed = Readonly<Record<string, CellContent>>;

const content = (typed: CellContent): CellContent =>
  typeof typed === "string" && /^\d{4}-\d\d-\d\d$/.test(typed) ? (serialOfIso(typed) as number) : typed;

const changesOf = (sheet: string, typed: Typed): Change[] =>
  Object.entries(typed).map(([address, value]) => {
    const { top, left } = areaOf(address);
    return { sheet, row: top - 1, column: left - 1, cells: [[content(value)]] };
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
    const emptied: Change[] = clearing(sheet).map((address) => {
      const { top, left, bottom, right } = areaOf(address);
      return {
        sheet: name,
        row: top - 1,
        column: left - 1,
        cells: Array.from({ length: bottom - top + 1 }, () => Array<null>(right - left + 1).fill(null)),
      };
    });
    if (cleared) await workbook.write(emptied);
    await workbook.write(changesOf(name, typed));
    return await readSheet(workbook, name);
  } finally {
    close();
  }
};

/** A column of entries from a cell down. */
export const down = (from: string, values: readonly CellContent[]): Typed => {
  const { top } = areaOf(from);
  const letters = from.replace(/\d+/g, "");
  return Object.fromEntries(values.map((value, i) => [`${letters}${top + i}`, value]));
};
