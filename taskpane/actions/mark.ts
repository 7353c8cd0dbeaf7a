import type { CellState, SheetContents } from "../workbook";

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

/** What the mark means and where to read on, behind the title of a sheet that has any: nothing of the sheet is written over. */
const MEANING = '"   * fixed: see Worked formulas"';

/** The cell with words behind it in its number format; a blank and an error show nothing that they could stand behind. */
const followed = (cell: CellState, words: string): CellState => {
  const { value, format = "General" } = cell;
  if (typeof value === "number") {
    const parts = partsOf(format).map((part, i) => (part === "" || i >= WITH_TEXT - 1 ? part : `${part}${words}`));
    return { ...cell, format: parts.join(";") };
  }
  if (typeof value !== "string" || value === "") return cell;
  const parts = partsOf(format);
  const [figures, text = "@"] = [parts.slice(0, WITH_TEXT - 1), parts[WITH_TEXT - 1]];
  const gap = ";".repeat(WITH_TEXT - figures.length);
  return { ...cell, format: `${figures.join(";")}${gap}${text}${words}` };
};

/** The cell without such words. A last part for text that is "@" alone goes with them: text shows so by itself. */
const without = (cell: CellState, words: string): CellState => {
  const { format } = cell;
  if (!format?.includes(words)) return cell;
  const last = `;@${words}`;
  const rest = format.endsWith(last) ? format.slice(0, -last.length).replace(/;+$/, "") : format;
  return { ...cell, format: rest.replaceAll(words, "") };
};

export const marked = (cell: CellState): CellState => followed(cell, MARK);
export const rowMarked = (row: readonly CellState[]): CellState[] => row.map(marked);
export const unmarked = (cell: CellState): CellState => without(cell, MARK);
export const isMarked = ({ format }: Pick<CellState, "format">): boolean => format?.includes(MARK) ?? false;

export const explaining = (cell: CellState): CellState => (isExplaining(cell) ? cell : followed(cell, MEANING));
export const unexplaining = (cell: CellState): CellState => without(cell, MEANING);
export const isExplaining = ({ format }: CellState): boolean => format?.includes(MEANING) ?? false;

/** Cells beside the words of a title that have to be free for the words behind it. */
const ROOM = 2;
const isFree = (cell: CellState | undefined): boolean =>
  cell === undefined || (cell.formula === undefined && (cell.value === null || cell.value === ""));

/** Where on a sheet the mark is explained: behind its first words that nothing stands beside. */
export const titleOf = (
  cells: SheetContents["cells"],
): { readonly row: number; readonly column: number } | undefined => {
  for (const [row, line] of cells.entries()) {
    const column = line.findIndex(
      ({ value, formula, spilledFrom }, at) =>
        typeof value === "string" &&
        value !== "" &&
        formula === undefined &&
        !spilledFrom &&
        Array.from({ length: ROOM }, (_, i) => line[at + 1 + i]).every(isFree),
    );
    if (column >= 0) return { row, column };
  }
  return undefined;
};
