import { areaName, onSheet } from "./place";
import { counted, impossible, stopIfCancelled, type Action } from "./action";
import { planned, type Planned } from "../columns/planned";
import { settled, type Settled } from "../columns/settled";
import { tableAt } from "../columns/table";
import type { Wish } from "../columns/wish";
import { WorkbookError, type CellPlace, type ProgramTable, type SheetContents, type Workbook } from "../workbook";

export interface ColumnChoice {
  readonly wish: Wish;
  /** A cell of the table. */
  readonly at: CellPlace;
  /** The column for each want, counted from 0. */
  readonly columns: ReadonlyMap<string, number>;
  /** What was typed for what stands once. */
  readonly once: ReadonlyMap<string, string>;
}

/** The column that a choice makes of what the workbook holds now, or in words why there is none. */
export const columnFor = (
  { wish, at, columns, once }: ColumnChoice,
  sheets: readonly SheetContents[],
): Planned | string => {
  const contents = sheets.find(({ name }) => name === at.sheet);
  if (!contents) return `There is no sheet "${at.sheet}" any more.`;
  if (contents.locked) return `"${at.sheet}" is protected. Unprotect it first.`;
  const table = tableAt(contents, at);
  if (typeof table === "string") return table;
  const read = new Map<string, Settled>();
  for (const want of wish.wants) {
    const typed = once.get(want.name) ?? "";
    if (columns.has(want.name) || typed.trim() === "") continue;
    const one = settled(want, typed, at.sheet, sheets);
    if (typeof one === "string") return `${one}.`;
    read.set(want.name, one);
  }
  return planned(wish, table, { columns, once: read });
};

/** "2, 3 and 7", a long list cut. */
export const rowsInWords = (rows: readonly number[]): string =>
  rows.length <= 6 ? rows.join(", ") : `${rows.slice(0, 5).join(", ")} and ${rows.length - 5} more`;

const area = ({ at, formulas }: Planned): string =>
  onSheet(at.sheet, areaName({ row: at.row, column: at.column, rows: formulas.length + 1, columns: 1 }));

const look = async (workbook: Workbook, choice: ColumnChoice | undefined): Promise<Planned | string> =>
  choice ? columnFor(choice, await workbook.read()) : "Look at a table first.";

/** The table of the program's own that would get the column as its next, where what is read stands in it too. */
const tableFor = async (workbook: Workbook, { at, reads: [first] }: Planned): Promise<ProgramTable | undefined> => {
  const table = await workbook.tableAt?.({ ...at, column: at.column - 1 });
  const isNext = table?.row === at.row && table.column + table.columns === at.column;
  return isNext && table.column <= first ? table : undefined;
};

/** Room for the heading in bold letters, or for a date. */
const widthFor = (heading: string): number => Math.max(11, Math.ceil(heading.length * 1.1) + 1);

/** The column looks like the table; where it cannot, it stands all the same. */
const dressed = async (workbook: Workbook, { at, heading, formulas }: Planned): Promise<string> => {
  try {
    const rows = formulas.length + 1;
    await workbook.takeLook?.({ ...at, rows, like: at.column - 1, characters: widthFor(heading) });
    return "";
  } catch (failure) {
    if (failure instanceof WorkbookError)
      return " It does not look like your table: copy the look of the column beside it.";
    throw failure;
  }
};

export const addColumn: Action<ColumnChoice | undefined> = {
  key: "add-column",
  label: "Add the column",
  about:
    "Writes a heading and a formula for each row into the next free column of your table, down to its last row. It looks like the column beside it. Nothing else changes.",
  async describe(workbook, choice) {
    const column = await look(workbook, choice);
    return typeof column === "string"
      ? impossible(`${column} Nothing was changed.`)
      : { text: `Writes "${column.heading}" into ${area(column)}.`, possible: true, ask: false };
  },
  async run(workbook, choice, options) {
    const column = await look(workbook, choice);
    if (typeof column === "string") throw new WorkbookError(`${column} Nothing was changed.`);
    stopIfCancelled(options);
    const { at, heading, formulas, format, empty } = column;
    const table = await tableFor(workbook, column);
    if (table && workbook.addTableColumn) {
      await workbook.addTableColumn(table, { heading, formula: column.inTable, ...(format ? { format } : {}) });
      const plain = await dressed(workbook, column);
      return {
        text: `"${heading}" is a column of the table "${table.name}" now: rows that you add to it answer too.${plain}`,
      };
    }
    await workbook.write(
      [
        { ...at, cells: [[heading]] },
        { ...at, row: at.row + 1, cells: formulas.map((formula) => [{ formula }]), ...(format ? { format } : {}) },
      ],
      options,
    );
    const plain = await dressed(workbook, column);
    const stay = empty.length > 0 ? ` Empty until they can be answered: ${counted(empty.length, "row")}.` : "";
    return {
      text: `"${heading}" stands in ${area(column)}.${stay} For rows that you add below, fill the last formula down.${plain}`,
    };
  },
};
