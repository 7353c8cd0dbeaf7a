import { unitAt, type Answer, type ColumnsResult, type Shaped } from "../../../functions/define";
import { Problem, notUsable } from "../../../functions/problem";
import { answerAt } from "../calculate";
import type { Call } from "../call";
import { alone, type Reply } from "../reply";
import { lineOut } from "./line";

type ColumnsCall = Call<Shaped<ColumnsResult>>;

const lineAt = (call: ColumnsCall, row: number, column: number): Answer[] => {
  const { columns } = call.definition.result;
  const answer = answerAt(call, row, column);
  if (answer === undefined) return columns.map(() => "");
  return answer instanceof Problem ? columns.map(() => answer) : lineOut(answer, columns, call.system);
};

/** A row of several cells for each position of a column; over a row, the answers stand below it. */
export const answerColumns = (call: ColumnsCall): Reply => {
  const { definition, spread } = call;
  const { columns } = definition.result;
  if (spread.rows > 1 && spread.columns > 1) {
    return alone(
      notUsable(`${definition.name} answers ${columns.length} cells for each: give one row or one column, not a block`),
    );
  }
  if (spread.columns === 1) {
    const cells = Array.from({ length: spread.rows }, (_, row) => lineAt(call, row, 0));
    return { cells, unit: (_, column) => unitAt(columns, 0, column) };
  }
  const lines = Array.from({ length: spread.columns }, (_, column) => lineAt(call, 0, column));
  return {
    cells: columns.map((_, i) => lines.map((line) => line[i] as Answer)),
    unit: (row) => unitAt(columns, 0, row),
  };
};
