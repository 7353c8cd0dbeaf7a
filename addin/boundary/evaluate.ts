import type { AnyDefinition, Answer, CellParameter, Parameter, RangeParameter } from "../../functions/define";
import { Problem, notAvailable, notUsable } from "../../functions/problem";
import { fromMetric, type System, type Unit } from "../../functions/units";
import { blockOf, size, type Block } from "./cell";
import { readCell } from "./readCell";
import { readRange } from "./readRange";

/** A block of answers and the unit of each of its cells, from which a host knows which are dates. */
export interface Reply {
  readonly cells: Answer[][];
  readonly unit: (row: number, column: number) => Unit;
}

interface Argument<P extends Parameter> {
  readonly name: string;
  readonly parameter: P;
  readonly block: Block;
  /** Its name, for a message. */
  readonly place: () => string;
}

const isUnits = (argument: Argument<Parameter>): argument is Argument<CellParameter> =>
  argument.parameter.kind === "units";
/** Whether the function answers for each of its cells. */
const isSpread = (argument: Argument<Parameter>): argument is Argument<CellParameter> =>
  argument.parameter.reads === "cell" && argument.parameter.kind !== "units";
const isRange = (argument: Argument<Parameter>): argument is Argument<RangeParameter> =>
  argument.parameter.reads === "range";
const isSingle = ({ block }: { readonly block: Block }): boolean => block.length === 1 && block[0].length === 1;

/** The system of the call, "metric" where the function takes none. */
const systemOf = (units: Argument<CellParameter> | undefined): System | Problem => {
  if (!units) return "metric";
  if (!isSingle(units)) return notUsable(`${units.name} holds ${size(units.block)}: give one cell`);
  const read = readCell(units.parameter, units.block[0][0], "metric", units.place);
  return read instanceof Problem ? read : ((read as System | undefined) ?? "metric");
};

/** What a definition's calls have in common. */
interface Form {
  readonly parameters: readonly (readonly [name: string, parameter: Parameter])[];
  /** A place for every argument. Its copies are of one shape to the engine, whose compiled code so outlasts a call. */
  readonly unread: Readonly<Record<string, unknown>>;
}

const forms = new WeakMap<AnyDefinition, Form>();

const formOf = (definition: AnyDefinition): Form => {
  const known = forms.get(definition);
  if (known) return known;
  const parameters = Object.entries(definition.parameters as Record<string, Parameter>);
  const form = { parameters, unread: Object.fromEntries(parameters.map(([name]) => [name, undefined])) };
  forms.set(definition, form);
  return form;
};

/** A call whose ranges and single cells are read: what is left to do for each position of the spread. */
interface Call {
  readonly definition: AnyDefinition;
  readonly system: System;
  /** One object serves every cell of a spread: `calculate` takes it apart at once and keeps nothing. */
  readonly values: Record<string, unknown>;
  readonly varying: readonly Argument<CellParameter>[];
  /** A required argument that is blank wherever the answer stands. */
  readonly blank: string | undefined;
  /** Whether any required argument is given wherever the answer stands. */
  readonly given: boolean;
}

/**
 * The answer of one position of the spread; undefined where its required cells are all blank. It stands outside of
 * `evaluate` for the sake of long columns: the engine compiles it once, and not anew at every call.
 */
const answerAt = (call: Call, row: number, column: number): unknown => {
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
  try {
    return definition.calculate(values);
  } catch {
    return notUsable(`${definition.name} met something that it was not made for: please report the arguments`);
  }
};

/** An answer on its way out: in the system of the call, and nothing that a sheet would show as 0. */
const outward = (answer: Answer, unit: Unit, system: System): Answer => {
  if (typeof answer !== "number") return answer;
  return Number.isFinite(answer)
    ? system === "metric"
      ? answer
      : fromMetric(answer, unit, system)
    : notUsable("the answer is no finite number: check the arguments");
};

const cellAt = (call: Call, row: number, column: number, unit: Unit): Answer => {
  const answer = answerAt(call, row, column) as Answer | undefined;
  return answer === undefined ? "" : outward(answer, unit, call.system);
};

/**
 * Calls a function as a sheet does: every argument a cell or a block of cells. Single cells, rows and columns repeat
 * over the others; one bad cell spoils its own answer. Never throws, and never answers null, NaN or Infinity.
 */
export const evaluate = (definition: AnyDefinition, given: readonly unknown[]): Reply => {
  const { result } = definition;
  const { columns } = result;
  const alone = (problem: Answer): Reply => ({ cells: [[problem]], unit: () => "text" });
  const { parameters, unread } = formOf(definition);
  const args = parameters.map(([name, parameter], i) => ({
    name,
    parameter,
    block: blockOf(given[i]),
    place: () => name,
  }));

  const units = args.find(isUnits);
  const system = systemOf(units);
  if (system instanceof Problem) return alone(system);

  const values = { ...unread };
  if (units) values[units.name] = system;
  const blanks: string[] = []; // required arguments that are blank wherever the answer stands
  let anyGiven = false;
  for (const { name, parameter, block } of args.filter(isRange)) {
    const read = readRange(name, parameter, block, system);
    if (read instanceof Problem) return alone(read);
    values[name] = read;
    if (parameter.optional) continue;
    if (read === undefined) blanks.push(name);
    else anyGiven = true;
  }

  const spread = args.filter(isSpread);
  const rowCount = Math.max(1, ...spread.map(({ block }) => block.length));
  const columnCount = Math.max(1, ...spread.map(({ block }) => block[0].length));
  for (const { name, block } of spread) {
    const width = block[0].length;
    const tall = block.length !== 1 && block.length !== rowCount;
    if (tall || (width !== 1 && width !== columnCount)) {
      const other = spread.find((argument) =>
        tall ? argument.block.length === rowCount : argument.block[0].length === columnCount,
      ) as Argument<CellParameter>;
      return alone(
        notUsable(`${name} holds ${size(block)} and ${other.name} ${size(other.block)}: give blocks that fit`),
      );
    }
  }

  // A single cell that is in order is read once for the whole spread; one with a problem stays, to answer in its turn.
  const varying: Argument<CellParameter>[] = [];
  for (const argument of spread) {
    const { name, parameter, block, place } = argument;
    const value = isSingle(argument) ? readCell(parameter, block[0][0], system, place) : undefined;
    const settled = isSingle(argument) && !(value instanceof Problem) && (parameter.optional || value !== undefined);
    if (settled) {
      values[name] = value;
      if (!parameter.optional) anyGiven = true;
    } else {
      varying.push(argument);
    }
  }

  const call: Call = { definition, system, values, varying, blank: blanks[0], given: anyGiven };

  if (result.shape === "cell") {
    const unit = result.columns[0].unit;
    const cells: Answer[][] = [];
    for (let row = 0; row < rowCount; row++) {
      const line = [cellAt(call, row, 0, unit)]; // grown, not reserved: most answers are columns, and are faster so
      for (let column = 1; column < columnCount; column++) line.push(cellAt(call, row, column, unit));
      cells.push(line);
    }
    return { cells, unit: () => unit };
  }

  const unitOf = (column: number): Unit => columns[column]?.unit ?? "text";
  const lineOut = (answers: readonly Answer[]): Answer[] =>
    answers.map((answer, column) => outward(answer, unitOf(column), system));

  if (result.shape === "columns") {
    if (rowCount > 1 && columnCount > 1) {
      return alone(
        notUsable(
          `${definition.name} answers ${columns.length} cells for each: give one row or one column, not a block`,
        ),
      );
    }
    const lines = Array.from({ length: Math.max(rowCount, columnCount) }, (_, i): Answer[] => {
      const answer = answerAt(call, rowCount > 1 ? i : 0, columnCount > 1 ? i : 0) as
        readonly Answer[] | Problem | undefined;
      if (answer === undefined) return columns.map(() => "");
      return answer instanceof Problem ? columns.map(() => answer) : lineOut(answer);
    });
    // Over a row, the answers stand below it.
    return columnCount > 1
      ? { cells: columns.map((_, j) => lines.map((line) => line[j] as Answer)), unit: (row) => unitOf(row) }
      : { cells: lines, unit: (_, column) => unitOf(column) };
  }

  const many = spread.find((argument) => !isSingle(argument));
  if (many) return alone(notUsable(`${many.name} holds ${size(many.block)}: give one cell`));
  const answer = answerAt(call, 0, 0) as readonly (readonly Answer[])[] | readonly Answer[] | Problem | undefined;
  if (answer === undefined) return alone("");
  if (answer instanceof Problem) return alone(answer);

  if (result.shape === "list") {
    const { block: like } = args.find(({ name }) => name === result.like) as Argument<Parameter>;
    const unit = result.columns[0].unit;
    const listed = (answer as readonly Answer[]).map((one) => outward(one, unit, system));
    return like.length === 1
      ? { cells: [listed], unit: () => unit }
      : { cells: listed.map((one) => [one]), unit: () => unit };
  }
  const cells = (answer as readonly (readonly Answer[])[]).map(lineOut);
  return cells.length === 0 ? alone(notAvailable("nothing to answer")) : { cells, unit: (_, column) => unitOf(column) };
};
