import type { Block, Sheet } from "./sheet";
import { addressOf, block as blockOf } from "./shared/address";
import { EXAMPLE } from "./shared/assemble";
import { areaOfBlock } from "./shared/part";

const isExample = ({ role, rows }: Block): boolean =>
  role === "input" || (role === "text" && String(rows[0]?.[0] ?? "").startsWith(EXAMPLE));

/**
 * The cells that "Clear the example" empties, as addresses: what the keeper fills, and the line that speaks of the
 * example. Settings, formulas, formats, cautions and sources stay.
 */
export const clearing = (sheet: Pick<Sheet, "blocks">): readonly string[] =>
  sheet.blocks
    .filter(isExample)
    .map((block) => (block.room ? blockOf(block.at, ...block.room) : addressOf(areaOfBlock(block))));

/** The sheet without its example, as it looks after clearing. */
export const cleared = (sheet: Sheet): Sheet => ({
  ...sheet,
  blocks: sheet.blocks.map((block) =>
    isExample(block) ? { ...block, rows: block.rows.map((row) => row.map(() => null)) } : block,
  ),
});
