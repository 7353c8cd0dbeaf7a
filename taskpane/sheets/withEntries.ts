import { areaOf, inside } from "./shared/address";
import { cellOf } from "./shared/page";
import { areaOfBlock } from "./shared/part";
import type { Content, Sheet } from "./sheet";

/** The sheet with some of its cells filled in, by their names: "plan.when", "list.mass[1]". */
export const withEntries = (sheet: Sheet, entries: Readonly<Record<string, Content>>): Sheet =>
  Object.entries(entries).reduce((filled, [name, content]) => {
    const at = areaOf(cellOf(filled, name));
    const target = filled.blocks.find(
      (block) => (block.role === "input" || block.role === "setting") && inside(at, areaOfBlock(block)),
    );
    if (!target) throw new Error(`${sheet.name} takes nothing at ${name}`);
    const { top, left } = areaOf(target.at);
    const rows = target.rows.map((row, i) =>
      row.map((old, j) => (top + i === at.top && left + j === at.left ? content : old)),
    );
    return { ...filled, blocks: filled.blocks.map((block) => (block === target ? { ...block, rows } : block)) };
  }, sheet);
