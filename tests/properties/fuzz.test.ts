import { SheetError } from "../../addin/boundary/cell";
import { evaluate } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { Problem } from "../../functions/problem";
import type { Unit } from "../../functions/units";
import { isOfLongTable, parametersOf } from "./arbitraries";
import { fuzz } from "./fuzz";
import { hostileCsvs, hostileNetworks, hostileWorkbooks } from "./hostileFiles";

test("three thousand hostile calls are answered in a form that a sheet can show", () => {
  const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 2 ** 31);
  expect({ seed, ...fuzz(3_000, seed) }).toEqual({ seed, tried: expect.any(Number) as number });
}, 120_000);

test.each([
  ["network", 500, hostileNetworks],
  ["CSV", 150, hostileCsvs],
  [".xlsx", 150, hostileWorkbooks],
] as const)("spoilt files: %s", async (_, runs, check) => {
  const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 2 ** 31);
  expect({ seed, ...(await check(runs, seed)) }).toEqual({ seed, tried: runs });
});

const LONG = 100_000;
const ODD = [null, 1, "x", 46_000, new SheetError("#DIV/0!"), true, -0, 1e300, "", "2026-01-01"];
/** Every so many cells of an odd column one is odd; a prime, so that all of them come to stand beside each other. */
const EVERY = 97;
/** After this row the moments leave a day out, so that there is a gap to be found. */
const SILENT = 60_000;

/** The words of the functions that take fewer rows. */
const MOST: Readonly<Record<string, RegExp>> = {
  MASSTREND: /give at most 3000$/,
  LOSSTREND: /give at most 3000$/,
};

/** A cell of a long column of that unit; figures are those of the example, over and over. */
const cellAt = (unit: Unit, example: unknown, i: number): unknown => {
  if (unit === "date and time") return 46_000 + i / 1440 + (i > SILENT ? 1 : 0);
  return unit === "date" ? 46_000 + (i % 3000) : example;
};

/** The first example of a function, each of its lists drawn out to a hundred thousand rows of fitting or odd cells. */
const longCall = (definition: AnyDefinition, odd: boolean): unknown[] =>
  parametersOf(definition).map(([name, parameter], column) => {
    if (isOfLongTable(definition, name)) return null;
    const given = definition.examples.find((example) => Array.isArray(example.given[column]))?.given[column];
    if (parameter.reads === "cell" || parameter.length !== undefined || !Array.isArray(given)) {
      return definition.examples[0].given[column] ?? null;
    }
    const block = given as readonly (readonly unknown[])[];
    return Array.from({ length: LONG }, (_, i) =>
      odd && i % EVERY === column
        ? parameter.columns.map(() => ODD[(i + column) % ODD.length])
        : parameter.columns.map(([, { unit }], j) => cellAt(unit, block[i % block.length]?.[j] ?? null, i)),
    );
  });

const expectShowable = (cells: readonly (readonly unknown[])[]) => {
  expect(cells[0]?.length).toBeGreaterThan(0);
  for (const row of cells) {
    for (const cell of row) {
      if (cell instanceof Problem ? cell.message.length < 4 : typeof cell === "number" && !Number.isFinite(cell)) {
        throw new Error(`answered ${cell instanceof Problem ? cell.message : String(cell)}`);
      }
    }
  }
};

const all = catalogue.map((definition) => [definition.name, definition] as const);
const takesLists = (definition: AnyDefinition): boolean =>
  parametersOf(definition).some(([, parameter]) => parameter.reads === "range" && parameter.length === undefined);
/** These look at every day of two years, or at every station of the network, for each row. */
const SLOW: readonly string[] = ["COOLSPELL", "SITENOTE", "STATIONPLACE"];
const spreads = ({ result }: AnyDefinition): boolean => result.shape === "cell" || result.shape === "columns";

describe("a hundred thousand rows, or a long column", () => {
  test.each(all.filter(([, definition]) => takesLists(definition)))("%s takes lists of them", (name, definition) => {
    const { cells } = evaluate(definition, longCall(definition, false));
    expectShowable(cells);
    const [[answer] = []] = cells;
    if (MOST[name]) expect((answer as Problem).message).toMatch(MOST[name]);
    else expect(answer).not.toBeInstanceOf(Problem);
  });

  test.each(all.filter(([, definition]) => takesLists(definition)))("%s takes lists with odd cells", (_, definition) =>
    expectShowable(evaluate(definition, longCall(definition, true)).cells),
  );

  const ofMany = all.filter(([, { forEach }]) => forEach !== undefined);
  test.each(ofMany)("%s takes a long table of many, its names odd here and there", (_, definition) => {
    const rows = LONG / 50; // each animal's rows are worked out
    const columns = longCall(definition, false).map((list) => (Array.isArray(list) ? list.slice(0, rows) : list));
    const nameAt = (i: number): unknown => (i % EVERY === 0 ? ODD[i % ODD.length] : `Animal ${i % 20}`);
    const names = Array.from({ length: rows }, (_, i) => [nameAt(i)]);
    const wanted = [...Array.from({ length: 20 }, (_, i) => [`animal ${i}`]), ...ODD.map((odd) => [odd]), ["nobody"]];
    expectShowable(evaluate(definition, [...columns, names, wanted]).cells);
  });

  // A hundred thousand minutes and a silent day reach into 71 days; temperatures without a time are one row more.
  test.each([
    ["DAYTABLE", 72],
    ["TRACKING", 71],
    ["READINGGAPS", 1],
    ["TIMEOUTSIDE", 1],
  ])("%s reads the odd ones over, and answers %i rows", (name, rows) => {
    const definition = catalogue.find((one) => one.name === name) as AnyDefinition;
    const { cells } = evaluate(definition, longCall(definition, true));
    expect(cells[0]?.[0]).not.toBeInstanceOf(Problem);
    expect(cells).toHaveLength(rows);
  });

  test.each(all.filter(([, definition]) => spreads(definition)))(
    "%s answers a long column of odd cells",
    (_, definition) => {
      const parameters = parametersOf(definition);
      const at = parameters.findIndex(
        ([name, parameter]) =>
          parameter.reads === "cell" && parameter.kind !== "units" && !isOfLongTable(definition, name),
      );
      if (at < 0) return;
      const args = parameters.map((_, i): unknown => definition.examples[0].given[i] ?? null);
      const fitting = Array.isArray(args[at]) ? (args[at] as unknown[][])[0]?.[0] : args[at];
      const rows = LONG / (SLOW.includes(definition.name) ? 50 : 5);
      const column = Array.from({ length: rows }, (_, i) => [i % EVERY === 0 ? ODD[i % ODD.length] : fitting]);
      const { cells } = evaluate(definition, args.with(at, column));
      expectShowable(cells);
      expect(cells).toHaveLength(rows);
    },
  );
});
