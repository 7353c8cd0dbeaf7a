import { PLAN_ROWS } from "../../functions/shared/plan";
import { areaName, onSheet } from "../actions/place";
import type { SheetContents } from "../workbook";

/**
 * The winter plan that stands in a workbook, six dates beside their six labels, as a reference. It may stand on several
 * sheets; of several plans none is taken: which one an animal follows is not guessed.
 */
export const planIn = (sheets: readonly SheetContents[]): string | undefined => {
  const [first, ...others] = sheets.flatMap(({ name, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap((_, column) => {
        const labels = PLAN_ROWS.every((label, i) => cells[row + i]?.[column]?.value === label);
        if (!labels) return [];
        const daysAt = (right: number) => PLAN_ROWS.map((_, i) => cells[row + i]?.[column + right]?.value);
        // The dates stand in the next column with figures; merged labels leave blanks between.
        const dates = [1, 2, 3, 4].find((right) => daysAt(right).every((day) => typeof day === "number"));
        if (dates === undefined) return [];
        const at = onSheet(name, areaName({ row, column: column + dates, rows: PLAN_ROWS.length, columns: 1 }));
        return [{ at, days: JSON.stringify(daysAt(dates)) }];
      }),
    ),
  );
  return others.every(({ days }) => days === first?.days) ? first?.at : undefined;
};
