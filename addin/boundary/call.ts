import type { AnyDefinition, CellParameter, Values } from "../../functions/define";
import { Problem } from "../../functions/problem";
import type { System } from "../../functions/units";
import { argumentsOf, isRange, isSingle, isSpread, isUnits, unreadValues, type Argument } from "./argument";
import { longTableOf, type LongTable } from "./longTable";
import { readCell } from "./readCell";
import { readRange } from "./readRange";
import { readSystem } from "./readSystem";
import { spreadOf, type Spread } from "./spread";

/** A call whose ranges and single cells are read: what is left to do for each position of the spread. */
export interface Call<D extends AnyDefinition = AnyDefinition> {
  readonly definition: D;
  readonly args: readonly Argument[];
  readonly system: System;
  readonly spread: Spread;
  /** One object serves every cell of a spread: `calculate` takes it apart at once and keeps nothing. */
  readonly values: Values;
  /** The cells that are read anew at each position. */
  readonly varying: readonly Argument<CellParameter>[];
  /** The table that holds the rows of several animals, where one is given. */
  readonly table: LongTable | undefined;
  /** A required argument that is blank wherever the answer stands. */
  readonly blank: string | undefined;
  /** Whether any required argument is given wherever the answer stands. */
  readonly given: boolean;
}

/** What has been read of the required arguments. */
interface Required {
  blank: string | undefined;
  given: boolean;
}

const note = (required: Required, { name, parameter }: Argument, value: unknown): void => {
  if (parameter.optional) return;
  if (value === undefined) required.blank ??= name;
  else required.given = true;
};

const readRanges = (
  args: readonly Argument[],
  system: System,
  values: Values,
  required: Required,
): Problem | undefined => {
  for (const argument of args) {
    if (!isRange(argument)) continue;
    const read = readRange(argument, system);
    if (read instanceof Problem) return read;
    values[argument.name] = read;
    note(required, argument, read);
  }
  return undefined;
};

/** A single cell that is in order is read once for the whole spread; one with a problem stays, to answer in its turn. */
const isSettled = (argument: Argument<CellParameter>, system: System, values: Values, required: Required): boolean => {
  if (!isSingle(argument)) return false;
  const { name, parameter, block, place } = argument;
  const value = readCell(parameter, block[0][0], system, place);
  if (value instanceof Problem || (value === undefined && !parameter.optional)) return false;
  values[name] = value;
  note(required, argument, value);
  return true;
};

/** Reads what holds for the whole call, or answers the problem that spoils all of it. */
export const readCall = <D extends AnyDefinition>(definition: D, given: readonly unknown[]): Call<D> | Problem => {
  const args = argumentsOf(definition, given);
  const system = readSystem(args);
  if (system instanceof Problem) return system;

  const values = unreadValues(definition);
  const units = args.find(isUnits);
  if (units) values[units.name] = system;
  const table = longTableOf(definition, args, system);
  if (table instanceof Problem) return table;
  const others = table ? args.filter((argument) => !table.columns.has(argument)) : args;
  const required: Required = { blank: undefined, given: table !== undefined };
  const unreadable = readRanges(others, system, values, required);
  if (unreadable) return unreadable;

  const cells = others.filter(isSpread);
  const spread = spreadOf(cells);
  if (spread instanceof Problem) return spread;
  const varying = cells.filter((argument) => !isSettled(argument, system, values, required));
  const { blank, given: anyGiven } = required;
  return { definition, args, system, spread, values, varying, table, blank, given: anyGiven };
};
