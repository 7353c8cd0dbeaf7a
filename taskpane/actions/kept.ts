import type { KeptWorkbook } from "../workbook";
import { WorkbookError } from "../workbook";
import { counted, sheetsInWords, type Action } from "./action";

export const KEPT =
  "Your work is kept in this browser's own storage, a few seconds behind you, and offered again when you come back. It never leaves this machine. A browser that is told to forget its data forgets it too: save a file of what matters.";

const gone = (): WorkbookError => new WorkbookError("This program keeps no workbooks. Nothing was changed.");

const two = (part: number): string => String(part).padStart(2, "0");

/** What is known of it, in a sentence: "Years of box 3", 4 sheets, changed 2026-10-05 14:07, not saved as a file. */
export const keptInWords = ({ title, sheets, changed, saved }: KeptWorkbook): string => {
  const at = new Date(changed);
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join("-");
  return `"${title}", ${counted(sheets, "sheet")}, changed ${day} ${two(at.getHours())}:${two(at.getMinutes())}, ${saved ? "saved as a file too" : "not saved as a file"}.`;
};

/** There where a page of ours keeps what was worked on in it. */
export const restoreKept: Action<KeptWorkbook> = {
  key: "restore-kept",
  label: "Go on with it",
  about: "Puts what was kept in the place of the sheets that are open.",
  async describe(workbook) {
    return {
      text: `It will take the place of ${sheetsInWords(await workbook.sheetNames())}. Undo brings those back.`,
      possible: workbook.kept !== undefined,
      ask: true,
    };
  },
  async run(workbook, { id, title }) {
    if (!workbook.kept) throw gone();
    const { sheets, left } = await workbook.kept.restore(id);
    return { text: `"${title}" is open again: ${counted(sheets.length, "sheet")}.`, left };
  },
};

export const discardKept: Action<KeptWorkbook> = {
  key: "discard-kept",
  label: "Throw it away",
  about: "Takes what was kept out of the browser's storage.",
  describe(workbook, kept) {
    return {
      text: `${keptInWords(kept)} It will be gone for good: nothing brings it back.`,
      possible: workbook.kept !== undefined,
      ask: true,
    };
  },
  async run(workbook, { id, title }) {
    if (!workbook.kept) throw gone();
    await workbook.kept.discard(id);
    return { text: `"${title}" is thrown away.` };
  },
};
