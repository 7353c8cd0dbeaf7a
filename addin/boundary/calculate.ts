import type { AnyDefinition, Values } from "../../functions/define";
import { EntryProblem, Problem, notAvailable, notUsable } from "../../functions/problem";
import type { Call } from "./call";
import { faults } from "./faults";
import { placeOf } from "./place";
import { readCell } from "./readCell";
import { supplies } from "./supplies";

/**
 * What a function answers to arguments that are read. The only place that calls `calculate`: what a function is handed
 * beside them joins here.
 */
const calculated = <D extends AnyDefinition>(definition: D, values: Values): ReturnType<D["calculate"]> | Problem => {
  const supplied = definition.needs && supplies[definition.needs]();
  if (supplied instanceof Problem) return supplied;
  try {
    return definition.calculate(values, supplied) as ReturnType<D["calculate"]>;
  } catch (error) {
    faults.report(definition.name, error);
    return notUsable(`${definition.name} met something that it was not made for: please report the arguments`);
  }
};

/** A problem with an entry of a list, which tells where the entry stands as well as it is known. */
const placed = ({ args, table }: Call, problem: EntryProblem): Problem => {
  const argument = args.find(({ name }) => name === problem.list);
  if (!argument) return problem;
  const own = table?.columns.has(argument) ? { ...argument, rows: table.rows() } : argument;
  return new Problem(problem.code, `${placeOf(own, problem.entry)} ${problem.words}`);
};

/**
 * The answer of one position of the spread; undefined where its required cells are all blank. It stands outside of
 * `evaluate` for the sake of long columns: the engine compiles it once, and not anew at every call.
 */
export const answerAt = <D extends AnyDefinition>(
  call: Call<D>,
  row: number,
  column: number,
): ReturnType<D["calculate"]> | Problem | undefined => {
  const { definition, system, values, varying } = call;
  let { blank, given } = call;
  for (const { name, parameter, block, place } of varying) {
    const line = block[block.length === 1 ? 0 : row] as readonly unknown[];
    const value = readCell(parameter, line[line.length === 1 ? 0 : column], system, place);
    if (value instanceof Problem) return value;
    values[name] = value;
    if (parameter.optional) continue;
    if (value === undefined) blank ??= name;
    else given = true;
  }
  if (blank !== undefined) return given ? notAvailable(`${blank} is blank`) : undefined;
  const missing = call.table?.fill(values);
  if (missing) return missing;
  const answer = calculated(definition, values);
  return answer instanceof EntryProblem ? placed(call, answer) : answer;
};
