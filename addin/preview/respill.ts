import { FormulaDataModel } from "@univerjs/engine-formula";
import type { IRange } from "@univerjs/core";
import type { Engine } from "./engine";

/** How many cells each spilling formula fills, by its place. */
const spillsOf = (model: FormulaDataModel): ReadonlyMap<string, number> => {
  const sizes = new Map<string, number>();
  for (const [unit, sheets] of Object.entries(model.getArrayFormulaRange())) {
    for (const [sheet, rows] of Object.entries(sheets ?? {})) {
      for (const [row, line] of Object.entries(rows)) {
        for (const [column, range] of Object.entries((line ?? {}) as Record<string, IRange>)) {
          const { startRow, endRow, startColumn, endColumn } = range;
          sizes.set([unit, sheet, row, column].join(), (endRow - startRow + 1) * (endColumn - startColumn + 1));
        }
      }
    }
  }
  return sizes;
};

/**
 * The engine works out the formulas below a spill that has grown smaller while its old cells are still there: a count of
 * days would stay at six where three are left. It works everything out once more when that has happened.
 */
export const followSpills = ({ univer, api }: Engine): void => {
  const model = univer.__getInjector().get(FormulaDataModel);
  let before = spillsOf(model);
  api.getFormula().calculationResultApplied(() => {
    const now = spillsOf(model);
    const shrunk = [...before].some(([place, cells]) => (now.get(place) ?? 0) < cells);
    before = now;
    if (shrunk) api.getFormula().executeCalculation();
  });
};
