import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Injector,
  type Workbook,
} from "@univerjs/core";
import {
  InsertSheetMutation,
  SetRangeValuesMutation,
  SetWorksheetColumnCountMutation,
  SetWorksheetRowCountMutation,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";

/** Rows and columns that a sheet has beyond the last that it uses, to go on working in. */
export const ROOM = { rows: 2_000, columns: 52 } as const;

const worksheetOf = (injector: Injector, unitId: string, subUnitId: string) =>
  injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
    ?.getSheetBySheetId(subUnitId);

/** Sees to it that a sheet has room beyond its first `rows` and `columns`. What it has grows, and is never undone. */
export const growBeyond = (
  injector: Injector,
  target: { readonly unitId: string; readonly subUnitId: string },
  rows: number,
  columns: number,
): void => {
  const sheet = worksheetOf(injector, target.unitId, target.subUnitId);
  if (!sheet) return;
  const commands = injector.get(ICommandService);
  const grow = (id: string, params: object): void =>
    void commands.syncExecuteCommand(id, { ...target, ...params }, { onlyLocal: true });
  if (sheet.getRowCount() < rows + ROOM.rows) grow(SetWorksheetRowCountMutation.id, { rowCount: rows + ROOM.rows });
  if (sheet.getColumnCount() < columns + ROOM.columns)
    grow(SetWorksheetColumnCountMutation.id, { columnCount: columns + ROOM.columns });
};

/** The last row and column of a sheet's cells that are written, each counted from 1. */
const extentOf = (cells: object): readonly [rows: number, columns: number] => {
  let [rows, columns] = [0, 0];
  for (const [row, line] of Object.entries(cells as Record<string, object | undefined>)) {
    rows = Math.max(rows, Number(row) + 1);
    for (const column of Object.keys(line ?? {})) columns = Math.max(columns, Number(column) + 1);
  }
  return [rows, columns];
};

/** Keeps room below and right of everything that is written, so that no cell lies where it can't be seen. */
export const keepRoom = (injector: Injector): void => {
  const around = (unitId: string, subUnitId: string, cells: object): void =>
    growBeyond(injector, { unitId, subUnitId }, ...extentOf(cells));
  for (const book of injector.get(IUniverInstanceService).getAllUnitsForType<Workbook>(UniverInstanceType.UNIVER_SHEET))
    for (const sheet of book.getSheets()) around(book.getUnitId(), sheet.getSheetId(), sheet.getConfig().cellData);
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id === SetRangeValuesMutation.id) {
      const { unitId, subUnitId, cellValue } = params as ISetRangeValuesMutationParams;
      if (cellValue) around(unitId, subUnitId, cellValue);
    } else if (id === InsertSheetMutation.id) {
      const { unitId, sheet } = params as { readonly unitId: string; readonly sheet: { id: string; cellData: object } };
      around(unitId, sheet.id, sheet.cellData);
    }
  });
};
