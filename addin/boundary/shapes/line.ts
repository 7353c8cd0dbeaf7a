import type { Answer, Column } from "../../../functions/define";
import type { System, Unit } from "../../../functions/units";
import { outward } from "../reply";

export const unitOf = (columns: readonly Column[], column: number): Unit => columns[column]?.unit ?? "text";

/** A row of answers on its way out, each in the unit of its column. */
export const lineOut = (answers: readonly Answer[], columns: readonly Column[], system: System): Answer[] =>
  answers.map((answer, column) => outward(answer, unitOf(columns, column), system));
