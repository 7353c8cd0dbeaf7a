import type { Change } from "../workbook";

const width = ({ cells }: Change): number => cells[0]?.length ?? 0;

const goesOn = (one: Change, next: Change): boolean =>
  one.sheet === next.sheet &&
  one.column === next.column &&
  one.row + one.cells.length === next.row &&
  width(one) === width(next) &&
  one.format === next.format;

/**
 * The same changes as fewer ones: what stands directly below one another becomes one block. A host takes about as long
 * for a cell as for a block of cells, and a log has a formula in every row.
 */
export const joined = (changes: readonly Change[]): readonly Change[] => {
  const order = [...changes].sort((a, b) =>
    a.sheet !== b.sheet ? (a.sheet < b.sheet ? -1 : 1) : a.column - b.column || a.row - b.row,
  );
  const blocks: { first: Change; rows: Change["cells"][number][]; last: Change }[] = [];
  for (const change of order) {
    const block = blocks.at(-1);
    if (block && goesOn(block.last, change)) {
      block.rows.push(...change.cells);
      block.last = change;
    } else {
      blocks.push({ first: change, rows: [...change.cells], last: change });
    }
  }
  return blocks.map(({ first, rows }) => ({ ...first, cells: rows }));
};
