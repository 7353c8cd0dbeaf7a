import fc from "fast-check";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { WorkbookError, type Workbook } from "../../taskpane/workbook";
import { openWorkbook, readSheet } from "./engine";

jest.setTimeout(60_000);

/** A sheet with one of everything that a sheet can have. */
const sheet: Sheet = {
  key: "everything",
  name: "Everything",
  sentence: "One of everything.",
  cautions: ["proxy"],
  sources: ["standardAtmosphere"],
  widths: [20, 10, 10],
  blocks: [
    { at: "A1", role: "title", rows: [["Everything"]] },
    { at: "A3", role: "label", rows: [["Station, °C"], ["Day"], ["Kind"]] },
    { at: "B3", role: "input", rows: [[20], [46_300], ["adult"]] },
    { at: "A7", role: "computed", rows: [["=VIV.LAPSE(B3,500,1500)"]] },
    { at: "A8", role: "computed", rows: [["=VIV.RAMP(B4,24,8,14)"]], spills: [3, 2] },
  ],
  formats: [
    { range: "B4", format: "date" },
    { range: "A8:A10", format: "date" },
    { range: "A7", format: "tenth" },
  ],
  validation: [
    { range: "B3", kind: "number", least: -50, most: 60, message: "Give a number from -50 to 60." },
    { range: "B4", kind: "date", least: "2020-01-01", most: "2030-12-31", message: "Give a date." },
    { range: "B5", kind: "list", words: ["adult", "young"], message: "Choose adult or young." },
  ],
  rules: [
    { range: "A8:B10", when: "=$B8<10", look: "cold" },
    { range: "B3", when: "=B3>30", look: "stop" },
  ],
  notes: [{ at: "B3", text: "A monthly mean." }],
  system: "metric",
  quantities: [],
  places: {},
  links: [],
  needed: [],
  merges: ["A12:C13"],
  lines: [{ row: 2, lines: 2 }],
  charts: [],
  freeze: { rows: 1, columns: 0 },
};

let open: ReturnType<typeof openWorkbook>;
let workbook: Workbook;
beforeEach(() => {
  open = openWorkbook();
  ({ workbook } = open);
});
afterEach(() => open.close());
const book = () => {
  const found = open.engine.api.getActiveWorkbook();
  if (!found) throw new Error("no workbook");
  return found;
};
const everything = (contents: Awaited<ReturnType<Workbook["read"]>>) => JSON.stringify(contents);

describe("insert", () => {
  test("draws all of a sheet", async () => {
    expect(await workbook.insert([sheet])).toEqual(["Everything"]);
    const reading = await readSheet(workbook, "Everything");
    expect(reading.errors()).toEqual([]);
    expect(reading.at("A7")).toBe(13.5);
    expect(reading.block("A8:B10")).toEqual([
      ["2026-10-05", 24],
      ["2026-10-12", 16],
      ["2026-10-19", 8],
    ]);
    const drawn = book().getSheetByName("Everything");
    if (!drawn) throw new Error("not drawn");
    expect(drawn.getFreeze()).toMatchObject({ ySplit: 1, xSplit: 0 });
    expect(drawn.getSheet().getMergeData()).toMatchObject([{ startRow: 11, endRow: 12, startColumn: 0, endColumn: 2 }]);
    expect(drawn.getRange("B3").getNote()?.note).toBe("A monthly mean.");
    expect(drawn.getColumnWidth(0)).toBeGreaterThan(drawn.getColumnWidth(1) * 1.5);
    expect(drawn.getRowHeight(1)).toBe(2 * drawn.getRowHeight(5));
    expect(drawn.getConditionalFormattingRules()).toHaveLength(2);
    expect(drawn.getRange("B5").getDataValidation()?.rule).toMatchObject({ type: "list", formula1: "adult,young" });
  });

  test.each([
    ["B3", 60, true],
    ["B3", 61, false],
    ["B3", null, true],
    ["B4", 46_300, true],
    ["B4", 20_000, false],
    ["B5", "young", true],
    ["B5", "old", false],
  ])("%s takes %s: %s", async (address, value, fits) => {
    await workbook.insert([sheet]);
    const range = book().getSheetByName("Everything")?.getRange(address);
    range?.setValue(value === null ? { v: null, t: null } : { v: value });
    expect((await range?.getValidatorStatus())?.flat()).toEqual([fits ? "valid" : "invalid"]);
  });

  test("three times in one workbook, each with its own figures", async () => {
    expect(await workbook.insert([sheet, sheet])).toEqual(["Everything", "Everything (2)"]);
    expect(await workbook.insert([sheet])).toEqual(["Everything (3)"]);
    await workbook.write([{ sheet: "Everything (2)", row: 2, column: 1, cells: [[10]] }]);
    const shown = await Promise.all(
      ["Everything", "Everything (2)", "Everything (3)"].map(async (name) =>
        (await readSheet(workbook, name)).at("A7"),
      ),
    );
    expect(shown).toEqual([13.5, 3.5, 13.5]);
  });

  test("is one step of undo", async () => {
    const before = everything(await workbook.read());
    await workbook.insert([sheet, sheet]);
    book().undo();
    expect(everything(await workbook.read())).toBe(before);
    expect(book().getDefinedNames()).toEqual([]);
    book().redo();
    expect((await readSheet(workbook, "Everything")).at("A7")).toBe(13.5);
  });

  test.each([
    ["a rule on an address that is none", { rules: [{ range: "nowhere", when: "=TRUE", look: "note" }] }],
    ["a note on one", { notes: [{ at: "??", text: "lost" }] }],
    ["a date that is none", { validation: [{ range: "B4", kind: "date", least: "soon", most: "late", message: "" }] }],
  ] as const)("%s leaves the workbook as it was", async (_, wrong) => {
    await workbook.insert([sheet]);
    const before = everything(await workbook.read());
    const names = book().getDefinedNames().length;
    await expect(workbook.insert([sheet, { ...sheet, ...wrong }])).rejects.toThrow(/Nothing was changed/);
    expect(everything(await workbook.read())).toBe(before);
    expect(book().getDefinedNames()).toHaveLength(names);
  });

  test("cancelled half way leaves the workbook as it was", async () => {
    const cancel = new AbortController();
    const inserting = workbook.insert([sheet, sheet], { signal: cancel.signal, progress: () => cancel.abort() });
    await expect(inserting).rejects.toThrow(WorkbookError);
    expect(await workbook.sheetNames()).toEqual(["Sheet1"]);
  });
});

describe("write", () => {
  test("text is text, whatever it looks like", async () => {
    const texts = ["=1+1", "+1", "-1", "@x", "007", "12%", "2026-01-01", "TRUE"];
    await workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [texts] }]);
    expect((await readSheet(workbook, "Sheet1")).block("A1:H1")).toEqual([texts]);
  });

  test("any block comes back as it was written", async () => {
    const cell = fc.oneof(
      fc.constant(null),
      fc.integer({ min: -1e6, max: 1e6 }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((value) => !Object.is(value, -0)),
      fc.boolean(),
      fc.string({ minLength: 1, maxLength: 12 }).filter((text) => !/^#(N\/A|[A-Z0-9/?]+!|NAME\?)$/.test(text)),
    );
    const block = fc
      .integer({ min: 1, max: 4 })
      .chain((columns) =>
        fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 6 }),
      );
    await fc.assert(
      fc.asyncProperty(block, async (cells) => {
        const blank = Array.from({ length: 6 }, () => [null, null, null, null]);
        await workbook.write([blank, cells].map((block) => ({ sheet: "Sheet1", row: 0, column: 0, cells: block })));
        const [read] = await workbook.read(["Sheet1"]);
        expect(cells.map((row, i) => row.map((_, j) => read?.cells[i]?.[j]?.value ?? null))).toEqual(cells);
      }),
      { numRuns: 10 },
    );
  });

  test("a cell that a formula elsewhere fills is refused before anything is written", async () => {
    await workbook.write([
      { sheet: "Sheet1", row: 0, column: 0, cells: [[{ formula: "=VIV.LAPSE({20;10},500,1500)" }]] },
    ]);
    const before = everything(await workbook.read());
    const writing = workbook.write([
      { sheet: "Sheet1", row: 5, column: 5, cells: [["first"]] },
      { sheet: "Sheet1", row: 1, column: 0, cells: [["over it"]] },
    ]);
    await expect(writing).rejects.toThrow(/filled by the formula =VIV.LAPSE/);
    expect(everything(await workbook.read())).toBe(before);
  });

  test("the formula and its spill may be written together, and taken back", async () => {
    await workbook.write([
      { sheet: "Sheet1", row: 0, column: 0, cells: [[{ formula: "=VIV.LAPSE({20;10},500,1500)" }]] },
    ]);
    await workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [[13.5], [3.5]] }]);
    expect((await readSheet(workbook, "Sheet1")).state("A2")).toEqual({ value: 3.5 });
    await workbook.write([
      { sheet: "Sheet1", row: 0, column: 0, cells: [[{ formula: "=VIV.LAPSE({20;10},500,1500)" }], [null]] },
    ]);
    expect((await readSheet(workbook, "Sheet1")).state("A2")).toMatchObject({
      value: 3.5,
      spilledFrom: { row: 0, column: 0 },
    });
  });

  test("a sheet that is not there is refused before anything is written", async () => {
    const before = everything(await workbook.read());
    const writing = workbook.write([
      { sheet: "Sheet1", row: 0, column: 0, cells: [[1]] },
      { sheet: "Nowhere", row: 0, column: 0, cells: [[1]] },
    ]);
    await expect(writing).rejects.toThrow('no sheet "Nowhere"');
    expect(everything(await workbook.read())).toBe(before);
  });

  test("far from the sheet's end makes room", async () => {
    await workbook.write([{ sheet: "Sheet1", row: 5_000, column: 40, cells: [["far"]] }]);
    expect((await readSheet(workbook, "Sheet1")).at("AO5001")).toBe("far");
  });
});

test("a sheet whose formulas name the sheet itself goes, and comes back by undo", async () => {
  const name = await workbook.add("Log", [[{ formula: "=Log!B1" }, 20.5]]);
  const stood = await workbook.read();
  await workbook.remove([name]);
  expect(await workbook.sheetNames()).not.toContain(name);
  open.engine.api.getActiveWorkbook()?.undo();
  await open.engine.settle();
  expect(await workbook.read()).toEqual(stood);
  await workbook.remove([name]);
});

test("add, copy, remove, show and selection", async () => {
  await workbook.insert([sheet]);
  expect(
    await workbook.add(
      "Plain",
      [
        ["Cell", "Formula"],
        ["A1", "=1+1"],
      ],
      { widths: [10, 40], headings: 1 },
    ),
  ).toBe("Plain");
  expect((await readSheet(workbook, "Plain")).at("B2")).toBe("=1+1");
  expect(await workbook.add("Plain", [[1]])).toBe("Plain (2)");

  const [copy] = await workbook.copy(["Everything"]);
  expect(copy).toBe("Everything (2)");
  expect(await workbook.sheetNames()).toEqual(["Sheet1", "Everything", "Plain", "Plain (2)", "Everything (2)"]);
  const copied = await readSheet(workbook, "Everything (2)");
  expect(copied.errors()).toEqual([]);
  expect(copied.block("A8:B10")).toEqual((await readSheet(workbook, "Everything")).block("A8:B10"));

  await workbook.show("Everything", 6, 0);
  expect(await workbook.selection()).toMatchObject({ sheet: "Everything", row: 6, column: 0, cell: { value: 13.5 } });
  await workbook.remove(["Plain", "Plain (2)", "Everything (2)"]);
  expect(await workbook.sheetNames()).toEqual(["Sheet1", "Everything"]);
  await expect(workbook.remove(["Sheet1", "Everything"])).rejects.toThrow(/one sheet at least/);
  expect(await workbook.sheetNames()).toEqual(["Sheet1", "Everything"]);
});

test("room lies beyond everything that is written, opened or spilled, and no spill is cut off by a sheet's end", async () => {
  const room = (name: string) => {
    const found = book().getSheetByName(name);
    if (!found) throw new Error(name);
    return [found.getMaxRows(), found.getMaxColumns()] as const;
  };
  const atLeast = (name: string, rows: number, columns: number) => {
    const [most, wide] = room(name);
    expect(most).toBeGreaterThanOrEqual(rows + 2_000);
    expect(wide).toBeGreaterThanOrEqual(columns + 52);
  };
  atLeast("Sheet1", 0, 0);
  await workbook.insert([sheet]);
  atLeast("Everything", 10, 3);
  await workbook.write([{ sheet: "Sheet1", row: 2_999, column: 99, cells: [["far"]] }]);
  atLeast("Sheet1", 3_000, 100);
  await workbook.write([
    { sheet: "Sheet1", row: 2_999, column: 0, cells: [[20]] },
    { sheet: "Sheet1", row: 2_500, column: 1, cells: [[{ formula: "=VIV.LAPSE(A1:A3000,500,1500)" }]] },
  ]);
  expect((await readSheet(workbook, "Sheet1")).at("B5500")).toBe(13.5);
  atLeast("Sheet1", 5_500, 100);
  await workbook.write([
    { sheet: "Sheet1", row: 0, column: 0, cells: [[20]] },
    { sheet: "Sheet1", row: 1, column: 100, cells: [[{ formula: "=VIV.LAPSE(A1:EN1,500,1500)" }]] },
  ]);
  expect((await readSheet(workbook, "Sheet1")).at("CW2")).toBe(13.5);
  atLeast("Sheet1", 5_500, 244);
});
