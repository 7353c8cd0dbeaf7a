import type { FileSheet } from "../../addin/file/book";
import type { CellState } from "../../taskpane/workbook";

export const isBlank = (value: unknown): boolean => value === null || value === undefined || value === "";
const cellName = (row: number, column: number): string =>
  `${column < 26 ? "" : String.fromCharCode(64 + Math.floor(column / 26))}${String.fromCharCode(65 + (column % 26))}${row + 1}`;

/** What the engine shows and LibreOffice does not: text to the letter, numbers to the nine digits that both agree on. */
export const differences = (cells: readonly (readonly CellState[])[], other: FileSheet): string[] =>
  cells.flatMap((line, row) =>
    line.flatMap(({ value, formula }, column) => {
      const made = other.cells[row]?.[column]?.value;
      const same =
        isBlank(value) && isBlank(made)
          ? true
          : typeof value === "number" && typeof made === "number"
            ? Math.abs(value - made) <= 1e-9 * Math.max(1, Math.abs(value))
            : JSON.stringify(value) === JSON.stringify(made);
      return same
        ? []
        : [`${cellName(row, column)} ${JSON.stringify(value)} became ${JSON.stringify(made)}: ${formula ?? ""}`];
    }),
  );
