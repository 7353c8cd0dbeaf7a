import fc from "fast-check";
import { evaluate } from "../../addin/boundary/evaluate";
import { plainFileSheet } from "../../addin/file/plain";
import { readXlsx } from "../../addin/file/read";
import { writeXlsx } from "../../addin/file/write";
import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition, CellParameter, Parameter, Value } from "../../functions/define";
import { LONGEST } from "../../functions/feeding/shared/mealParameters";
import { Problem } from "../../functions/problem";
import { fromMetric, hasSystems, type System } from "../../functions/units";
import { nativeFormulas } from "../../taskpane/native/native";
import { areaName, cellName } from "../../taskpane/actions/place";
import type { CellContent, PlainSheet } from "../../taskpane/workbook";
import { LibreOffice } from "../file/libreOffice";
import { openWorkbook } from "../preview/engine";
import { argumentsNear } from "./nearby";
import { argumentsWithin, parametersOf, type Raw } from "../properties/arbitraries";

/** Every function with a native twin. */
export const twinned: readonly AnyDefinition[] = catalogue.filter((definition) => "twin" in definition);

type Cell = Value | null;
/** One call: a row of the sheet, which holds its arguments side by side, and what the add-in answers. */
interface Case {
  readonly cells: readonly Cell[];
  readonly formulas: readonly string[];
  readonly expected: readonly (Value | { readonly error: string })[];
  readonly call: string;
}

/** Rows of a list whose length only a figure tells: as many are written, the last of them with what is missing. */
const ROWS = 8;
/** No date so late that an answer would pass the last day that a spreadsheet knows. */
const LATE = 60_000;

/** Figures as keepers type them: two that differ less are one to a spreadsheet, and need not be to us. */
const DECIMALS = 6;
const flat = (raw: Raw): Cell[] =>
  ((Array.isArray(raw) ? raw.flat(2) : [raw]) as Cell[]).map((cell) =>
    typeof cell === "number" ? Number(cell.toFixed(DECIMALS)) : cell,
  );

const soon = (parameter: Parameter, cell: Cell): Cell =>
  (parameter.kind === "date" || parameter.kind === "plan") && typeof cell === "number" && cell > LATE ? LATE : cell;

/** A hair inside the limits, which converting there and back may pass by a last digit. */
const INSIDE = 1 - 1e-9;

/** The figure as a keeper of that system types it. */
const typed = (parameter: Parameter, cell: Cell, system: System): Cell => {
  const one = parameter.reads === "cell" ? parameter : (parameter.columns[0]?.[1] as CellParameter);
  if (system === "metric" || typeof cell !== "number" || !one.limits) return cell;
  const { least, most } = one.limits;
  const middle = (least + most) / 2;
  return fromMetric(one.kind === "quantity" ? middle + (cell - middle) * INSIDE : cell, parameter.unit, system);
};

/** In every second case figures crowd at the lower end of wide limits, where animals and boxes are. */
const crowded = (parameter: Parameter, cell: Cell): Cell => {
  if (parameter.kind !== "quantity" || typeof cell !== "number") return cell;
  const { least, most } = parameter.limits ?? { least: 0, most: 1 };
  return Number((least + (most - least) * ((cell - least) / (most - least)) ** 4).toFixed(DECIMALS));
};

/** The cells of an argument; a list that is left out is one of blank cells. */
const listOf = (parameter: Parameter, raw: Raw): Cell[] =>
  raw === null && parameter.reads === "range" ? Array.from({ length: parameter.length ?? 6 }, () => null) : flat(raw);

/**
 * Twins of thousands of letters: there is no room for both systems in a formula, as units in a cell ask for, and a call stays
 * as its figure then. They take some 40 ms a cell, so that each call is tried in one row of its answer, always another.
 */
const LONG = new Set(["UNDERGROUND"]);

/** Calls that a twin answers with #N/A, by the days of their plan and of their interval. */
const UNANSWERED: Readonly<Record<string, (interval: number, plan: readonly number[]) => boolean>> = {
  MEALCOUNT: (interval, plan) => {
    const fast = Math.floor(plan[5] as number) - Math.floor(plan[0] as number);
    return fast >= 2 && (fast < interval || fast >= 365);
  },
};

/** Of figures that are refused unless one is below the other, most are: else twelve highs and lows, or two days of a time, hardly ever pass. */
const sensible = (parameters: readonly (readonly [string, Parameter])[], values: readonly Cell[][]): void => {
  const of = (name: string, kind = "quantity"): Cell[] =>
    values[parameters.findIndex(([own, parameter]) => own === name && parameter.kind === kind)] ?? [];
  for (const [i, high] of of("highs").entries()) {
    const pair = [high, of("lows")[i] ?? high].sort((one, other) => Number(one) - Number(other));
    [of("lows")[i], of("highs")[i]] = pair as [Cell, Cell];
  }
  const [[from], [to]] = [of("from", "date"), of("to", "date")];
  if (typeof from !== "number" || typeof to !== "number") return;
  // The winter before a first day in 1900 began in a year that no spreadsheet knows.
  const first = Math.max(from, 400);
  [of("from", "date")[0], of("to", "date")[0]] = [first, first + (Math.abs(to - first) % LONGEST)];
};

/** How often a case has a blank argument, all blank, or one that is out of its limits. */
const spoils = ["", "", "", "", "one", "one", "all", "limits"] as const;

/** Far beyond the limits, or as near outside them as a keeper could mean, above or below. */
const beyond = (parameter: Parameter, system: System, which: number): Cell => {
  const cell = parameter.reads === "cell" ? parameter : parameter.columns[0]?.[1];
  if (!cell?.limits) return "a word";
  const { least, most } = cell.limits;
  const step = cell.kind === "count" || cell.kind === "date" ? 1 : Math.max(1e-6, 1e-6 * (most - least));
  const values = [most + step, least - step, most * 1.5 + 1];
  return fromMetric(values[which % values.length] as number, cell.unit, system);
};

const caseOf = (
  definition: AnyDefinition,
  raw: readonly Raw[],
  [spoil, which, part, style]: readonly [(typeof spoils)[number], number, number, number],
  row: number,
): Case => {
  const parameters = parametersOf(definition)
    .filter(([name]) => name !== "animals" || !definition.forEach)
    .filter(([name]) => name !== "animal");
  // A range that is read whole is written as it stands: its figures have to be metric.
  const isWhole = parameters.some(([, one]) => one.reads === "range" && !one.length && hasSystems(one.unit));
  const withUnits = !isWhole && parameters.some(([, { kind }]) => kind === "units");
  const system: System = withUnits && style % 2 === 1 ? "imperial" : "metric";
  const values = parameters.map(([, parameter], i) =>
    listOf(parameter, raw[i]).map((cell) =>
      typed(parameter, soon(parameter, style % 4 < 2 ? crowded(parameter, cell) : cell), system),
    ),
  );
  if (part % 8 > 0) sensible(parameters, values);
  const chosen = which % parameters.length;
  const victim = parameters[chosen]?.[1];
  if (victim && victim.kind !== "units") {
    const list = values[chosen] as Cell[];
    if (spoil === "one") {
      if (victim.reads === "range" && part % 2 === 0) list[part % list.length] = null;
      else list.fill(null);
    }
    // Of a list that is left out one cell alone would be half a list, and which error comes first is not the twin's to say.
    if (spoil === "limits" && (list.length === 1 || list.some((cell) => cell !== null)))
      list[part % list.length] = beyond(victim, system, part);
  }
  if (spoil === "all") for (const list of values) list.fill(null);

  const cells: Cell[] = [];
  const args: string[] = [];
  const given: unknown[] = [];
  for (const [i, [, parameter]] of parameters.entries()) {
    const list = values[i] as Cell[];
    if (parameter.kind === "units") {
      const word = system === "imperial" ? "imperial" : style % 4 === 0 ? "metric" : null;
      const inCell = !isWhole && !LONG.has(definition.name) && style % 3 > 0;
      given.push(word);
      if (inCell) {
        args.push(cellName(row, cells.length));
        cells.push(word);
      } else {
        args.push(word === null ? "" : `"${word}"`);
      }
      continue;
    }
    args.push(
      list.length === 1
        ? cellName(row, cells.length)
        : areaName({ row, column: cells.length, rows: 1, columns: list.length }),
    );
    given.push(list.length === 1 ? list[0] : [list]);
    cells.push(...list);
  }
  const call = `=VIV.${definition.name}(${args.join(",")})`.replace(/,+\)$/, ")");
  const native = nativeFormulas(catalogue, call);
  const { rows, columns } = native.extent ?? { rows: ROWS, columns: definition.result.columns.length };
  const of = (name: string): Cell[] => values[parameters.findIndex(([own]) => own === name)] ?? [];
  const isUnanswered = UNANSWERED[definition.name]?.(Number(of("interval")[0]), of("plan").map(Number)) ?? false;
  const answer = evaluate(definition, given).cells;
  const formulas: string[] = [];
  const expected: Case["expected"][number][] = [];
  const tried = LONG.has(definition.name) ? [which % rows] : Array.from({ length: rows }, (_, i) => i);
  for (const i of tried) {
    for (let j = 0; j < columns; j++) {
      formulas.push(native.cell(i, j, i === rows - 1));
      const one = i === rows - 1 && answer.length > rows ? new Problem("#N/A", "") : answer[i]?.[j];
      const spread = definition.result.shape === "columns" && answer.length === 1 && answer[0]?.length === 1;
      const whole = spread ? answer[0]?.[0] : one;
      const shown = isUnanswered && typeof whole === "number" ? new Problem("#N/A", "") : whole;
      expected.push(shown instanceof Problem ? { error: shown.code } : (shown ?? ""));
    }
  }
  return { cells, formulas, expected, call: `${call} of ${JSON.stringify(given)}` };
};

/** What spoils a case: how, which argument, which of its cells; and its style, of which two in four crowd no figures. */
const choices = (style: (any: number) => number) =>
  fc.tuple(fc.constantFrom(...spoils), fc.nat(999), fc.nat(999), fc.nat(999).map(style));

/** As many calls of a function as asked, always the same for a seed; on sheets of so many rows. Every second is near an example. */
export const casesOf = (definition: AnyDefinition, count: number, rows = count, seed = 20): readonly Case[] =>
  fc
    .sample(
      fc.oneof(
        fc.tuple(
          argumentsWithin(definition),
          choices((any) => any),
        ),
        fc.tuple(
          argumentsNear(definition),
          choices((any) => any | 2),
        ),
      ),
      { numRuns: count, seed },
    )
    .map(([raw, choice], row) => caseOf(definition, raw, choice, row % rows));

/** Calls with those arguments, as they are. */
export const callsOf = (definition: AnyDefinition, raws: readonly (readonly Raw[])[]): readonly Case[] =>
  raws.map((raw, row) => caseOf(definition, raw, ["", 0, 0, 2], row % AT_ONCE));

/** A sheet of calls: arguments first, and the twin's formulas behind them. */
export const sheetOf = (definition: AnyDefinition, cases: readonly Case[]): PlainSheet & { readonly from: number } => {
  const from = Math.max(...cases.map(({ cells }) => cells.length));
  return {
    name: definition.name,
    from,
    cells: cases.map(({ cells, formulas }) => [
      ...Array.from({ length: from }, (_, i): CellContent => cells[i] ?? null),
      ...formulas.map((formula) => ({ formula })),
    ]),
  };
};

type Shown = Value | null | undefined | { readonly error: string };

/** How far a figure may be off, as a share of its size and at least of 1. */
const TOLERANCE = 1e-9;

/**
 * Stations that lie on one line leave nothing but rounding: the preview's STEYX takes the root of a difference of squares,
 * and so answers some 1e-8 of the temperatures where 1e-14 is right. The rates' margins are made of it.
 */
const LINE_TOLERANCE = 1e-5;
const RESIDUAL = 9; // the fifth row's second cell
const toleranceOf = ({ name }: AnyDefinition, expected: Case["expected"]): number => {
  const residual = name === "LAPSEFIT" ? expected[RESIDUAL] : undefined;
  return typeof residual === "number" && residual < 1e-7 ? LINE_TOLERANCE : TOLERANCE;
};

const agrees = (expected: Case["expected"][number], shown: Shown, tolerance: number): boolean => {
  if (typeof expected === "object") return typeof shown === "object" && shown?.error === expected.error;
  if (expected === "") return shown === "" || shown === null || shown === undefined;
  if (typeof expected !== "number" || typeof shown !== "number") return expected === shown;
  return Math.abs(expected - shown) <= tolerance * Math.max(1, Math.abs(expected));
};

/** Where a spreadsheet answers otherwise than the add-in. */
export const disagreements = (
  definition: AnyDefinition,
  cases: readonly Case[],
  cellAt: (row: number, column: number) => Shown,
): string[] => {
  const { from } = sheetOf(definition, cases);
  const { columns } = definition.result;
  return cases.flatMap(({ expected, formulas, call }, row) =>
    expected.flatMap((wanted, i) => {
      const shown = cellAt(row, from + i);
      const isDate = columns[i % columns.length]?.unit === "date";
      return agrees(wanted, shown, isDate ? 0 : toleranceOf(definition, expected))
        ? []
        : [`${call}, cell ${i}: ${JSON.stringify(wanted)}, the twin ${JSON.stringify(shown)}: ${formulas[i]}`];
    }),
  );
};

/** The twins of the functions as LibreOffice works them out, all in one workbook. */
export const inLibreOffice = async (
  definitions: readonly AnyDefinition[],
  count: number,
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const all = definitions.map((definition) => ({ definition, cases: casesOf(definition, count) }));
  const office = new LibreOffice();
  try {
    const bytes = await writeXlsx(all.map(({ definition, cases }) => plainFileSheet(sheetOf(definition, cases))));
    const { sheets } = await readXlsx(await office.convert(bytes, "xlsx", "xlsx"));
    return new Map(
      all.map(({ definition, cases }) => {
        const sheet = sheets.find(({ name }) => name === definition.name);
        return [
          definition.name,
          disagreements(definition, cases, (row, column) => sheet?.cells[row]?.[column]?.value),
        ] as const;
      }),
    );
  } finally {
    office.close();
  }
};

/** Rows that the engine works out in a moment. */
const AT_ONCE = 50;

/** The twins of the functions as the preview's engine works them out; `change` spoils their formulas. */
export const inTheEngine = (
  definitions: readonly AnyDefinition[],
  count: number,
  change?: (formula: string) => string,
): Promise<ReadonlyMap<string, readonly string[]>> =>
  callsInTheEngine(
    definitions.map((definition) => [definition, () => casesOf(definition, count, AT_ONCE)] as const),
    change,
  );

/** The same with calls that are given. */
export const callsInTheEngine = async (
  calls: readonly (readonly [definition: AnyDefinition, make: () => readonly Case[]])[],
  change: (formula: string) => string = (formula) => formula,
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const found = new Map<string, readonly string[]>();
  const { workbook, close } = openWorkbook();
  try {
    for (const [definition, make] of calls) {
      const all = make();
      const differing: string[] = [];
      for (let from = 0; from < all.length; from += AT_ONCE) {
        const cases = all.slice(from, from + AT_ONCE).map((one) => ({ ...one, formulas: one.formulas.map(change) }));
        const sheet = await workbook.add(definition.name, sheetOf(definition, cases).cells);
        const [contents] = await workbook.read([sheet]);
        differing.push(...disagreements(definition, cases, (row, column) => contents?.cells[row]?.[column]?.value));
        await workbook.remove([sheet]);
      }
      found.set(definition.name, differing);
    }
  } finally {
    close();
  }
  return found;
};
