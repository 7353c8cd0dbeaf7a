/**
 * What a cell may hold when a host hands it over: a number, text, TRUE or FALSE, nothing, an error, or a value with a
 * number format around it. Hosts turn their own error objects into `SheetError`; all else is read here.
 */

/** An error that came in with an argument, as the sheet shows it: "#DIV/0!". */
export class SheetError {
  constructor(readonly code: string) {}
}

/** A blank is null, undefined or "" (what a formula leaves in an empty-looking cell). It is never 0. */
export const isBlank = (cell: unknown): cell is null | undefined | "" =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");

/** Whether every cell of a block is blank. */
export const isAllBlank = (block: Block): boolean => block.every((row) => row.every((raw) => isBlank(plain(raw))));

/** The plain value of a cell that carries its number format with it. */
export const plain = (cell: unknown): unknown =>
  typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;

/** Cells of a sheet whose place is known, rows and columns from 0: messages then name a cell as the sheet does. */
export class CellsAt {
  constructor(
    readonly cells: readonly (readonly unknown[])[],
    readonly row: number,
    readonly column: number,
  ) {}
}

/** A block of cells: rows of one length, one at least. */
export type Block = readonly [readonly unknown[], ...(readonly unknown[])[]];

/** Loops of their own, here and in `isLine`: a column may be 525 600 rows, and a callback a row costs as much as reading them. */
const isAllRows = (cells: readonly unknown[]): boolean => {
  for (const row of cells) if (!Array.isArray(row)) return false;
  return true;
};

/** A row that is missing among others is a row of blanks. */
const blankRow = (rows: readonly unknown[]): readonly unknown[] =>
  Array.from({ length: rows.find(Array.isArray)?.length ?? 1 }, () => null);

/** A single cell is a block of one, and so is an array without cells, as one that is blank. */
export const blockOf = (argument: unknown): Block => {
  if (!Array.isArray(argument)) return [[argument]];
  const cells: readonly unknown[] = argument;
  if (!Array.isArray(cells[0]) && !cells.some(Array.isArray)) return [cells.length === 0 ? [undefined] : cells];
  const rows = isAllRows(cells) ? cells : cells.map((row) => (Array.isArray(row) ? row : blankRow(cells)));
  const block = rows as unknown as Block;
  return block[0].length === 0 ? [[undefined]] : block;
};

/** Whether a block is one row or one column. */
export const isLine = (block: Block): boolean => {
  if (block.length === 1) return true;
  for (const row of block) if (row.length !== 1) return false;
  return true;
};

/** A list in reading order, whether it stands in a row or a column. */
export const line = (block: Block): readonly unknown[] => (block.length === 1 ? block[0] : block.map((row) => row[0]));

/** How large a block is, in a message. */
export const size = (block: Block): string => `${block.length} by ${block[0].length} cells`;

/** How a cell is shown in a message. */
export const shown = (cell: unknown): string =>
  typeof cell === "string"
    ? `'${cell.length > 40 ? `${cell.slice(0, 40)}…` : cell}'`
    : typeof cell === "boolean"
      ? cell
        ? "TRUE"
        : "FALSE"
      : typeof cell === "number"
        ? String(cell)
        : "something that is no number, text or date";
