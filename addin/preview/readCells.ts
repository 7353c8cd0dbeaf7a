import { CellValueType, type ICellData, type IRange, type Nullable } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import type { Value } from "../../functions/define";
import type { CellState } from "../../taskpane/workbook";
import { rangeOf } from "./sheetData";

/** Errors as the engine writes them into a cell: as text, which a keeper's own text of that form is taken for too. */
const ERROR = /^#(N\/A|VALUE!|REF!|NAME\?|DIV\/0!|NUM!|NULL!|SPILL!|CALC!|CYCLE!|GETTING_DATA|CONNECT!|ERROR!)$/;

const valueOf = (cell: Nullable<ICellData>): CellState["value"] => {
  const rich = cell?.p?.body?.dataStream;
  if (!cell || cell.v === null || cell.v === undefined)
    return rich ? rich.replace(/\r\n$/, "").replace(/\r/g, "\n") : null;
  if (cell.t === CellValueType.BOOLEAN) return Boolean(cell.v);
  if (cell.t === CellValueType.NUMBER) return Number(cell.v);
  return typeof cell.v === "string" && ERROR.test(cell.v) ? { error: cell.v } : cell.v;
};

/** The words of an error that a function of ours has answered; those of one that has since been mended stay with the cell. */
export const wordsOf = (cell: Nullable<ICellData>): string | undefined => {
  const message: unknown = cell?.custom?.message;
  return typeof message === "string" && (cell?.v === "#N/A" || cell?.v === "#VALUE!") ? message : undefined;
};

const stateOf = (cell: Nullable<ICellData>): Pick<CellState, "value" | "words"> => {
  const words = wordsOf(cell);
  return { value: valueOf(cell), ...(words === undefined ? {} : { words }) };
};

interface Place {
  readonly row: number;
  readonly column: number;
}

/** Everything on a sheet: its own cells, and what formulas spill, which the engine keeps apart. */
export const cellsOf = (sheet: FWorksheet): CellState[][] => {
  const unit = sheet.getWorkbook().getUnitId();
  const id = sheet.getSheetId();
  const model = sheet.getInject().get(FormulaDataModel);
  const spilled = model.getArrayFormulaCellData()[unit]?.[id];
  const spills: Partial<Record<number, Partial<Record<number, IRange>>>> =
    model.getArrayFormulaRange()[unit]?.[id] ?? {};
  const styles = sheet.getWorkbook().getStyles();
  const matrix = sheet.getSheet().getCellMatrix();

  const anchors = new Map<string, Place>();
  for (const [row, line] of Object.entries(spills)) {
    for (const [column, range] of Object.entries(line ?? {})) {
      if (!range) continue;
      for (let i = range.startRow; i <= range.endRow; i++) {
        for (let j = range.startColumn; j <= range.endColumn; j++) {
          if (i !== Number(row) || j !== Number(column))
            anchors.set(`${i},${j}`, { row: Number(row), column: Number(column) });
        }
      }
    }
  }

  let rows = 0;
  let columns = 0;
  const cells: (CellState | undefined)[][] = [];
  const put = (row: number, column: number, state: CellState): void => {
    (cells[row] ??= [])[column] = state;
    if (state.value === null && state.formula === undefined) return;
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  };
  const formatOf = (cell: Nullable<ICellData>): { readonly format?: string } => {
    const pattern = cell && styles.getStyleByCell(cell)?.n?.pattern;
    return pattern ? { format: pattern } : {};
  };
  matrix.forValue((row, column, cell: Nullable<ICellData>) => {
    const formula = model.getFormulaStringByCell(row, column, id, unit);
    put(row, column, {
      ...stateOf(cell),
      ...formatOf(cell),
      ...(formula ? { formula } : {}),
    });
  });
  for (const [key, spilledFrom] of anchors) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    const cell = spilled?.[row]?.[column];
    const own = cells[row]?.[column];
    // A spill that is in the way of something is not drawn: what stands there is the keeper's own.
    if (!cell || (own !== undefined && own.value !== null)) continue;
    const format = own?.format === undefined ? formatOf(cell) : { format: own.format };
    put(row, column, { ...stateOf(cell), ...format, spilledFrom });
  }
  return Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns }, (_, j): CellState => cells[i]?.[j] ?? { value: null }),
  );
};

/** The values of a range alone, errors and blanks as null. */
export const valuesOf = (sheet: FWorksheet, address: string): (Value | null)[][] => {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(address);
  const spilled = sheet.getInject().get(FormulaDataModel).getArrayFormulaCellData()[sheet.getWorkbook().getUnitId()]?.[
    sheet.getSheetId()
  ];
  const matrix = sheet.getSheet().getCellMatrix();
  return Array.from({ length: endRow - startRow + 1 }, (_, i) =>
    Array.from({ length: endColumn - startColumn + 1 }, (_, j) => {
      const [row, column] = [startRow + i, startColumn + j];
      const value = valueOf(matrix.getValue(row, column)) ?? valueOf(spilled?.[row]?.[column]);
      return typeof value === "object" ? null : value;
    }),
  );
};
