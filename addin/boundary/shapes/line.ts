import { unitAt, type Answer, type Column } from "../../../functions/define";
import type { System } from "../../../functions/units";
import { outward } from "../reply";

/** A row of answers on its way out, each in the unit of its column. */
export const lineOut = (answers: readonly Answer[], columns: readonly Column[], system: System, row = 0): Answer[] =>
  answers.map((answer, column) => outward(answer, unitAt(columns, row, column), system));
