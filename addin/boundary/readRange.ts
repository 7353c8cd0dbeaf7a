import type { CellParameter, RangeParameter, Value } from "../../functions/define";
import { Problem, notAvailable, notUsable } from "../../functions/problem";
import type { System } from "../../functions/units";
import type { Argument } from "./argument";
import { isAllBlank, isBlank, isLine, line, plain, size, type Block } from "./cell";
import { placeOf } from "./place";
import { plainLimits, readCell } from "./readCell";

type Entry = Value | undefined | Record<string, Value | undefined>;
type Range = Argument<RangeParameter>;

/** The one column of a list. */
const cellOf = ({ parameter }: Range): CellParameter => {
  const [[, cell]] = parameter.columns as readonly [readonly [string, CellParameter]];
  return cell;
};

const readList = (range: Range, system: System): readonly Entry[] | Problem => {
  const { name, parameter, block } = range;
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
  const cell = cellOf(range);
  const read: Entry[] = [];
  let entry = 0;
  const place = () => placeOf(range, entry);
  for (; entry < entries.length; entry++) {
    const value = readCell(cell, entries[entry], system, place);
    if (value instanceof Problem) return value;
    if (value !== undefined) read.push(value);
    else if (parameter.blank === "refuse") return notAvailable(`${place()} is blank`);
    else if (parameter.blank === "keep") read.push(undefined);
  }
  return read;
};

/**
 * A logger's column. An entry that is a plain number within its limits costs one look, at its form and its value at once:
 * there may be 525 600, and each further walk over their rows would cost as much again.
 */
const readLogged = (range: Range, system: System): Float64Array | Problem => {
  const { name, block } = range;
  const cell = cellOf(range);
  const { least, most } = plainLimits(cell, system);
  const place = () => name;
  const row = block.length === 1 ? block[0] : undefined;
  const read = new Float64Array(row ? row.length : block.length);
  for (let i = 0; i < read.length; i++) {
    const line = (row ?? block[i]) as readonly unknown[];
    if (!row && line.length !== 1) return notUsable(`${name} holds ${size(block)}: give one row or one column`);
    const raw = line[row ? i : 0];
    if (typeof raw === "number" && raw >= least && raw <= most) {
      read[i] = raw;
    } else {
      const value = readCell(cell, raw, system, place);
      read[i] = typeof value === "number" ? value : NaN;
    }
  }
  return read;
};

const readRows = (range: Range, system: System): readonly Entry[] | Problem => {
  const { name, parameter, block } = range;
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
      const place = () => `${title} in ${placeOf(range, i)}`;
      const value = readCell(cell, row[j], system, place);
      if (value instanceof Problem) return value;
      if (value === undefined && !cell.optional) return notAvailable(`${place()} is blank`);
      entry[title] = value;
    }
    read.push(entry);
  }
  return read;
};

/** A range, read whole: its entries, undefined where every cell is blank, or the first problem with its position. */
export const readRange = (range: Range, system: System): readonly Entry[] | Float64Array | undefined | Problem => {
  if (isAllBlank(range.block)) return undefined;
  if (range.parameter.unreadable === "keep") return readLogged(range, system);
  return range.parameter.kind === "rows" ? readRows(range, system) : readList(range, system);
};
