import { isCallNode, isLiteralNode, isReferenceNode, type AstExpression } from "@borgar/fx";
import { isoOf, serialOfIso } from "../../functions/dates";
import { unitAt, type AnyDefinition, type Value } from "../../functions/define";
import { Problem } from "../../functions/problem";
import type { Evaluate } from "../columns/expression";
import { treeOf } from "../native/syntax";
import { areaOf } from "../sheets/shared/address";
import type { Use } from "./use";

/** What a sheet hands over for an argument: a cell, a block of cells, or what is written; undefined for anything else. */
const givenBy = (node: AstExpression | null, { cells }: Use): unknown => {
  if (node === null) return null;
  if (isLiteralNode(node)) return node.value;
  if (!isReferenceNode(node)) return undefined;
  const { top, left, bottom, right } = areaOf(node.value);
  const block = Array.from({ length: bottom - top + 1 }, (_, i) =>
    Array.from({ length: right - left + 1 }, (_, j) => {
      const cell = cells[top + i - 1]?.[left + j - 1] ?? null;
      return cell !== null && typeof cell === "object" ? (serialOfIso(cell.day) ?? null) : cell;
    }),
  );
  return block.length === 1 && block[0]?.length === 1 ? block[0][0] : block;
};

/**
 * What the formulas of a use answer, row by row of the cells that they fill; a date is ISO text. Undefined where a formula
 * holds more than one call, or its answer has to be waited for.
 */
export const answersOf = (
  definition: AnyDefinition,
  use: Use,
  evaluate: Evaluate,
): readonly (readonly (Value | undefined)[])[] => {
  const { answers, formulas } = use;
  const found = Array.from({ length: answers.rows }, () =>
    new Array<Value | undefined>(answers.columns).fill(undefined),
  );
  for (const { row, column, formula } of formulas) {
    const call = treeOf(formula);
    if (!call || !isCallNode(call)) continue;
    const given = call.arguments.map((one) => givenBy(one, use));
    if (given.includes(undefined)) continue;
    for (const [i, line] of evaluate(definition, given).cells.entries()) {
      for (const [j, value] of line.entries()) {
        const cells = found[row - answers.row + i];
        if (!cells || value instanceof Problem) continue;
        const unit = unitAt(definition.result.columns, i, Math.min(j, definition.result.columns.length - 1));
        const isDay = typeof value === "number" && (unit === "date" || unit === "date and time");
        cells[column - answers.column + j] = isDay ? isoOf(value) : value;
      }
      // A row that is shorter than the longest leaves the rest blank.
      found[row - answers.row + i]?.fill("", column - answers.column + line.length);
    }
  }
  return found;
};
