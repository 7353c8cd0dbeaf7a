import type { Workbook } from "../workbook";
import { impossible, type Words } from "./action";

/** Why no file can be handed over here, and what to do in its place; undefined where one can. */
export const noFile = (workbook: Workbook, instead: string): Words | undefined => {
  const why = workbook.takesNoFiles?.();
  return why === undefined ? undefined : impossible(`${why} ${instead}`);
};
