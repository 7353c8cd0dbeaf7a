import { readXlsx } from "../../addin/file/read";
import { cellName } from "../../taskpane/actions/place";
import { WORKED } from "../../taskpane/actions/worked";
import { WorkbookError, type CellState, type SheetContents, type Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "./engine";
import { inBoth } from "./hostsAnswers";

/**
 * Stories over hosts: the same random actions in the preview's workbook and, through Office.js, in the strict stand-in for
 * Excel. After each of them both hold the same sheets, formulas and figures, or both have refused it; and so do the files
 * that they hand out, and the preview's own, saved and opened again. `hostsPlain.ts` plays them on small sheets of cells of
 * every kind, `hostsSheets.ts` on the sheets of the pane. A failure names its seed, and shrinks to the shortest story that
 * still fails.
 */

type Cells = SheetContents["cells"];

/** The cells that hold something of their own, by name: an answer belongs to its formula. */
const own = (cells: Cells): readonly (readonly [string, CellState])[] =>
  cells.flatMap((line, row) =>
    line.flatMap((state, column): [string, CellState][] =>
      state.formula === undefined && (state.spilledFrom !== undefined || state.value === null || state.value === "")
        ? []
        : [[cellName(row, column), state]],
    ),
  );

/**
 * What a sheet holds, by cell: formulas as they are typed, figures where there is none. The preview takes a text "#N/A" for
 * the error.
 */
export const held = (cells: Cells): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    own(cells).map(([name, { formula, value }]) => [
      name,
      formula === undefined ? (typeof value === "object" && value !== null ? value.error : value) : inBoth(formula),
    ]),
  );

/** The number format of each cell that holds something, where it has one. */
export const formatsOf = (cells: Cells): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    own(cells).flatMap(([name, { format = "General" }]) => (format === "General" ? [] : [[name, format]])),
  );

const DIGITS = 12; // of a figure that is worked out in two ways
const rounded = (value: CellState["value"]): unknown =>
  typeof value === "number" ? Number(value.toPrecision(DIGITS)) : value;

/** What a sheet shows, by cell, whatever stands behind it. */
export const shownIn = (cells: Cells): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    cells.flatMap((line, row) =>
      line.flatMap(({ value }, column) =>
        value === null || value === "" ? [] : [[cellName(row, column), rounded(value)]],
      ),
    ),
  );

const IN_WORDS = 6; // its column on the sheet of worked formulas
/** Excel does not hand over what a function says of its error, which the sheet of worked formulas keeps. */
const withoutWords = (name: string, cells: Cells): Cells =>
  name.startsWith(WORKED) ? cells.map((line) => line.slice(0, IN_WORDS)) : cells;

export const standing = async (workbook: Workbook): Promise<unknown> =>
  (await workbook.read()).map(({ name, hidden, cells }) => ({ name, hidden, cells: held(withoutWords(name, cells)) }));

export const outcome = (doing: Promise<unknown>): Promise<"done" | "refused"> =>
  doing.then(
    () => "done" as const,
    (failure: unknown) => {
      if (!(failure instanceof WorkbookError)) throw failure;
      return "refused" as const;
    },
  );

/** What a file holds. */
export const filed = async (bytes: Uint8Array): Promise<unknown> =>
  (await readXlsx(bytes)).sheets.map(({ name, cells }) => [name, held(withoutWords(name, cells))]);

/** The preview's workbook as its own file. */
export const saved = async (workbook: Workbook): Promise<Uint8Array> => {
  if (!workbook.save) throw new Error("the preview does not save");
  return workbook.save();
};

/** A file opened in another preview. */
export const openedAgain = async (bytes: Uint8Array, look: (again: Workbook) => Promise<void>): Promise<void> => {
  const { workbook, close } = openWorkbook();
  try {
    if (!workbook.open) throw new Error("the preview does not open");
    await workbook.open("again.xlsx", bytes);
    await look(workbook);
  } finally {
    close();
  }
};
