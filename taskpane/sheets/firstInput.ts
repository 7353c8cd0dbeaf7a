import { areaOf } from "./shared/address";
import type { Sheet } from "./sheet";

/** Where a keeper begins to fill in a sheet: its topmost input, the leftmost of these, counted from 0; A1 where it has none. */
export const firstInput = ({ blocks }: Sheet): { readonly row: number; readonly column: number } => {
  const [first] = blocks
    .filter(({ role }) => role === "input")
    .map(({ at }) => areaOf(at))
    .sort((one, other) => one.top - other.top || one.left - other.left);
  return { row: (first?.top ?? 1) - 1, column: (first?.left ?? 1) - 1 };
};
