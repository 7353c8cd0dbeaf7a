import { systems, type System } from "../../functions/units";
import { sheets } from "./catalogue";
import { inSystem } from "./shared/systems";
import type { Sheet } from "./sheet";

/** What a host writes down of a sheet, to know later from which template it was made, and in which system. */
export const markOf = ({ key, system }: Pick<Sheet, "key" | "system">): string =>
  system === "metric" ? key : `${key}:${system}`;

/** The template of such a mark; one without a system is metric. */
export const markedBy = (mark: unknown): Sheet | undefined => {
  if (typeof mark !== "string") return undefined;
  const [key, system = "metric"] = mark.split(":");
  const found = sheets.find((sheet) => sheet.key === key);
  return found && systems.includes(system as System) ? inSystem(found, system as System) : undefined;
};
