import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import { sheets } from "../../taskpane/sheets/catalogue";
import type { Sheet } from "../../taskpane/sheets/sheet";

/** The template that a sheet was drawn from. */
export const templateOf = (sheet: FWorksheet): Sheet | undefined => {
  const key: unknown = sheet.getSheet().getCustomMetadata()?.template;
  return sheets.find((one) => one.key === key);
};
