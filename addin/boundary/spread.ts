import type { CellParameter } from "../../functions/define";
import { notUsable, type Problem } from "../../functions/problem";
import type { Argument } from "./argument";
import { size } from "./cell";

/** The positions for which a call answers. Single cells, rows and columns repeat over them. */
export interface Spread {
  readonly rows: number;
  readonly columns: number;
}

/** The spread of the arguments that are cells, or the two that do not fit one another. */
export const spreadOf = (cells: readonly Argument<CellParameter>[]): Spread | Problem => {
  const rows = Math.max(1, ...cells.map(({ block }) => block.length));
  const columns = Math.max(1, ...cells.map(({ block }) => block[0].length));
  for (const { name, block } of cells) {
    const width = block[0].length;
    const tall = block.length !== 1 && block.length !== rows;
    if (!tall && (width === 1 || width === columns)) continue;
    const other = cells.find((one) => (tall ? one.block.length === rows : one.block[0].length === columns));
    if (other)
      return notUsable(`${name} holds ${size(block)} and ${other.name} ${size(other.block)}: give blocks that fit`);
  }
  return { rows, columns };
};
