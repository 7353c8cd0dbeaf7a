import { namesOf, type AnyDefinition, type Values } from "../../functions/define";
import { Problem, notAvailable, notUsable } from "../../functions/problem";
import { byName, keyOf, type Group } from "../../functions/shared/byName";
import { nearest } from "../../functions/shared/nearest";
import type { System } from "../../functions/units";
import { isRange, type Argument } from "./argument";
import { isAllBlank, isBlank, isLine, line, plain } from "./cell";
import { placeOf } from "./place";
import { readCell } from "./readCell";
import { readRange } from "./readRange";

/**
 * A long table of several animals: one pass over its names finds the rows of each, and only the rows of those that are
 * asked for are read, once each. What is wrong in one animal's rows spoils no other's answer.
 */
export interface LongTable {
  /** The arguments that are columns of it. */
  readonly columns: ReadonlySet<Argument>;
  /** Puts the rows of the one that is asked for in their places, or answers the problem with them. */
  readonly fill: (values: Values) => Problem | undefined;
  /** Where the rows that were put there stand in the table. */
  readonly rows: () => readonly number[];
}

interface Column {
  readonly argument: Argument;
  readonly cells: readonly unknown[];
}

const isColumn = ({ parameter }: Argument): boolean =>
  parameter.reads === "range" ? parameter.kind === "column" : parameter.latest === true;

/** The latest of a column's moments; the column is read like a list of them. */
const latest = (values: readonly unknown[]): number | undefined =>
  values.reduce<number | undefined>(
    (last, value) => (typeof value === "number" && (last === undefined || value > last) ? value : last),
    undefined,
  );

/** One animal's cells of a column, read as the parameter says. */
const readColumn = ({ argument, cells }: Column, { rows, name }: Group, system: System): unknown => {
  const own = { ...argument, block: [rows.map((row) => cells[row])] as const, rows };
  if (isRange(own)) {
    return (
      readRange(own, system) ?? (own.parameter.optional ? undefined : notAvailable(`${own.name} is blank for ${name}`))
    );
  }
  const { parameter } = own;
  if (parameter.reads === "range") return undefined;
  const read: unknown[] = [];
  for (const [entry, raw] of own.block[0].entries()) {
    const value = readCell(parameter, raw, system, () => placeOf(own, entry));
    if (value instanceof Problem) return value;
    read.push(value);
  }
  return latest(read) ?? notAvailable(`${own.name} is blank for ${name}`);
};

const readGroup = (columns: readonly Column[], group: Group, system: System): Values | Problem => {
  const values: Values = { named: group.name };
  for (const column of columns) {
    const read = readColumn(column, group, system);
    if (read instanceof Problem) return read;
    values[column.argument.name] = read;
  }
  return values;
};

/** A row that belongs to nobody, though something stands in it. */
const nameless = (names: Argument, read: readonly unknown[], columns: readonly Column[]): Problem | undefined => {
  for (const [row, name] of read.entries()) {
    if (name === undefined && columns.some(({ cells }) => !isBlank(plain(cells[row])))) {
      return notAvailable(`${placeOf(names, row)} is blank`);
    }
  }
  return undefined;
};

/** The long table of a call; undefined where the function takes none, or none is given. */
export const longTableOf = (
  definition: AnyDefinition,
  args: readonly Argument[],
  system: System,
): LongTable | Problem | undefined => {
  if (!definition.forEach) return undefined;
  const [namesName, oneName] = namesOf(definition.forEach);
  const names = args.filter(isRange).find(({ name }) => name === namesName);
  const one = args.find(({ name }) => name === oneName);
  if (!names || !one) return undefined;
  const read = readRange(names, system);
  if (read instanceof Problem) return read;
  if (read === undefined) return isAllBlank(one.block) ? undefined : notAvailable(`${namesName} is blank`);

  const columns: Column[] = [];
  for (const argument of args) {
    if (argument === names || !isColumn(argument) || (argument.parameter.optional && isAllBlank(argument.block)))
      continue;
    const cells = isLine(argument.block) ? line(argument.block) : argument.block;
    if (cells.length !== read.length || !isLine(argument.block)) {
      return notUsable(
        `${namesName} holds ${read.length} cells and ${argument.name} ${argument.block.length * argument.block[0].length}: give as many of each`,
      );
    }
    columns.push({ argument, cells });
  }
  const homeless = nameless(names, read as readonly unknown[], columns);
  if (homeless) return homeless;

  const groups = byName(read as readonly (string | undefined)[]);
  let rows: readonly number[] = [];
  const known = new Map<string, Values | Problem>();
  const spellings = () => [...groups.values()].map(({ name }) => name);
  return {
    columns: new Set([names, ...columns.map(({ argument }) => argument)]),
    fill(values) {
      const asked = values[oneName];
      if (typeof asked !== "string") return notAvailable(`${oneName} is blank`);
      const key = keyOf(asked);
      const group = groups.get(key);
      if (!group) {
        const [like = ""] = nearest(spellings(), asked, 1);
        return notAvailable(`${oneName} holds '${asked}', which ${namesName} does not: the nearest is '${like}'`);
      }
      const own = known.get(key) ?? readGroup(columns, group, system);
      known.set(key, own);
      if (own instanceof Problem) return own;
      Object.assign(values, own);
      rows = group.rows;
      return undefined;
    },
    rows: () => rows,
  };
};
