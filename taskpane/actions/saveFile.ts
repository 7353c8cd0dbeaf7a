import type { SavedFile } from "./savedFile";
import { counted, stopIfCancelled, type Action } from "./action";
import { hasFunction } from "./formulas";
import { sheetsInWords } from "./insertSheet";

export const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** A name that every file system takes. */
export const fileName = (name: string, ending: string): string =>
  `${
    name
      .replace(/[\\/:*?"<>|\u0000-\u001f]+/g, " ")
      .replace(/\s+/g, " ")
      .trim() || "Workbook"
  }.${ending}`;

export interface FileChoice {
  readonly names: readonly string[];
  readonly save: (file: SavedFile) => void | Promise<void>;
}

export const saveFile: Action<FileChoice> = {
  key: "save-file",
  label: "Save as .xlsx",
  about:
    "Saves the chosen sheets as a file that any spreadsheet opens: VIV formulas as fixed figures, all others live.",
  async describe(workbook, { names }) {
    if (names.length === 0) return { text: "Choose at least one sheet.", possible: false, ask: false };
    const contents = await workbook.read(names);
    const fixed = contents.flatMap(({ cells }) =>
      cells.flat().filter(({ formula }) => formula !== undefined && hasFunction(formula)),
    );
    return {
      text: `Saves ${sheetsInWords(names)}, with ${counted(fixed.length, "VIV formula")} as fixed figures. The workbook does not change.`,
      possible: true,
      ask: false,
    };
  },
  async run(workbook, { names, save }, options) {
    const bytes = await workbook.toFile(names);
    stopIfCancelled(options);
    const name = fileName(names.length === 1 ? (names[0] ?? "") : "Vivarium Almanac", "xlsx");
    await save({ name, type: XLSX, bytes });
    return { text: `"${name}" is saved where your browser or program puts downloads. The workbook did not change.` };
  },
};
