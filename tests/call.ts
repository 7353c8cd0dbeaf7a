import { evaluate } from "../addin/boundary/evaluate";
import type { AnyDefinition } from "../functions/define";
import { Problem } from "../functions/problem";

/** A function's answer as a sheet shows it: rows of values, a problem as "#VALUE! its words". */
export const call = (definition: AnyDefinition, ...given: readonly unknown[]): unknown[][] =>
  evaluate(definition, given).cells.map((row) =>
    row.map((cell) => (cell instanceof Problem ? `${cell.code} ${cell.message}` : cell)),
  );

/** The one cell of an answer of one cell. */
export const callCell = (definition: AnyDefinition, ...given: readonly unknown[]): unknown => {
  const cells = call(definition, ...given);
  if (cells.length !== 1 || cells[0]?.length !== 1) throw new Error(`one cell wanted, got ${JSON.stringify(cells)}`);
  return cells[0][0];
};

/** A column of cells. */
export const down = (values: readonly unknown[]): unknown[][] => values.map((value) => [value]);
