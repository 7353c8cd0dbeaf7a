import { faults } from "../../addin/boundary/faults";
import { evaluate } from "../../addin/boundary/evaluate";
import { lapse } from "../../functions/climate/lapse";
import { seasonShift } from "../../functions/climate/seasonShift";
import { stationRank } from "../../functions/climate/stationRank";
import * as define from "../../functions/define";
import { lossTrend } from "../../functions/winter/lossTrend";
import { call, callCell, down } from "../call";

interface Made extends Pick<define.AnyDefinition, "parameters" | "result"> {
  readonly calculate: (given: never) => unknown;
}
/** A function as no topic has it, to see what the boundary hands to it and makes of its answers. */
const madeUp = (made: Made): define.AnyDefinition => ({ name: "MADEUP", ...made }) as unknown as define.AnyDefinition;

/** A block of two columns. */
const twos = (rows: number): unknown[][] => Array.from({ length: rows }, () => [1, 2]);
const amount = define.quantity("gram", "an amount", [0, 100]);
const amounts = define.column(amount, { blank: "keep" });

describe("what a function answers", () => {
  test("one that throws is told of in a cell and to the console, and spoils no other", () => {
    const told = jest.spyOn(faults, "report").mockImplementation();
    const definition = madeUp({
      parameters: { amount },
      result: define.cell("none", "an answer"),
      calculate({ amount }: { amount: number }) {
        if (amount === 13) throw new Error("unlucky");
        return amount;
      },
    });
    expect(call(definition, down([12, 13, 14]))).toEqual(
      down([12, "#VALUE! MADEUP met something that it was not made for: please report the arguments", 14]),
    );
    expect(told.mock.calls).toEqual([["MADEUP", new Error("unlucky")]]);
    told.mockRestore();
  });

  test("a fault is not swallowed: outside of tests it is told to the console, with its stack", () => {
    const told = jest.spyOn(console, "error").mockImplementation();
    const error = new Error("unlucky");
    jest.isolateModules(() =>
      jest.requireActual<{ faults: typeof faults }>("../../addin/boundary/faults").faults.report("MADEUP", error),
    );
    expect(told).toHaveBeenCalledWith("MADEUP:", error);
    told.mockRestore();
  });

  test("a table without rows is #N/A", () => {
    const definition = madeUp({
      parameters: { amount },
      result: define.table({ name: "a", unit: "gram", about: "an answer" }),
      calculate: () => [],
    });
    expect(callCell(definition, 1)).toBe("#N/A nothing to answer");
  });

  test("a list lies as the argument does that it answers, not as the first", () => {
    const definition = madeUp({
      parameters: { others: amounts, amounts },
      result: define.list("gram", "the amounts", "amounts"),
      calculate: ({ amounts }: { amounts: number[] }) => amounts,
    });
    expect(call(definition, down([7, 8]), [[1, 2]])).toEqual([[1, 2]]);
    expect(call(definition, [[7, 8]], down([1, 2]))).toEqual(down([1, 2]));
  });
});

describe("the unit of each cell of an answer", () => {
  const twelve = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

  test("of columns is the column's; over a row, where they stand below it, the row's", () => {
    const definition = madeUp({
      parameters: { amount },
      result: define.columns(
        { name: "day", unit: "date", about: "a day" },
        { name: "mass", unit: "gram", about: "a mass" },
      ),
      calculate: ({ amount }: { amount: number }) => [46_300, amount],
    });
    const column = evaluate(definition, [down([5, 6, 7])]);
    expect([column.unit(2, 0), column.unit(2, 1)]).toEqual(["date", "gram"]);
    const row = evaluate(definition, [[[5, 6, 7]]]);
    expect(row.cells).toEqual([
      [46_300, 46_300, 46_300],
      [5, 6, 7],
    ]);
    expect([row.unit(0, 2), row.unit(1, 2)]).toEqual(["date", "gram"]);
  });

  test.each([
    ["row", [twelve]],
    ["column", down(twelve)],
  ])("of a list in a %s is the list's", (_, months) => expect(evaluate(seasonShift, [months]).unit(0, 0)).toBe("none"));

  test("of a problem with the whole call is text", () =>
    expect(evaluate(lapse, [down([24, 20]), down([1, 2, 3]), 1500]).unit(0, 0)).toBe("text"));
});

describe("what a function is given", () => {
  test.each([
    [null, "metric"],
    [" ", "metric"],
    ["IMPERIAL", "imperial"],
  ])("units %p as %s", (units, given) => {
    const definition = madeUp({
      parameters: { units: define.unitsParameter },
      result: define.cell("text", "the system"),
      calculate: ({ units }: { units: unknown }) => units,
    });
    expect(callCell(definition, units)).toBe(given);
  });

  test.each([
    ["skip", 2],
    ["keep", 4],
  ] as const)("a list with two blanks of four: %s", (blank, entries) => {
    const definition = madeUp({
      parameters: { list: define.column(amount, { blank }) },
      result: define.cell("none", "how many"),
      calculate: ({ list }: { list: unknown[] }) => list.length,
    });
    expect(callCell(definition, down([1, null, 3, " "]))).toBe(entries);
  });

  test("six rows of two cells are no list, though a plan may be", () =>
    expect(callCell(lossTrend, twos(6), down([1, 2, 3, 4, 5, 6]), "2026-12-31")).toBe(
      "#VALUE! dates holds 6 by 2 cells: give one row or one column",
    ));

  test("rows of unlike length are no list: no cell of theirs is left out in silence", () =>
    expect(callCell(lossTrend, [[1], [2, 3]], down([1, 2]), "2026-12-31")).toMatch(
      /^#VALUE! dates holds .*: give one row or one column$/,
    ));
});

describe("a row that is missing in a block is a row of blanks", () => {
  test.each<[string, unknown]>([
    ["the last", [[24], null]],
    ["one in the middle", [[24], undefined, [20]]],
    ["the first", [null, [24]]],
  ])("%s", (_, block) => {
    const whole = (block as (unknown[] | null | undefined)[]).map((row) => row ?? [null]);
    expect(call(lapse, block, 500, 1500)).toEqual(call(lapse, whole, 500, 1500));
  });
  test("of several columns", () =>
    expect(call(lapse, [[24, 20], null], 500, 1500)).toEqual([
      [17.5, 13.5],
      ["#N/A temperature is blank", "#N/A temperature is blank"],
    ]));
  test("in a list", () =>
    expect(call(seasonShift, [[1], ...Array.from({ length: 10 }, (_, i) => [i]), null], 0)).toEqual([
      ["#N/A month 12 of months is blank"],
    ]));
  test("in rows of several columns", () =>
    expect(call(stationRank, [["Pass", 1450, 46.3, 11.6], null], 1200, 1800, 46.2, 11.5)).toHaveLength(1));
});

describe("a logger's column", () => {
  /** Answers what it is given, "none" for what could not be read. */
  const madeLog = (cell: define.CellParameter<number>): define.AnyDefinition =>
    madeUp({
      parameters: { log: define.logged(cell), units: define.unitsParameter },
      result: define.list("none", "as it was read", "log"),
      calculate: ({ log }: { log: Float64Array }) => Array.from(log, (value) => (Number.isNaN(value) ? "none" : value)),
    });
  const read = (cell: define.CellParameter<number>, log: unknown, units?: string): unknown[][] =>
    call(madeLog(cell), log, units);
  const warmth = define.quantity("celsius", "a temperature", [-90, 60]);

  const cells = [20.5, "21.5", " ", null, "ERR", true, 22.5];
  const figures = [20.5, 21.5, "none", "none", "none", "none", 22.5];
  test("in a column", () => expect(read(warmth, down(cells))).toEqual(down(figures)));
  test("in a row", () => expect(read(warmth, [cells])).toEqual([figures]));
  test("in a block of two columns it is none", () =>
    expect(read(warmth, twos(3))).toEqual([["#VALUE! log holds 3 by 2 cells: give one row or one column"]]));
  test("in rows of unlike length it is none", () =>
    expect(callCell(madeLog(warmth), [[20], [21, 22]])).toMatch(/^#VALUE! log holds .*: give one row or one column$/));

  test.each<[string, define.CellParameter<number>, string, readonly unknown[], readonly unknown[]]>([
    ["the limits are taken", warmth, "metric", [-90.1, -90, 60, 60.1], ["none", -90, 60, "none"]],
    ["the limits are taken in °F", warmth, "imperial", [-131, -130, 140, 141], ["none", -90, 60, "none"]],
    ["what is not finite is none", warmth, "metric", [Infinity, -Infinity, NaN], ["none", "none", "none"]],
    ["what is not finite is none in °F", warmth, "imperial", [Infinity, -Infinity, NaN], ["none", "none", "none"]],
    ["a part of a count is none", define.count("none", "how many", [0, 9]), "metric", [1, 1.5, 2], [1, "none", 2]],
    ["a date loses its time of day", define.date("a day"), "metric", [46_300.75], [46_300]],
    ["a moment keeps its time of day", define.moment("a moment"), "metric", [46_300.75], [46_300.75]],
    ["a moment is the same for °F", define.moment("a moment"), "imperial", [46_300.75, 60], [46_300.75, "none"]],
  ])("%s", (_, cell, units, given, answer) => expect(read(cell, down(given), units)).toEqual(down(answer)));
});
