import type { CellState } from "../workbook";

/**
 * A figure that stays, among others that go on calculating, carries an asterisk behind it: by its number format, so that its
 * value is as it was.
 */
const MARK = '"*"';
/** How many parts a number format has where it has one for text: above 0, below, 0, text. */
const WITH_TEXT = 4;

/** The parts of a number format; what stands in quotes, in brackets or behind a backslash parts nothing. */
const partsOf = (format: string): string[] => {
  const parts = [""];
  for (const [piece] of format.matchAll(/"[^"]*"|\[[^\]]*\]|\\.|[^]/gu)) {
    if (piece === ";") parts.push("");
    else parts.push(`${parts.pop() ?? ""}${piece}`);
  }
  return parts;
};

/** The cell with the mark in its number format; a blank and an error show nothing that could be taken for live. */
export const marked = (cell: CellState): CellState => {
  const { value, format = "General" } = cell;
  if (typeof value === "number") {
    const parts = partsOf(format).map((part, i) => (part === "" || i >= WITH_TEXT - 1 ? part : `${part}${MARK}`));
    return { ...cell, format: parts.join(";") };
  }
  if (typeof value !== "string" || value === "") return cell;
  const parts = partsOf(format);
  const [figures, text = "@"] = [parts.slice(0, WITH_TEXT - 1), parts[WITH_TEXT - 1]];
  const gap = ";".repeat(WITH_TEXT - figures.length);
  return { ...cell, format: `${figures.join(";")}${gap}${text}${MARK}` };
};

export const rowMarked = (row: readonly CellState[]): CellState[] => row.map(marked);

/** The cell without the mark. A last part for text that is "@" alone goes with it: text shows so by itself. */
export const unmarked = (cell: CellState): CellState =>
  cell.format?.includes(MARK) ? { ...cell, format: cell.format.replace(/;+@"\*"$/, "").replaceAll(MARK, "") } : cell;
