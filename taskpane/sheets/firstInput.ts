import { areaOf } from "./shared/address";
import type { Sheet } from "./sheet";

/**
 * Where a keeper begins to fill in a sheet, counted from 0: the topmost blank input that it asks for, where there is none its
 * topmost input, and A1 where it takes none. Of one row it is the leftmost.
 */
export const firstInput = ({
  blocks,
  needed,
}: Pick<Sheet, "blocks" | "needed">): { readonly row: number; readonly column: number } => {
  const corners = needed.map(({ at }) => at.replace(/:.*/, ""));
  const inputs = blocks.filter(({ role }) => role === "input");
  const asked = inputs.filter(({ at, rows }) => rows[0]?.[0] === null && corners.includes(at));
  const [first] = (asked.length > 0 ? asked : inputs)
    .map(({ at }) => areaOf(at))
    .sort((one, other) => one.top - other.top || one.left - other.left);
  return { row: (first?.top ?? 1) - 1, column: (first?.left ?? 1) - 1 };
};
