import { isCallNode } from "@borgar/fx";
import { catalogue } from "../../functions/catalogue";
import { unitAt } from "../../functions/define";
import { treeOf } from "../native/syntax";
import { formats } from "../sheets/sheet";
import { functionsIn } from "./formulas";

/**
 * The date formats of what a formula answers, by row and column of its answer: of one that is a single call of ours.
 * Excel shows a date of such a formula by the answer's own format, and knows none of the cell: once the answer is a
 * figure, only the cell's format makes it a date.
 */
export const datedFormat = (formula: string): ((row: number, column: number) => string | undefined) => {
  const [name] = functionsIn(formula);
  const definition = isCallNode(treeOf(formula) ?? null)
    ? catalogue.find(
        (one) => one.name === name && formula.replace(/^=\s*/, "").toUpperCase().startsWith(`VIV.${name}(`),
      )
    : undefined;
  return (row, column) => {
    if (!definition) return undefined;
    const { columns } = definition.result;
    const unit = unitAt(columns, row, Math.min(column, columns.length - 1));
    return unit === "date" ? formats.date : unit === "date and time" ? formats.moment : undefined;
  };
};
