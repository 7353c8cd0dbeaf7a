import type { RangeParameter, Value } from "../../functions/define";
import { Problem, notAvailable, notUsable } from "../../functions/problem";
import type { System } from "../../functions/units";
import { isBlank, plain, size, type Block } from "./cell";
import { plainLimits, readCell } from "./readCell";

type Entry = Value | undefined | Record<string, Value | undefined>;

/** The word for an entry: a month of a year, a row of a column. */
const entryWord = (parameter: RangeParameter): string => (parameter.kind === "months" ? "month" : "row");

/** A list in reading order, whether it stands in a row or a column. */
const line = (block: Block): readonly unknown[] => (block.length === 1 ? block[0] : block.map((row) => row[0]));

const isLine = (block: Block): boolean => block.length === 1 || block.every((row) => row.length === 1);

const readList = (
  name: string,
  parameter: RangeParameter,
  block: Block,
  system: System,
): readonly Entry[] | Problem => {
  // A plan may come with its stages before its dates: the last column holds the dates.
  const lines =
    parameter.kind === "plan" && block.length === 6 ? (block.map((row) => row.slice(-1)) as unknown as Block) : block;
  if (!isLine(lines)) return notUsable(`${name} holds ${size(block)}: give one row or one column`);
  const entries = line(lines);
  if (parameter.length !== undefined && entries.length !== parameter.length) {
    return notUsable(
      `${name} holds ${entries.length} ${entries.length === 1 ? "cell" : "cells"}: give ${parameter.length}${parameter.kind === "months" ? ", January to December" : ""}`,
    );
  }
  const [[, cell]] = parameter.columns as readonly [readonly [string, RangeParameter["columns"][number][1]]];
  const place = (i: number) => () => `${entryWord(parameter)} ${i + 1} of ${name}`;
  const read: Entry[] = [];
  for (let i = 0; i < entries.length; i++) {
    const value = readCell(cell, entries[i], system, place(i));
    if (value instanceof Problem) return value;
    if (value !== undefined) read.push(value);
    else if (parameter.blank === "refuse") return notAvailable(`${entryWord(parameter)} ${i + 1} of ${name} is blank`);
    else if (parameter.blank === "keep") read.push(undefined);
  }
  return read;
};

/** A logger's column. An entry that is a plain number within its limits costs one look: there may be 525 600. */
const readLogged = (name: string, parameter: RangeParameter, block: Block, system: System): Float64Array | Problem => {
  if (!isLine(block)) return notUsable(`${name} holds ${size(block)}: give one row or one column`);
  const [[, cell]] = parameter.columns as readonly [readonly [string, RangeParameter["columns"][number][1]]];
  const { least, most } = plainLimits(cell, system);
  const place = () => name;
  const row = block.length === 1 ? block[0] : undefined;
  const read = new Float64Array(row ? row.length : block.length);
  for (let i = 0; i < read.length; i++) {
    const raw = row ? row[i] : (block[i] as readonly unknown[])[0];
    if (typeof raw === "number" && raw >= least && raw <= most) {
      read[i] = raw;
    } else {
      const value = readCell(cell, raw, system, place);
      read[i] = typeof value === "number" ? value : NaN;
    }
  }
  return read;
};

const readRows = (
  name: string,
  parameter: RangeParameter,
  block: Block,
  system: System,
): readonly Entry[] | Problem => {
  const width = parameter.columns.length;
  if (block[0].length !== width) {
    const titles = parameter.columns.map(([title]) => title).join(", ");
    return notUsable(`${name} holds ${size(block)}: give rows of ${width} cells (${titles})`);
  }
  const read: Entry[] = [];
  for (const [i, row] of block.entries()) {
    if (row.every((raw) => isBlank(plain(raw)))) continue;
    const entry: Record<string, Value | undefined> = {};
    for (const [j, [title, cell]] of parameter.columns.entries()) {
      const value = readCell(cell, row[j], system, () => `${title} in row ${i + 1} of ${name}`);
      if (value instanceof Problem) return value;
      if (value === undefined && !cell.optional) return notAvailable(`${title} in row ${i + 1} of ${name} is blank`);
      entry[title] = value;
    }
    read.push(entry);
  }
  return read;
};

/** A range, read whole: its entries, undefined where every cell is blank, or the first problem with its position. */
export const readRange = (
  name: string,
  parameter: RangeParameter,
  block: Block,
  system: System,
): readonly Entry[] | Float64Array | undefined | Problem => {
  if (block.every((row) => row.every((raw) => isBlank(plain(raw))))) return undefined;
  if (parameter.unreadable === "keep") return readLogged(name, parameter, block, system);
  return parameter.kind === "rows"
    ? readRows(name, parameter, block, system)
    : readList(name, parameter, block, system);
};
