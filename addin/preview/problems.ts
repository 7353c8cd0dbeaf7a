import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Engine } from "./engine";

/** Shows the words of a VIV problem while its cell is selected: the cell itself has room for the code only. */
export const showProblems = ({ api }: Engine, line: HTMLElement): void => {
  const show = (): void => {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    const cell = api.getActiveWorkbook()?.getActiveCell();
    if (!sheet || !cell) return;
    const [row, column] = [cell.getRow(), cell.getColumn()];
    const own = sheet.getSheet().getCellMatrix().getValue(row, column);
    const spilled = sheet.getInject().get(FormulaDataModel).getArrayFormulaCellData();
    const found =
      own?.v != null ? own : spilled[sheet.getWorkbook().getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column];
    const message: unknown = found?.custom?.message;
    // Words of an answer that has since been mended stay with the cell: only an error's count.
    const stands = typeof message === "string" && (found?.v === "#N/A" || found?.v === "#VALUE!");
    line.textContent = stands ? `${cell.getA1Notation()} ${String(found.v)}: ${message}` : "";
  };
  api.addEvent(api.Event.SelectionChanged, show);
  api.getFormula().calculationResultApplied(show);
};
