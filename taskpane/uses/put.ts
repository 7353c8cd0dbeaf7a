import type { Value } from "../../functions/define";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { MONTHS } from "../sheets/shared/part";
import { asCell, flat, type Given } from "./given";
import { address, type Grid } from "./grid";
import { headingOf, labelOf } from "./heading";

/** How a place is written into the formula. */
type Refer = (column: number, first: number, last?: number, across?: number) => string;

/** What serves the whole table, in columns beside it: labelled cells, then blocks of a plan or of months. */
export const putOnce = (grid: Grid, given: readonly Given[], written: Map<string, string>, refer: Refer): void => {
  const once = given.filter(({ role, argument }) => role === "once" && argument !== null);
  const cells = once.filter(({ parameter }) => parameter.reads === "cell");
  if (cells.length > 0) {
    grid.gap();
    grid.column(cells.map(({ name, parameter }) => labelOf(name, parameter.unit)));
    const column = grid.column(cells.map(({ argument, parameter }) => asCell(argument as Value, parameter)));
    for (const [row, { name }] of cells.entries()) written.set(name, refer(column, row));
  }
  let months = false;
  for (const { name, parameter, argument } of once.filter(({ parameter }) => parameter.reads === "range")) {
    const values = flat(argument).map((value) => asCell(value, parameter));
    if (parameter.kind === "plan" || !months) {
      grid.gap();
      grid.column(parameter.kind === "plan" ? ["Winter plan", ...PLAN_ROWS] : ["Month", ...MONTHS]);
    }
    months ||= parameter.kind === "months";
    const column = grid.column([parameter.kind === "plan" ? "Date" : headingOf(name, parameter.unit), ...values]);
    written.set(name, refer(column, 1, values.length));
  }
};

/** Columns that are read whole, each under its heading, beside a column of names where there is one. */
export const putColumns = (grid: Grid, given: readonly Given[], written: Map<string, string>): void => {
  const columns = given.filter(({ role, argument }) => role === "column" && argument !== null);
  if (columns.some(({ parameter }) => parameter.kind === "months")) grid.column(["Month", ...MONTHS]);
  for (const { name, parameter, argument } of columns) {
    if (parameter.kind === "rows") {
      const rows = argument as readonly (readonly (Value | null)[])[];
      const lines = parameter.columns.map(([heading, cell], i) =>
        grid.column([headingOf(heading, cell.unit), ...rows.map((row) => asCell(row[i] ?? null, cell))]),
      );
      written.set(name, address(lines[0] as number, 1, rows.length, parameter.columns.length));
    } else {
      const values = flat(argument).map((value) => asCell(value, parameter));
      const column = grid.column([headingOf(name, parameter.unit), ...values]);
      written.set(name, address(column, 1, values.length));
    }
  }
};
