import type { Shaped, TableResult } from "../../../functions/define";
import { Problem, notAvailable } from "../../../functions/problem";
import type { Call } from "../call";
import { alone, type Reply } from "../reply";
import { lineOut, unitOf } from "./line";
import { answerOnce } from "./once";

/** Rows, as many as there are. */
export const answerTable = (call: Call<Shaped<TableResult>>): Reply => {
  const { columns } = call.definition.result;
  const answer = answerOnce(call);
  if (answer === undefined) return alone("");
  if (answer instanceof Problem) return alone(answer);
  if (answer.length === 0) return alone(notAvailable("nothing to answer"));
  return {
    cells: answer.map((row) => lineOut(row, columns, call.system)),
    unit: (_, column) => unitOf(columns, column),
  };
};
