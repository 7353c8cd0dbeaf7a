import type { Workbook } from "../../taskpane/workbook";
import { failed } from "./failure";

/** The table of Excel's own in which a cell stands; one without a row of headings cannot be spoken of by headings. */
export const tableAt: NonNullable<Workbook["tableAt"]> = async ({ sheet, row, column }) => {
  try {
    return await Excel.run(async (context) => {
      const tables = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, 1, 1).getTables(false);
      tables.load("items/name,items/showHeaders");
      await context.sync();
      const [table] = tables.items;
      if (!table?.showHeaders) return undefined;
      const headings = table.getHeaderRowRange();
      headings.load("rowIndex,columnIndex,columnCount");
      await context.sync();
      const { rowIndex, columnIndex, columnCount } = headings;
      return { sheet, name: table.name, row: rowIndex, column: columnIndex, columns: columnCount };
    });
  } catch (failure) {
    throw failed("look for a table", failure);
  }
};

/** One formula for all rows makes a column of the table that goes on calculating in rows that are added. */
export const addTableColumn: NonNullable<Workbook["addTableColumn"]> = async (
  { sheet, name },
  { heading, formula, format },
) => {
  let added = 0;
  try {
    await Excel.run(async (context) => {
      const table = context.workbook.worksheets.getItem(sheet).tables.getItem(name);
      const column = table.columns.add(undefined, undefined, heading);
      await context.sync();
      added += 1;
      const cells = column.getDataBodyRange();
      cells.load("rowCount");
      await context.sync();
      const each = <T>(one: T): T[][] => Array.from({ length: cells.rowCount }, () => [one]);
      if (format !== undefined) cells.numberFormat = each(format);
      cells.formulas = each(formula);
      await context.sync();
    });
  } catch (failure) {
    if (added === 0) throw failed("add the column", failure);
    try {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem(sheet).tables.getItem(name).columns.getItem(heading).delete();
        await context.sync();
      });
    } catch {
      throw failed("add the column", failure, `Delete the column "${heading}" yourself.`);
    }
    throw failed("add the column", failure);
  }
};
