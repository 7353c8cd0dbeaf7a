import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import { asItStands } from "../../taskpane/sheets/growing";
import { markedBy } from "../../taskpane/sheets/markedBy";
import type { Sheet } from "../../taskpane/sheets/sheet";

/** The template that a sheet was drawn from, as long as it is now. */
export const templateOf = (sheet: FWorksheet): Sheet | undefined => {
  const own = sheet.getSheet();
  const template = markedBy(own.getCustomMetadata()?.template);
  return template && asItStands(template, (row, column) => own.getCellRaw(row, column)?.v, own.getRowCount());
};
