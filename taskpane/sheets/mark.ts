import type { Sheet } from "./sheet";

/** What a host writes down of a sheet, to know later from which template it was made, and in which system. */
export const markOf = ({ key, system }: Pick<Sheet, "key" | "system">): string =>
  system === "metric" ? key : `${key}:${system}`;
