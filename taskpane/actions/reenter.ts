import type { Change, SheetContents } from "../workbook";
import { counted, impossible, stopIfCancelled, type Action } from "./action";
import { hasFunction, respelled } from "./formulas";
import { joined } from "./joined";
import { cellName, onSheet } from "./place";

interface Plan {
  readonly changes: readonly Change[];
  readonly left: readonly string[];
}

/** What shows that a formula was met before the functions were there, or got stuck on the way. */
const STUCK = new Set(["#NAME?", "#BUSY!", "#CONNECT!"]);

const planOf = (all: readonly SheetContents[]): Plan => {
  const changes: Change[] = [];
  const left: string[] = [];
  for (const { name, locked, cells } of all) {
    for (const [row, line] of cells.entries()) {
      for (const [column, { formula, value }] of line.entries()) {
        if (formula === undefined || !hasFunction(formula)) continue;
        const typed = respelled(formula);
        const stuck = value !== null && typeof value === "object" && STUCK.has(value.error);
        if (!stuck && typed === formula) continue;
        if (locked) left.push(`${onSheet(name, cellName(row, column))}: the sheet is protected`);
        else changes.push({ sheet: name, row, column, cells: [[{ formula: typed }]] });
      }
    }
  }
  return { changes, left };
};

export const reenter: Action = {
  key: "re-enter",
  label: "Re-enter formulas",
  about: "Types every VIV formula that is stuck on #NAME? into its cell again, as it stands.",
  async describe(workbook) {
    const { changes, left } = planOf(await workbook.read());
    if (changes.length === 0) {
      return impossible(
        left.length > 0
          ? "The formulas that are stuck are on protected sheets. Take the protection off, then try again."
          : "No VIV formula is stuck, so there is nothing to do.",
        left,
      );
    }
    return {
      text: `${counted(changes.length, "formula")} will be entered again. No formula and no figure of yours changes.`,
      list: changes.map(({ sheet, row, column }) => onSheet(sheet, cellName(row, column))),
      possible: true,
      ask: true,
    };
  },
  async run(workbook, _, options) {
    const { changes, left } = planOf(await workbook.read());
    stopIfCancelled(options);
    await workbook.write(joined(changes), options);
    return {
      text:
        `${counted(changes.length, "formula")} entered again. Where #NAME? still stands, open the add-in from the ` +
        `ribbon and wait a moment.${left.length > 0 ? " Left as it was:" : ""}`,
      left,
    };
  },
};
