import type { Answer } from "../../functions/define";
import { notUsable } from "../../functions/problem";
import { fromMetric, type System, type Unit } from "../../functions/units";

/** A block of answers and the unit of each of its cells, from which a host knows which are dates. */
export interface Reply {
  readonly cells: Answer[][];
  readonly unit: (row: number, column: number) => Unit;
}

/** One cell for the whole call: a problem, or nothing. */
export const alone = (answer: Answer): Reply => ({ cells: [[answer]], unit: () => "text" });

/** An answer on its way out: in the system of the call, and nothing that a sheet would show as 0. */
export const outward = (answer: Answer, unit: Unit, system: System): Answer => {
  if (typeof answer !== "number") return answer;
  if (!Number.isFinite(answer)) return notUsable("the answer is no finite number: check the arguments");
  return system === "metric" ? answer : fromMetric(answer, unit, system);
};
