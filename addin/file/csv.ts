import { formats } from "../../taskpane/sheets/sheet";
import { WorkbookError } from "../../taskpane/workbook";
import type { Form } from "../../taskpane/text/form";
import { ambiguousWords, guessForm } from "../../taskpane/text/guessForm";
import { misfitsInWords, readTable } from "../../taskpane/text/readTable";
import { isUtf8, textOf } from "../../taskpane/text/textOf";
import type { FileCell, ReadFile } from "./book";
import { plainFileSheet } from "./plain";

/** A name for a sheet without the signs that a sheet's name can't have. */
const sheetName = (file: string): string =>
  file
    .replace(/\.[^.]*$/, "")
    .replace(/[\\/?*:[\]]/g, " ")
    .trim()
    .slice(0, 31) || "Sheet1";

/** A CSV file as a workbook of one sheet. What has been said of its form is taken as said, and the rest guessed. */
export const readCsv = (name: string, bytes: Uint8Array, said: Partial<Form> = {}): ReadFile => {
  const text = textOf(bytes);
  const { form, ambiguous } = guessForm(text, said);
  if (ambiguous !== undefined) throw new WorkbookError(`${ambiguousWords(ambiguous)} Nothing was changed.`);
  const { cells, misfits } = readTable(text, form);
  return {
    sheets: [
      {
        ...plainFileSheet({ name: sheetName(name), cells: [] }),
        cells: cells.map((row) =>
          row.map((cell): FileCell =>
            typeof cell === "object" && cell !== null
              ? { value: cell.date, format: Number.isInteger(cell.date) ? formats.date : formats.moment }
              : { value: cell },
          ),
        ),
      },
    ],
    left: [
      ...(isUtf8(bytes)
        ? []
        : ["letters that are not in UTF-8 were read as Windows western ones: look at names with accents"]),
      ...misfitsInWords(misfits),
    ],
  };
};
