import fc from "fast-check";
import { Problem } from "../../functions/problem";

/** One answer, held against what a spreadsheet can show; the words of what is wrong, or nothing. */
export const wrongWith = (
  args: readonly unknown[],
  name: string,
  cells: readonly (readonly unknown[])[],
): string | undefined => {
  const width = cells[0]?.length ?? 0;
  if (cells.length === 0 || width === 0) return `${name} answered nothing`;
  for (const row of cells) {
    if (row.length !== width) return `${name} answered a ragged block`;
    for (const cell of row) {
      const fine =
        cell instanceof Problem
          ? cell.message.length > 3 && !cell.message.includes("was not made for")
          : typeof cell === "number"
            ? Number.isFinite(cell)
            : typeof cell === "string" || typeof cell === "boolean";
      if (!fine)
        return `${name} answered ${cell instanceof Problem ? cell.message : String(cell)} to ${fc.stringify(args)}`;
    }
  }
  return undefined;
};
