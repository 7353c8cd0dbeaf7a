import { namesOf, type AnyDefinition, type Parameter, type Value } from "../../functions/define";
import { asCell, call, flat, type Given } from "./given";
import { address, Grid } from "./grid";
import { answerHeadings, headingOf } from "./heading";
import { putOnce } from "./put";
import { rowsOf, standingAlone } from "./standingAlone";
import type { Use } from "./use";
import { varied } from "./vary";

/** The two of a long table, and what one of them is called. */
const GROUPS: Readonly<Record<string, readonly [heading: string, one: string, other: string]>> = {
  animal: ["Animal", "Ash", "Birch"],
  clutch: ["Clutch", "First", "Second"],
  sensor: ["Sensor", "Box 1", "Box 2"],
};

/** The columns of two groups, row by row under one another as a keeper writes them, behind a column that says whose each is. */
const putTwo = (grid: Grid, columns: readonly Given[], [heading, one, other]: readonly [string, string, string]) => {
  const length = Math.max(...columns.map(({ argument }) => flat(argument).length));
  const last = 2 * length;
  const key = grid.column([heading, ...Array.from({ length: last }, (_, i) => (i % 2 === 0 ? one : other))]);
  const refs = new Map<string, string>();
  for (const { name, parameter, argument } of columns) {
    const cell = parameter.reads === "range" ? parameter.columns[0]?.[1] : parameter;
    const others = (value: Value | null): Value | null =>
      value === null || value === "" || !cell || typeof value === "string" ? value : varied(value, cell, -1);
    const values = flat(argument).flatMap((value) => [asCell(value, parameter), asCell(others(value), parameter)]);
    refs.set(name, address(grid.column([headingOf(name, parameter.unit), ...values]), 1, last));
  }
  return { key: address(key, 1, last), refs };
};

/** One log of many: a formula that answers for each name. */
export const forMany = (definition: AnyDefinition, given: readonly Given[]): readonly Use[] => {
  const { forEach } = definition;
  const group = forEach && GROUPS[forEach];
  if (!group) return [];
  const [namesName, oneName] = namesOf(forEach);
  const inLog = given.flatMap((one): readonly Given[] => {
    const { parameter, argument } = one;
    if (one.role === "column") return [one];
    if (parameter.reads === "range" || !parameter.latest) return [];
    // The latest of a column counts: here the second of two.
    const value = argument as Value;
    return [{ ...one, argument: [[varied(value, parameter, -1)], [value]] }];
  });
  const others = given.filter(({ name }) => inLog.every((one) => one.name !== name));
  const grid = new Grid();
  const { key, refs: written } = putTwo(grid, inLog, group);
  putOnce(grid, others, written, address);
  grid.gap();
  const [heading, one, other] = group;
  const isTable = definition.result.shape === "table";
  const asked = isTable ? [one] : [one, other];
  const column = grid.column([heading, ...asked]);
  const names = Object.keys(definition.parameters);
  const all: Given[] = names.slice(0, names.indexOf(namesName)).flatMap((name) => {
    const found = given.find((given) => given.name === name);
    return (
      found ?? { name, parameter: definition.parameters[name] as Parameter, argument: null, role: "once" as const }
    );
  });
  const last = (name: string): Given => ({
    name,
    parameter: definition.parameters[name] as Parameter,
    argument: name,
    role: "column",
  });
  written.set(namesName, key).set(oneName, address(column, 1, asked.length));
  const formula = call(definition, [...all, last(namesName), last(oneName)], written);
  const use = standingAlone(
    `Out of one log of several ${namesName}`,
    definition,
    grid,
    formula,
    isTable ? rowsOf(definition) : asked.length,
    isTable ? {} : { said: ` A row for each ${oneName} asked for.`, headings: answerHeadings(definition) },
  );
  return [use];
};

/** The rows of one group by FILTER, for a function that knows no names. */
export const filtered = (definition: AnyDefinition, given: readonly Given[]): readonly Use[] => {
  const columns = given.filter(({ role }) => role === "column");
  const [first] = Object.values(definition.parameters);
  const isLog =
    columns.length > 0 &&
    columns[0]?.parameter === first &&
    columns.every(
      ({ parameter, argument }) =>
        parameter.kind === "column" && flat(argument).every((value) => value !== null && value !== ""),
    );
  if (definition.forEach || !isLog || columns.some(({ name }) => name === "animals")) return [];
  const isTimed = first?.unit === "date" || first?.unit === "date and time";
  if (!isTimed && first?.unit !== "gram") return [];
  const group = isTimed ? (["Box", "Box 1", "Box 2"] as const) : (["Group", "First", "Second"] as const);
  const grid = new Grid();
  const { key, refs } = putTwo(grid, columns, group);
  grid.gap();
  grid.column([group[0]]);
  const asked = address(grid.column([group[1]]), 0);
  const written = new Map([...refs].map(([name, ref]) => [name, `FILTER(${ref},${key}=${asked})`]));
  putOnce(grid, given, written, address);
  const formula = call(definition, given, written);
  const said = " FILTER takes the rows of that name; it makes a blank cell a 0, so it wants columns without blanks.";
  return [standingAlone("Some rows of a log, by FILTER", definition, grid, formula, rowsOf(definition), { said })];
};
