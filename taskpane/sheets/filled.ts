import { areaOf, inside } from "./shared/address";
import { cellOf } from "./shared/page";
import { areaOfBlock } from "./shared/part";
import type { Content, Sheet } from "./sheet";

/** The sheet with figures of the keeper's own in some of its inputs, by the names of their cells: "place.latitude". */
export const filled = (sheet: Sheet, figures: Readonly<Record<string, Content>>): Sheet =>
  Object.entries(figures).reduce<Sheet>((before, [name, figure]) => {
    const cell = areaOf(cellOf(sheet, name));
    const index = before.blocks.findIndex((block) => block.role === "input" && inside(cell, areaOfBlock(block)));
    if (index < 0) throw new Error(`${sheet.name} has no input ${name}`);
    return {
      ...before,
      blocks: before.blocks.map((block, i) => {
        if (i !== index) return block;
        const { top, left } = areaOf(block.at);
        return {
          ...block,
          rows: block.rows.map((row, r) =>
            row.map((content, c) => (top + r === cell.top && left + c === cell.left ? figure : content)),
          ),
        };
      }),
    };
  }, sheet);
