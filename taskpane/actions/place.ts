import { addressOf, areaOf as cornersOf, columnLetters } from "../sheets/shared/address";

/** Cells of a sheet as the port counts them, from 0. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** "B5" of a row and a column that count from 0. */
export const cellName = (row: number, column: number): string => `${columnLetters(column + 1)}${row + 1}`;

/** "B5", or "B5:C9" of more than one cell. */
export const areaName = ({ row, column, rows, columns }: Area): string =>
  addressOf({ top: row + 1, left: column + 1, bottom: row + rows, right: column + columns });

/** The area of "B5" or "B5:C9"; undefined for text that is none. */
export const areaOf = (name: string): Area | undefined => {
  if (!/^[A-Z]{1,3}[1-9]\d*(:[A-Z]{1,3}[1-9]\d*)?$/.test(name)) return undefined;
  const { top, left, bottom, right } = cornersOf(name);
  const area = { row: top - 1, column: left - 1, rows: bottom - top + 1, columns: right - left + 1 };
  return area.rows < 1 || area.columns < 1 ? undefined : area;
};

/** "'Winter log'!B5": a sheet's name with quotes where a formula would need them. */
export const onSheet = (sheet: string, name: string): string =>
  /^[\p{L}_][\p{L}\p{N}_]*$/u.test(sheet) ? `${sheet}!${name}` : `'${sheet.replaceAll("'", "''")}'!${name}`;
