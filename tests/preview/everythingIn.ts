import type { Engine } from "../../addin/preview/engine";
import type { PreviewWorkbook } from "../../addin/preview/workbook";

/** Everything that stands in a workbook but which sheet is shown: values, formulas, order, what is hidden, names, notes, rules. */
export const everythingIn = async (engine: Engine, workbook: PreviewWorkbook): Promise<string> => {
  const book = engine.api.getActiveWorkbook();
  if (!book) throw new Error("no workbook");
  return JSON.stringify({
    sheets: await workbook.read(),
    title: workbook.title() ?? null,
    names: book
      .getDefinedNames()
      .map((one) => [one.getName(), one.getFormulaOrRefString()])
      .sort(),
    beside: book
      .getSheets()
      .map((sheet) => [
        sheet.getNotes().map(({ row, col, note }) => [row, col, note]),
        sheet.getConditionalFormattingRules().map(({ ranges, rule }) => JSON.stringify([ranges, rule])),
        sheet
          .getDataValidations()
          .map(({ rule }) => JSON.stringify([rule.type, rule.ranges, rule.formula1, rule.formula2])),
      ]),
  });
};
