import { catalogue } from "../../functions/catalogue";
import { defineFunction, cell, column, date, optional, quantity, table, unitsParameter } from "../../functions/define";
import type { AnyDefinition } from "../../functions/define";
import { notAvailable } from "../../functions/problem";
import { ramp } from "../../functions/winter/ramp";
import { lapse } from "../../functions/climate/lapse";
import { customFunction, register } from "../../addin/excel/functions";
import { waitFor } from "../../addin/fetch";
import { readNetworkBy } from "../../addin/network/load";
import { readNetworkFromDisk } from "../../addin/network/readFromDisk";
import { functionsJson } from "../../addin/metadata";
import { argumentsOf, expectAnswer, rich } from "./examples";
import { DATA_TYPES_COME, ERRORS_COME, startRuntime } from "./runtime";

const runtime = startRuntime();
/** What this Excel has of each requirement set. */
const NEWEST = { CustomFunctionsRuntime: 1.4, ExcelApi: 1.19 };
let has: Readonly<Record<string, number>> = NEWEST;
Object.assign(globalThis, {
  CustomFunctions: runtime.CustomFunctions,
  Office: {
    context: {
      requirements: {
        isSetSupported: (set: string, version: string) => Number(version) <= (has[set] ?? 0),
      },
    },
  },
});
register();
readNetworkBy(readNetworkFromDisk);
// tests/network/load.test.ts looks at the wait.
beforeAll(async () => {
  for (const definition of catalogue) await waitFor(definition);
});
afterEach(() => (has = NEWEST));

const examples = catalogue.flatMap((definition) =>
  definition.examples.map((example, i) => [`${definition.name}, example ${i + 1}`, definition, example] as const),
);

describe("through the platform's own runtime", () => {
  test("every function of functions.json has code behind it, and no other", () => {
    expect(runtime.associated().sort()).toEqual(
      functionsJson("https://example.org/handbook")
        .functions.map(({ id }) => id)
        .sort(),
    );
    expect(examples.length).toBeGreaterThanOrEqual(catalogue.length);
  });
  test.each(examples)("%s arrives, with dates that look like dates", async (_, definition, example) =>
    expectAnswer(definition, example, await runtime.call(definition.name, argumentsOf(definition, example)), "Double"),
  );
  test.each(examples)("%s arrives as serial numbers where the platform is older", async (_, definition, example) => {
    has = { CustomFunctionsRuntime: 1.3, ExcelApi: 1.15 };
    const sent = await runtime.call(definition.name, argumentsOf(definition, example));
    expectAnswer(definition, example, sent, undefined);
  });
  // @types/office-js: FormattedNumberCellValue is of ExcelApi 1.16 and went out of use with 1.19, which gave DoubleCellValue its format.
  test.each([
    [{ CustomFunctionsRuntime: 1.4, ExcelApi: 1.19 }, "Double"],
    [{ CustomFunctionsRuntime: 1.4, ExcelApi: 1.18 }, "FormattedNumber"],
    [{ CustomFunctionsRuntime: 1.4, ExcelApi: 1.16 }, "FormattedNumber"],
    [{ CustomFunctionsRuntime: 1.4, ExcelApi: 1.15 }, undefined],
    [{ CustomFunctionsRuntime: 1.3, ExcelApi: 1.19 }, undefined],
  ] as const)("a date is sent as an Excel of %p knows it", async (sets, type) => {
    has = sets;
    const [example] = ramp.examples;
    expectAnswer(ramp, example, await runtime.call("RAMP", argumentsOf(ramp, example)), type);
  });
  test.each(examples)("%s is the same from cells with data types", async (_, definition, example) =>
    expectAnswer(
      definition,
      example,
      await runtime.call(definition.name, argumentsOf(definition, example, rich)),
      "Double",
    ),
  );
});

describe("a problem", () => {
  const at = (value: unknown): unknown[] => [value, [[300]], [[1400]], null, null];
  test("of one cell shows #VALUE! with its words", async () =>
    expect(await runtime.call("LAPSE", at([["24C"]]))).toMatchObject({
      failed: true,
      errorCode: 7, // the runtime's number for #VALUE!
      value: "temperature holds '24C': give a number from -90 to 60 °C",
    }));
  test("of one blank cell shows #N/A with its words", async () =>
    expect(await runtime.call("LAPSE", at([[null]]))).toMatchObject({
      failed: true,
      errorCode: 1,
      value: "temperature is blank",
    }));
  test("spoils its own cell of a spill", async () => {
    const { failed, value } = await runtime.call("LAPSE", at([[24], [null], ["warm"], [0]]));
    expect(failed).not.toBe(true);
    expect(value).toEqual([
      [expect.closeTo(16.85, 9)],
      [expect.objectContaining({ type: "Error", basicValue: "#N/A", message: "temperature is blank" })],
      [
        expect.objectContaining({
          type: "Error",
          basicValue: "#VALUE!",
          message: expect.stringContaining("temperature holds 'warm'") as string,
        }),
      ],
      [expect.closeTo(-7.15, 9)],
    ]);
  });
});

describe("what comes in", () => {
  const temperature = (value: unknown, flags?: number) =>
    runtime.call("LAPSE", [[[value]], [[300]], [[1400]], null, null], flags);
  test.each([
    ["#N/A", 1],
    ["#DIV/0!", 7],
  ])("an error cell that holds %s is named", async (code, errorCode) => {
    const plain = await temperature({ type: "CustomFunctionError", code }, ERRORS_COME);
    const typed = await temperature({
      value: JSON.stringify({ type: "Error", basicType: "Error", basicValue: code, errorType: "x" }),
    });
    const both = await temperature({ value: JSON.stringify({ type: "CustomFunctionError", code }) });
    for (const answer of [plain, typed, both]) {
      expect(answer).toMatchObject({ failed: true, errorCode, value: `temperature holds the error ${code}` });
    }
  });
  test("an entity counts as the error that it calls itself", async () => {
    const entity = { type: "Entity", text: "Station", basicType: "Error", basicValue: "#VALUE!" };
    expect(await temperature({ value: JSON.stringify(entity) }, DATA_TYPES_COME)).toMatchObject({
      value: "temperature holds the error #VALUE!",
    });
  });
  test("an empty cell with a data type is a blank, not 0", async () =>
    expect(
      await temperature({ value: JSON.stringify({ type: "Empty", basicType: "Empty", basicValue: "" }) }),
    ).toMatchObject({
      value: "temperature is blank",
    }));
  test("0 is a value", async () => expect((await temperature(0)).value).toEqual([[expect.closeTo(-7.15, 9)]]));

  test("the record of the call is never read, wherever it stands", async () => {
    const record = new Proxy(
      {},
      {
        get: (_, key) => {
          throw new Error(`${String(key)} of the record was read`);
        },
      },
    );
    const code = customFunction(lapse);
    expect(code([[24]], [[300]], [[1400]], null, null, record)).toEqual([[expect.closeTo(16.85, 9)]]);
    // As with a description of the functions that is older than the code: it slides into an optional argument.
    expect(code([[24]], [[300]], [[1400]], record)).toEqual([[expect.closeTo(16.85, 9)]]);
    expect((await runtime.call("LAPSE", [[[24]], [[300]], [[1400]]])).value).toEqual([[expect.closeTo(16.85, 9)]]);
  });
});

describe("functions of a test's own", () => {
  const dated = defineFunction({
    name: "DATED",
    summary: "Days with a problem among them.",
    parameters: {
      days: column(date("Days")),
      shift: optional(quantity("day", "Shift", [0, 9]), "0"),
      units: unitsParameter,
    },
    result: table({ name: "day", unit: "date", about: "Day" }, { name: "word", unit: "text", about: "Word" }),
    sources: ["definition"],
    cautions: [],
    examples: [{ given: [[["2026-10-05"]]], gives: [["2026-10-05", "x"]], within: 0 }],
    calculate: ({ days, shift = 0 }) => [
      ...days.map((day) => [day + shift, "day"] as const),
      [notAvailable("no more days"), ""] as const,
    ],
  });
  test("dates, words and problems stand side by side", () => {
    const cells = customFunction(dated)([[46300], [46301]], [[1]], null);
    expect(JSON.parse(JSON.stringify(cells))).toEqual([
      [{ type: "Double", basicValue: 46301, numberFormat: "yyyy-mm-dd" }, "day"],
      [{ type: "Double", basicValue: 46302, numberFormat: "yyyy-mm-dd" }, "day"],
      [expect.objectContaining({ basicValue: "#N/A", message: "no more days" }), ""],
    ]);
  });
  test("a hundred thousand cells are answered in one call, quickly", () => {
    const sum = defineFunction({
      ...dated,
      twin: undefined,
      name: "WIDE",
      parameters: { values: quantity("celsius", "Values", [-90, 60]) },
      result: cell("celsius", "Value"),
      calculate: ({ values }) => values,
    });
    const block = Array.from({ length: 100_000 }, (_, i) => [i % 50]);
    const started = performance.now();
    expect(customFunction(sum as unknown as AnyDefinition)(block)).toHaveLength(100_000);
    expect(performance.now() - started).toBeLessThan(1000); // a wide margin: about 30 ms on an idle machine
  });
});
