import type { AnyDefinition, Result } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { readCall, type Call } from "./call";
import { alone, type Reply } from "./reply";
import { answerCell } from "./shapes/cell";
import { answerColumns } from "./shapes/columns";
import { answerList } from "./shapes/list";
import { answerTable } from "./shapes/table";

export type { Reply } from "./reply";

type Of<S extends Result["shape"]> = Extract<AnyDefinition, { readonly result: { readonly shape: S } }>;

const answers = <S extends Result["shape"]>(shape: S, definition: AnyDefinition): definition is Of<S> =>
  definition.result.shape === shape;

const answered = <D extends AnyDefinition>(
  definition: D,
  given: readonly unknown[],
  answer: (call: Call<D>) => Reply,
): Reply => {
  const call = readCall(definition, given);
  return call instanceof Problem ? alone(call) : answer(call);
};

/**
 * Calls a function as a sheet does: every argument a cell or a block of cells. Single cells, rows and columns repeat
 * over the others; one bad cell spoils its own answer. Never throws, and never answers null, NaN or Infinity.
 */
export const evaluate = (definition: AnyDefinition, given: readonly unknown[]): Reply => {
  if (answers("cell", definition)) return answered(definition, given, answerCell);
  if (answers("columns", definition)) return answered(definition, given, answerColumns);
  if (answers("list", definition)) return answered(definition, given, answerList);
  return answered(definition, given, answerTable);
};
