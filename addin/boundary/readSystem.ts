import { Problem, notUsable } from "../../functions/problem";
import type { System } from "../../functions/units";
import { isSingle, isUnits, type Argument } from "./argument";
import { size } from "./cell";
import { readCell } from "./readCell";

/** The system of the call, "metric" where the function takes none. */
export const readSystem = (args: readonly Argument[]): System | Problem => {
  const units = args.find(isUnits);
  if (!units) return "metric";
  if (!isSingle(units)) return notUsable(`${units.name} holds ${size(units.block)}: give one cell`);
  const read = readCell(units.parameter, units.block[0][0], "metric", units.place);
  return read instanceof Problem ? read : ((read as System | undefined) ?? "metric");
};
