import type { SavedFile } from "./savedFile";
import { CHOOSE_A_SHEET, counted, impossible, sheetsInWords, stopIfCancelled, type Action } from "./action";
import { noFile } from "./files";
import { hasFunction } from "./formulas";
import { WorkbookError } from "../workbook";
import { workedIfFrozen } from "./freeze";
import { workedLook, workedRows, WORKED } from "./worked";

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

const ENDS = "where your browser or program puts downloads";

/** For the keeper's own work. There where the workbook can save itself: Excel does it by its own menu. */
export const saveWorkbook: Action<Pick<FileChoice, "save">> = {
  key: "save-workbook",
  label: "Save the workbook",
  about:
    "For your own work: every sheet as it stands, with every formula alive, VIV formulas included. The preview opens it " +
    "again and works it out; so does an Excel that has the add-in. Other programs show the last figures at best.",
  describe(workbook) {
    return workbook.save
      ? { text: "Saves the whole workbook as an .xlsx file. The workbook does not change.", possible: true, ask: false }
      : impossible(`${workbook.program} saves its workbooks itself: use its own menu.`);
  },
  async run(workbook, { save }, options) {
    if (!workbook.save) throw new WorkbookError("This program saves its workbooks itself: use its own menu.");
    const name = fileName(workbook.title?.() ?? "Vivarium Almanac", "xlsx");
    await workbook.save((bytes) => {
      stopIfCancelled(options);
      return save({ name, type: XLSX, bytes });
    });
    return { text: `"${name}" is saved ${ENDS}, with all its formulas. Open it here to go on.` };
  },
};

export const saveFile: Action<FileChoice> = {
  key: "save-file",
  label: "Save for others",
  about:
    "For people without the add-in: the chosen sheets as a file that any spreadsheet opens, VIV formulas as fixed figures, all " +
    `others alive. The formulas are kept on the sheet "${WORKED}", and Thaw puts them back where the add-in is.`,
  async describe(workbook, { names }) {
    const no = noFile(workbook, 'Make a "Shared copy" below, and save that by the program\'s own menu.');
    if (no) return no;
    if (names.length === 0) return impossible(CHOOSE_A_SHEET);
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
    const worked = workedIfFrozen(await workbook.read(), names);
    const rows = worked && workedRows(worked.entries);
    const bytes = await workbook.toFile(
      names.filter((name) => name !== worked?.name),
      worked && rows ? [{ name: worked.name, cells: rows, look: workedLook(rows) }] : [],
    );
    stopIfCancelled(options);
    const title = workbook.title?.();
    const name = fileName(
      title !== undefined
        ? `${title} for others`
        : names.length === 1
          ? (names[0] ?? "")
          : "Vivarium Almanac for others",
      "xlsx",
    );
    await save({ name, type: XLSX, bytes });
    return { text: `"${name}" is saved ${ENDS}. The workbook did not change, and is not saved by this.` };
  },
};
