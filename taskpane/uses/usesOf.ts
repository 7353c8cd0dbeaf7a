import type { AnyDefinition } from "../../functions/define";
import { givenTo } from "./given";
import { filtered, forMany } from "./ofSeveral";
import { rowByRow } from "./rowByRow";
import { wholeColumns } from "./standingAlone";
import type { Use } from "./use";

/** How a function is used on columns of a keeper's own: laid out from its definition and its first example. */
export const usesOf = (definition: AnyDefinition): readonly [Use, ...Use[]] => {
  const given = givenTo(definition);
  const isByRow = given.some(({ role }) => role === "row");
  const many = forMany(definition, given);
  const one = isByRow ? rowByRow(definition, given) : wholeColumns(definition, given);
  return [one, ...many, ...filtered(definition, given)];
};
