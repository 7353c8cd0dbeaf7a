import { topics } from "../../functions/catalogue";
import { cautions, type CautionKey } from "../../functions/cautions";
import type { AnyDefinition } from "../../functions/define";
import { referenceOf } from "../../functions/reference";
import { sheets } from "../sheets/catalogue";
import type { Sheet } from "../sheets/sheet";

export interface FunctionItem {
  readonly kind: "function";
  readonly id: string;
  readonly definition: AnyDefinition;
  readonly topic: string;
}
export interface SheetItem {
  readonly kind: "sheet";
  readonly id: string;
  readonly sheet: Sheet;
}
/** A caution, and the functions that carry it. */
export interface CautionItem {
  readonly kind: "caution";
  readonly id: CautionKey;
  readonly functions: readonly string[];
}
export type Item = FunctionItem | SheetItem | CautionItem;

export const functionItems: readonly FunctionItem[] = topics.flatMap(({ title, functions }) =>
  functions.map((definition) => ({
    kind: "function" as const,
    id: definition.name,
    definition: referenceOf(definition),
    topic: title,
  })),
);
const sheetItems: readonly SheetItem[] = sheets.map((sheet) => ({ kind: "sheet", id: sheet.key, sheet }));
const cautionItems: readonly CautionItem[] = (Object.keys(cautions) as CautionKey[]).map((id) => ({
  kind: "caution",
  id,
  functions: functionItems
    .filter(({ definition }) => definition.cautions.includes(id))
    .map(({ definition }) => definition.name),
}));

/** All that can be found. */
export const items: readonly Item[] = [...functionItems, ...sheetItems, ...cautionItems];
