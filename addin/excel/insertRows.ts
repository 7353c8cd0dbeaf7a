import { isPlotted, plottedOn } from "../../taskpane/pictures/plotted";
import { WorkbookError, type Workbook } from "../../taskpane/workbook";
import { sheetsNamed } from "./contents";
import { entryOf } from "./entry";
import { failed } from "./failure";
import { sizeOf } from "./write";

/** What charts are drawn from goes on through new rows: Excel leaves those blank. */
const plotNewRows = async (
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  row: number,
  count: number,
): Promise<void> => {
  const used = sheet.getUsedRangeOrNullObject(false);
  used.load("columnIndex,columnCount");
  await context.sync();
  if (used.isNullObject || row === 0) return;
  const above = sheet.getRangeByIndexes(row - 1, 0, 1, used.columnIndex + used.columnCount);
  above.load("formulas");
  await context.sync();
  for (const [column, formula] of ((above.formulas as unknown[][])[0] ?? []).map(String).entries()) {
    if (!isPlotted(formula)) continue;
    sheet.getRangeByIndexes(row, column, count, 1).formulas = Array.from({ length: count }, (_, i) => [
      plottedOn(formula, row + i + 1),
    ]);
  }
};

/**
 * Excel moves formulas, lists, rules and charts along by itself, and the new rows look like the one above. Where they
 * cannot be filled, they go again.
 */
export const insertRows: Workbook["insertRows"] = async ({ sheet: name, rows, count, fill, joined = [] }) => {
  let inserted = 0;
  const at = (sheet: Excel.Worksheet, row: number): Excel.Range =>
    sheet.getRangeByIndexes(row, 0, count, 1).getEntireRow();
  try {
    await Excel.run(async (context) => {
      const sheet = (await sheetsNamed(context, [name])).get(name) as Excel.Worksheet;
      if (sheet.protection.protected) {
        throw new WorkbookError(`Protected: "${name}". Nothing was changed. Unprotect it first, then try again.`);
      }
      for (const row of rows) {
        at(sheet, row).insert("Down");
        await context.sync();
        inserted += 1;
        await plotNewRows(context, sheet, row, count);
      }
      for (const one of joined) sheet.getRange(one).merge(false);
      for (const { row, column, cells } of fill) {
        const [height, width] = sizeOf(cells);
        sheet.getRangeByIndexes(row, column, height, width).formulas = cells.map((line) =>
          Array.from({ length: width }, (_, j) => entryOf(line[j])),
        );
      }
      await context.sync();
    });
  } catch (failure) {
    if (inserted === 0) throw failed("add the rows", failure);
    try {
      await Excel.run(async (context) => {
        const sheet = (await sheetsNamed(context, [name])).get(name) as Excel.Worksheet;
        for (const row of rows.slice(0, inserted).reverse()) at(sheet, row).delete("Up");
        await context.sync();
      });
    } catch {
      throw failed("add the rows", failure, "Blank rows were left in the log: delete them yourself.");
    }
    throw failed("add the rows", failure);
  }
};
