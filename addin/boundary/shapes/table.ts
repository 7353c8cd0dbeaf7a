import { unitAt, type Shaped, type TableResult } from "../../../functions/define";
import { Problem, notAvailable } from "../../../functions/problem";
import type { Call } from "../call";
import { alone, type Reply } from "../reply";
import { lineOut } from "./line";
import { answerOnce } from "./once";

/** Rows, as many as there are. */
export const answerTable = (call: Call<Shaped<TableResult>>): Reply => {
  const { columns } = call.definition.result;
  const answer = answerOnce(call);
  if (answer === undefined) return alone("");
  if (answer instanceof Problem) return alone(answer);
  if (answer.length === 0) return alone(notAvailable("nothing to answer"));
  return {
    cells: answer.map((line, row) => lineOut(line, columns, call.system, row)),
    unit: (row, column) => unitAt(columns, row, column),
  };
};
