import type { AnyDefinition } from "../../functions/define";
import type { Sheet } from "../sheets/sheet";
import { linkTo, plain } from "./markdown";
import { functionPath, functionTitle, sheetPath } from "./paths";

export const functionLink = (definition: AnyDefinition): string =>
  linkTo({ path: functionPath(definition), title: functionTitle(definition) });
export const sheetLink = (sheet: Sheet): string => linkTo({ path: sheetPath(sheet), title: sheet.name });

/** A line of a list: the page's link, and what it is about. */
export const functionLine = (definition: AnyDefinition): string =>
  `${functionLink(definition)}: ${plain(definition.summary)}`;
export const sheetLine = (sheet: Sheet): string => `${sheetLink(sheet)}: ${plain(sheet.sentence)}`;
