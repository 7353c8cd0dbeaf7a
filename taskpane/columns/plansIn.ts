import { PLAN_ROWS } from "../../functions/shared/plan";
import { areaName, onSheet } from "../actions/place";
import type { SheetContents } from "../workbook";

/** The winter plans that stand in a workbook: six dates beside their six labels, as references. */
export const plansIn = (sheets: readonly SheetContents[]): readonly string[] =>
  sheets.flatMap(({ name, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap((_, column) => {
        const labels = PLAN_ROWS.every((label, i) => cells[row + i]?.[column]?.value === label);
        if (!labels) return [];
        // The dates stand in the next column with figures; merged labels leave blanks between.
        const dates = [1, 2, 3, 4].find((right) =>
          PLAN_ROWS.every((_, i) => typeof cells[row + i]?.[column + right]?.value === "number"),
        );
        if (dates === undefined) return [];
        return [onSheet(name, areaName({ row, column: column + dates, rows: PLAN_ROWS.length, columns: 1 }))];
      }),
    ),
  );
