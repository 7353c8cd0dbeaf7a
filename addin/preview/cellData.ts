import { CellValueType, type ICellData, type IObjectMatrixPrimitiveType } from "@univerjs/core";
import { formats } from "../../taskpane/sheets/sheet";
import type { TextCell } from "../../taskpane/text/readTable";

const dataOf = (cell: Exclude<TextCell, null>): ICellData => {
  switch (typeof cell) {
    case "object":
      return {
        v: cell.date,
        t: CellValueType.NUMBER,
        s: { n: { pattern: Number.isInteger(cell.date) ? formats.date : formats.moment } },
      };
    case "number":
      return { v: cell, t: CellValueType.NUMBER };
    case "boolean":
      return { v: cell ? 1 : 0, t: CellValueType.BOOLEAN };
    case "string":
      return { v: cell, t: CellValueType.STRING };
  }
};

/** The cells of a file as the engine keeps them. */
export const cellDataOf = (cells: readonly (readonly TextCell[])[]): IObjectMatrixPrimitiveType<ICellData> =>
  Object.fromEntries(
    cells.map((row, i) => [
      i,
      Object.fromEntries(row.flatMap((cell, j) => (cell === null ? [] : [[j, dataOf(cell)] as const]))),
    ]),
  );
