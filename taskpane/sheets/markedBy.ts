import { systems, type System } from "../../functions/units";
import { sheets } from "./catalogue";
import { inSystem } from "./shared/systems";
import type { Sheet } from "./sheet";

/** The template of a mark (mark.ts), which brings all sheets with it; a mark without a system is metric. */
export const markedBy = (mark: unknown): Sheet | undefined => {
  if (typeof mark !== "string") return undefined;
  const [key, system = "metric"] = mark.split(":");
  const found = sheets.find((sheet) => sheet.key === key);
  return found && systems.includes(system as System) ? inSystem(found, system as System) : undefined;
};
