import type { Change } from "../../taskpane/workbook";
import type { FileCell, FileSheet } from "./book";

/** A file's sheets with other contents in some of their cells: a formula keeps the answer that its cell shows. */
export const withChanges = (sheets: readonly FileSheet[], changes: readonly Change[]): readonly FileSheet[] =>
  sheets.map((sheet) => {
    const own = changes.filter(({ sheet: name }) => name === sheet.name);
    if (own.length === 0) return sheet;
    const cells: FileCell[][] = sheet.cells.map((row) => [...row]);
    for (const { row: top, column: left, cells: block, format } of own) {
      for (const [i, line] of block.entries()) {
        for (const [j, content] of line.entries()) {
          const row = (cells[top + i] ??= []);
          const { formula: _, spills: __, ...cell } = row[left + j] ?? { value: null };
          const isFormula = content !== null && typeof content === "object";
          row[left + j] = {
            ...cell,
            ...(isFormula ? { formula: content.formula } : { value: content }),
            ...(format === undefined ? {} : { format }),
          };
        }
      }
    }
    // A file's rows have no holes.
    const whole = Array.from(cells, (row?: FileCell[]) =>
      Array.from(row ?? [], (cell?: FileCell): FileCell => cell ?? { value: null }),
    );
    return { ...sheet, cells: whole };
  });
