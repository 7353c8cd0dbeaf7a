import type { AnyDefinition, Value } from "../../functions/define";
import { asCell, call, flat, isBlock, type Given } from "./given";
import { address, Grid, standing } from "./grid";
import { answerHeadings, headingOf } from "./heading";
import { putOnce } from "./put";
import { cellsInWords, type Use } from "./use";
import { varied } from "./vary";

/** Rows of a sample whose example is one row. */
const ROWS = 3;

/** A formula a row, filled down. */
export const rowByRow = (definition: AnyDefinition, given: readonly Given[]): Use => {
  const grid = new Grid();
  const written = new Map<string, string>();
  const own = given.filter(({ role, argument }) => role === "row" && argument !== null);
  const before = new Map(
    given.filter(({ role }) => role === "before").map(({ name, argument }) => [name.replace("1", "2"), argument]),
  );
  const first = before.size > 0 ? 2 : 1;
  // Beside a day that is settled, such as today, what was noted lies further and further back.
  const isPast = given.some(
    ({ role, parameter }) => role === "once" && parameter.unit === "date" && parameter.reads === "cell",
  );
  const isFixed = own.some(({ parameter }) => parameter.kind === "text");
  const columns = own.map(({ name, parameter, argument }) => {
    const values = isBlock(argument)
      ? flat(argument)
      : Array.from({ length: isFixed ? 1 : ROWS }, (_, i) =>
          parameter.reads === "cell" ? varied(argument as Value, parameter, isPast ? -i : i) : null,
        );
    const all = [...(before.has(name) ? [before.get(name) as Value] : []), ...values];
    return {
      name,
      size: all.length,
      column: grid.column([headingOf(name, parameter.unit), ...all.map((value) => asCell(value, parameter))]),
    };
  });
  const last = Math.max(...columns.map(({ size }) => size));
  const across = definition.result.columns.length;
  const column = grid.free;
  for (const heading of answerHeadings(definition)) grid.column([heading]);
  putOnce(grid, given, written, standing);
  const formulas = Array.from({ length: last - first + 1 }, (_, i) => {
    const row = first + i;
    for (const { name, column } of columns) {
      written.set(name, address(column, row));
      if (before.has(name)) written.set(name.replace("2", "1"), address(column, row - 1));
    }
    return { row, column, formula: call(definition, given, written) };
  });
  const at = address(column, first);
  return {
    title: "Row by row, in a table of your own",
    cells: grid.cells,
    formulas,
    answers: { row: first, column, rows: formulas.length, columns: across },
    says:
      formulas.length === 1
        ? `Write it in ${at}. It answers ${cellsInWords(across)}.`
        : `Write it in ${at} and fill it down. It answers ${cellsInWords(across)} in each row.`,
  };
};
