import { PREFIX, type AnyDefinition } from "../../functions/define";
import type { Sheet } from "../sheets/sheet";

/** Where each function and each sheet has its page: the same for links, for the pane and for functions.json. */
export const functionPath = ({ name }: Pick<AnyDefinition, "name">): string => `functions/${name}`;
export const sheetPath = ({ key }: Pick<Sheet, "key">): string => `sheets/${key}`;

/** The file of a page, from the handbook's top. */
export const fileOf = (path: string): string => `${path}.html`;

export const functionTitle = ({ name }: Pick<AnyDefinition, "name">): string => `${PREFIX}.${name}`;
