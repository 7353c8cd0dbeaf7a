import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import { markedBy } from "../../taskpane/sheets/markedBy";
import type { Sheet } from "../../taskpane/sheets/sheet";

/** The template that a sheet was drawn from. */
export const templateOf = (sheet: FWorksheet): Sheet | undefined =>
  markedBy(sheet.getSheet().getCustomMetadata()?.template);
