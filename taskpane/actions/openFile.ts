import type { Form } from "../text/form";
import { ambiguousWords, formWords, guessForm, type FormGuess } from "../text/guessForm";
import { textOf } from "../text/textOf";
import { WorkbookError } from "../workbook";
import { counted, impossible, sheetsInWords, type Action } from "./action";

export interface OpenedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the keeper has said of a CSV file's form. */
  readonly said?: Partial<Form>;
}

/** How a CSV file will be read; undefined for a file of another kind. */
export const formOf = ({ name, bytes, said }: OpenedFile): FormGuess | undefined =>
  /\.csv$/i.test(name) ? guessForm(textOf(bytes), said) : undefined;

/** Only where the workbook can open files: in a spreadsheet of our own. `choice` is undefined until a file is chosen. */
export const openFile: Action<OpenedFile | undefined> = {
  key: "open-file",
  label: "Open",
  about:
    "Opens an .xlsx or CSV file of yours here, in place of the sheets that are open, to go on working with VIV functions.",
  async describe(workbook, file) {
    if (!workbook.open) return impossible(`${workbook.program} opens files itself: use its own menu.`);
    if (!file) return impossible("Choose an .xlsx or CSV file first.");
    if (!/\.(xls[xm]|csv)$/i.test(file.name))
      return impossible(`"${file.name}" is neither .xlsx nor CSV. Save it as one of these, then open it.`);
    const guess = formOf(file);
    if (guess?.ambiguous !== undefined) return impossible(ambiguousWords(guess.ambiguous));
    const names = await workbook.sheetNames();
    const { sheets, left } = (await workbook.look?.(file.name, file.bytes, file.said)) ?? { sheets: [], left: [] };
    return {
      text:
        `"${file.name}"${sheets.length > 0 ? `, ${counted(sheets.length, "sheet")},` : ""} will take the place of ` +
        `${sheetsInWords(names)}.${guess ? ` It is read with ${formWords(guess.form)}.` : ""} What you have not saved as a file goes${workbook.undoes ? "; Undo brings it back" : ""}. The file itself is only read.` +
        (left.length > 0 ? " What cannot be carried over:" : ""),
      ...(left.length > 0 ? { list: left } : {}),
      possible: true,
      ask: true,
    };
  },
  async run(workbook, file) {
    if (!workbook.open || !file) throw new WorkbookError("Choose a file first. Nothing was changed.");
    const { sheets, left } = await workbook.open(file.name, file.bytes, file.said);
    return {
      text:
        `"${file.name}" is open: ${counted(sheets.length, "sheet")}. The file itself stays as it is: save the workbook to keep your work.` +
        (left.length > 0 ? " Not carried over:" : ""),
      left,
    };
  },
};
