import type { Answer, CellResult, Shaped } from "../../../functions/define";
import type { Unit } from "../../../functions/units";
import { answerAt } from "../calculate";
import type { Call } from "../call";
import { outward, type Reply } from "../reply";

type CellCall = Call<Shaped<CellResult>>;

const cellAt = (call: CellCall, row: number, column: number, unit: Unit): Answer => {
  const answer = answerAt(call, row, column);
  return answer === undefined ? "" : outward(answer, unit, call.system);
};

/** A cell for each position of the spread. */
export const answerCell = (call: CellCall): Reply => {
  const [{ unit }] = call.definition.result.columns;
  const { rows, columns } = call.spread;
  const cells: Answer[][] = [];
  for (let row = 0; row < rows; row++) {
    const line = [cellAt(call, row, 0, unit)]; // grown, not reserved: most answers are columns, and are faster so
    for (let column = 1; column < columns; column++) line.push(cellAt(call, row, column, unit));
    cells.push(line);
  }
  return { cells, unit: () => unit };
};
