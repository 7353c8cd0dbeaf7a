import fc from "fast-check";
import { cautions } from "../../functions/cautions";
import { perform } from "../../taskpane/actions/action";
import { hasFunction, spillReferences } from "../../taskpane/actions/formulas";
import { freeze } from "../../taskpane/actions/freeze";
import { sharedCopy } from "../../taskpane/actions/sharedCopy";
import { thaw } from "../../taskpane/actions/thaw";
import { areaOf, cellName } from "../../taskpane/actions/place";
import { entriesOf, isWorked } from "../../taskpane/actions/worked";
import type { SheetContents } from "../../taskpane/workbook";
import { answers, anyWorkbook, type AnySheet } from "./anyWorkbook";
import { MemoryWorkbook } from "./memoryWorkbook";

const filled = (sheets: readonly AnySheet[]): MemoryWorkbook => {
  const workbook = new MemoryWorkbook(answers);
  for (const { name, cells, hidden, locked } of sheets) workbook.put(name, cells, { hidden, locked, format: "0.00" });
  return workbook;
};

const valuesOf = (sheets: readonly SheetContents[]): ReadonlyMap<string, unknown> =>
  new Map(
    sheets.flatMap(({ name, cells }) =>
      cells.flatMap((line, row) =>
        line.flatMap(({ value }, column): [string, unknown][] =>
          value === null ? [] : [[`${name}!${cellName(row, column)}`, value]],
        ),
      ),
    ),
  );

const entriesIn = async (workbook: MemoryWorkbook) =>
  (await workbook.read()).filter(isWorked).flatMap((sheet) => entriesOf(sheet).entries);

describe("over any workbook", () => {
  test("freezing keeps every value, and leaves no VIV formula that it does not name", async () => {
    let frozen = 0;
    await fc.assert(
      fc.asyncProperty(anyWorkbook, async (sheets) => {
        const workbook = filled(sheets);
        const before = await workbook.read();
        const formulas = workbook.functions().length;
        const { left = [] } = await freeze.run(workbook, undefined);
        const after = await workbook.read();
        const values = valuesOf(after);
        for (const [place, value] of valuesOf(before)) expect([place, values.get(place)]).toEqual([place, value]);
        expect(workbook.functions()).toHaveLength(left.length);
        frozen += formulas - left.length;
        // What is no VIV formula, and no cell of its answer, is as it was.
        for (const [i, sheet] of before.entries()) {
          for (const [row, line] of sheet.cells.entries()) {
            for (const [column, state] of line.entries()) {
              if (state.spilledFrom || (state.formula !== undefined && hasFunction(state.formula))) continue;
              expect(after[i]?.cells[row]?.[column]).toEqual(state);
            }
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(frozen).toBeGreaterThan(300);
  });

  test("no formula that stays is cut off from a spill to which it refers", async () => {
    let met = 0;
    await fc.assert(
      fc.asyncProperty(anyWorkbook, async (sheets) => {
        const workbook = filled(sheets);
        const before = await workbook.read();
        await freeze.run(workbook, undefined);
        const after = await workbook.read();
        const formulaAt = (all: readonly SheetContents[], sheet: string, cell: string) => {
          const area = areaOf(cell);
          const found = all.find(({ name }) => name.toLowerCase() === sheet.toLowerCase());
          return area && found?.cells[area.row]?.[area.column]?.formula;
        };
        for (const { name, cells } of after.slice(0, before.length)) {
          for (const { formula } of cells.flat()) {
            for (const { sheet = name, cell } of formula === undefined ? [] : spillReferences(formula)) {
              const referred = formulaAt(before, sheet, cell);
              if (referred === undefined) continue;
              met++;
              expect(formulaAt(after, sheet, cell)).toBe(referred);
            }
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(met).toBeGreaterThan(20);
  });

  test("thawing what was frozen gives back the workbook to the letter", () =>
    fc.assert(
      fc.asyncProperty(anyWorkbook, async (sheets) => {
        const workbook = filled(sheets);
        const before = workbook.snapshot();
        await freeze.run(workbook, undefined);
        await thaw.run(workbook, undefined);
        expect(workbook.snapshot()).toEqual(before);
      }),
      { numRuns: 300 },
    ));

  test("frozen sheet by sheet, and thawed in another order, all the same", () =>
    fc.assert(
      fc.asyncProperty(anyWorkbook, fc.boolean(), async (sheets, turned) => {
        const workbook = filled(sheets);
        const before = workbook.snapshot();
        const names = sheets.map(({ name }) => name);
        for (const name of names) await freeze.run(workbook, [name]);
        await freeze.run(workbook, undefined);
        for (const name of turned ? [...names].reverse() : names) await thaw.run(workbook, [name]);
        expect(workbook.snapshot()).toEqual(before);
      }),
      { numRuns: 150 },
    ));

  test("a cell that was changed is left and named; every other formula is back", async () => {
    let changed = 0;
    await fc.assert(
      fc.asyncProperty(anyWorkbook, fc.nat(), async (sheets, pick) => {
        const workbook = filled(sheets);
        await freeze.run(workbook, undefined);
        const entries = await entriesIn(workbook);
        if (entries.length === 0) return;
        changed++;
        const entry = entries[pick % entries.length] as (typeof entries)[number];
        const row = entry.row + (pick % entry.rows);
        const column = entry.column + (pick % entry.columns);
        await workbook.write([{ sheet: entry.sheet, row, column, cells: [["typed by the keeper"]] }]);
        const { left } = await thaw.run(workbook, undefined);
        expect(left).toHaveLength(1);
        expect(left?.[0]).toMatch(/changed since/);
        const contents = (await workbook.read([entry.sheet]))[0];
        expect(contents?.cells[row]?.[column]?.value).toBe("typed by the keeper");
        expect(await entriesIn(workbook)).toHaveLength(1);
      }),
      { numRuns: 200 },
    );
    expect(changed).toBeGreaterThan(50);
  });
});

describe("a workbook that fails at the n-th call is as it was", () => {
  const sheets: readonly AnySheet[] = [
    {
      name: "Juniper's log",
      hidden: false,
      locked: false,
      cells: [
        [{ formula: "=VIV.RAMP(1,2,3,4)" }, null, null],
        [null, null, null],
        [null, null, null],
        [{ formula: "=VIV.LAPSE(1,2,3)" }, 5, "x"],
      ],
    },
    { name: "Other", hidden: true, locked: false, cells: [[{ formula: '=IF(A2="","",VIV.AGE(A2,B2))' }, 1]] },
  ];
  const cases: readonly [
    string,
    (workbook: MemoryWorkbook) => Promise<unknown>,
    (workbook: MemoryWorkbook) => Promise<unknown>,
  ][] = [
    ["freeze", () => Promise.resolve(), (workbook) => freeze.run(workbook, undefined)],
    [
      "freeze beside entries",
      (workbook) => freeze.run(workbook, ["Other"]),
      (workbook) => freeze.run(workbook, undefined),
    ],
    ["thaw", (workbook) => freeze.run(workbook, undefined), (workbook) => thaw.run(workbook, undefined)],
    ["thaw a part", (workbook) => freeze.run(workbook, undefined), (workbook) => thaw.run(workbook, ["Other"])],
    ["shared copy", () => Promise.resolve(), (workbook) => sharedCopy.run(workbook, ["Juniper's log", "Other"])],
  ];
  test.each(cases)("%s", async (_, prepare, act) => {
    const whole = filled(sheets);
    await prepare(whole);
    whole.calls = [];
    await act(whole);
    const calls = whole.calls.length;
    expect(calls).toBeGreaterThan(1);
    for (let failing = 1; failing <= calls; failing++) {
      const workbook = filled(sheets);
      await prepare(workbook);
      const before = workbook.snapshot();
      workbook.calls = [];
      workbook.failing = failing;
      await expect(act(workbook)).rejects.toThrow(/Nothing was changed/);
      expect([failing, workbook.snapshot()]).toEqual([failing, before]);
    }
  });

  test.each(cases)("%s, cancelled", async (_, prepare, act) => {
    const workbook = filled(sheets);
    await prepare(workbook);
    const before = workbook.snapshot();
    const stopper = new AbortController();
    const write = workbook.write.bind(workbook);
    // The keeper presses Cancel while the cells are being written.
    workbook.write = (changes, options) =>
      write(changes, { ...options, progress: () => stopper.abort(), signal: stopper.signal });
    await expect(act(workbook)).rejects.toThrow("Cancelled");
    workbook.write = write;
    expect(workbook.snapshot()).toEqual(before);
  });
});

describe("in words", () => {
  const one = () =>
    new MemoryWorkbook(() => [[1], [2]])
      .put("Year plan", [[{ formula: "=VIV.RAMP(1,2,3,4)" }], [null], [{ formula: "=A1+1" }]])
      .put("Locked", [[{ formula: "=VIV.AGE(1,2)" }], [null]], { locked: true });

  test("the description counts what will change, and names what cannot", async () => {
    const words = await freeze.describe(one(), undefined);
    expect(words).toMatchObject({ possible: true, ask: true });
    expect(words.text).toContain("1 formula will become fixed figures");
    expect(words.text).toContain("1 formula cannot be frozen");
    expect(words.list).toEqual(["Locked!A1: the sheet is protected", "'Year plan'!A1:A2"]);
  });

  test("afterwards: how many, where they are kept, what is left", async () => {
    const { text, left } = await freeze.run(one(), undefined);
    expect(text).toBe(
      '1 formula in 1 sheet is now fixed figures (2 cells). The formulas are kept on "Worked formulas". Not frozen, and not touched:',
    );
    expect(left).toEqual(["Locked!A1: the sheet is protected"]);
  });

  test("nothing is done before the keeper has agreed, nor to another workbook than was described", async () => {
    const workbook = one();
    const before = workbook.snapshot();
    const first = await perform(freeze, workbook, undefined);
    expect(first.kind).toBe("ask");
    expect(workbook.snapshot()).toEqual(before);
    await workbook.write([{ sheet: "Year plan", row: 5, column: 5, cells: [[{ formula: "=VIV.RELEASE()" }]] }]);
    const agreed = first.kind === "ask" ? first.words : undefined;
    const second = await perform(freeze, workbook, undefined, {}, agreed);
    expect(second.kind).toBe("ask");
    const third = await perform(freeze, workbook, undefined, {}, second.kind === "ask" ? second.words : undefined);
    expect(third.kind).toBe("done");
    expect(workbook.functions()).toEqual(["Locked 0,0"]);
  });

  test("a shared copy of formulas that are still worked out says so, and not that there were none", async () => {
    const workbook = new MemoryWorkbook(() => [[{ error: "#BUSY!" }]]).put("Plan", [[{ formula: "=VIV.AGE(1,2)" }]]);
    const { text, left } = await sharedCopy.run(workbook, ["Plan"]);
    expect(text).toBe('Copied to "Plan (2)". No formula could be frozen, and none was touched:');
    expect(left).toEqual(["'Plan (2)'!A1 is still being worked out: try again in a moment"]);
    const plain = new MemoryWorkbook().put("Plan", [[1]]);
    expect((await sharedCopy.run(plain, ["Plan"])).text).toBe('Copied to "Plan (2)". There was no formula to freeze.');
  });

  test("there is nothing to freeze, or to thaw", async () => {
    const empty = new MemoryWorkbook().put("Sheet1", [[1, "VIV.LAPSE(1)"]]);
    expect(await perform(freeze, empty, undefined)).toMatchObject({
      kind: "refused",
      words: { text: /nothing to freeze/ },
    });
    expect(await perform(thaw, empty, undefined)).toMatchObject({
      kind: "refused",
      words: { text: /nothing to put back/ },
    });
  });

  test("the sheet of entries reads well: title, place, formula as text, first answer, dates as dates", async () => {
    const workbook = new MemoryWorkbook(() => [[46_300]]).put("Plan", [[{ formula: "=VIV.NEXTMEAL(1,2)" }]], {
      format: "yyyy-mm-dd",
    });
    await freeze.run(workbook, undefined);
    const worked = (await workbook.read()).find(isWorked);
    expect(worked?.name).toBe("Worked formulas");
    expect(worked?.cells[2]?.map(({ value }) => value)).toEqual([
      "Sheet",
      "Cells",
      "Formula",
      "First answer",
      "Check",
      "Holds for",
      "In words",
    ]);
    expect(worked?.cells[3]?.slice(0, 4).map(({ value }) => value)).toEqual([
      "Plan",
      "A1",
      "=VIV.NEXTMEAL(1,2)",
      "2026-10-05",
    ]);
  });

  test("a formula that is filled down is one line, with the sources and cautions of its function below", async () => {
    const rows = Array.from({ length: 60 }, (_, i) => [100 + i, { formula: `=VIV.MASSLOSS($A$1,A${i + 1})` }]);
    const workbook = new MemoryWorkbook(() => [[0.1]]).put("Log", [...rows, [1, { formula: "=VIV.AGE(A1,A2)" }]]);
    const words = await freeze.describe(workbook, undefined);
    expect(words.list).toEqual(["Log!B1:B60", "Log!B61"]);
    await freeze.run(workbook, undefined);
    const worked = (await workbook.read()).find(isWorked) as SheetContents;
    const lines = worked.cells.slice(3).map((line) => [line[0], line[1], line[2], line[5]].map((cell) => cell?.value));
    expect(lines.slice(0, 2)).toEqual([
      ["Log", "B1:B60", "=VIV.MASSLOSS($A$1,A1)", "each row"],
      ["Log", "B61", "=VIV.AGE(A1,A2)", null],
    ]);
    const below = lines
      .slice(3)
      .map(([kind, , text]) => [kind, text].map((one) => JSON.stringify(one).replaceAll(/^"|"$/g, "")).join(": "));
    expect(below[0]).toMatch(/^Behind the figures: Vivarium Almanac \d+\.\d+\.\d+, \d{4}-\d\d-\d\d$/);
    expect(below).toContain(`Caution: MASSLOSS: ${cautions.noVet}`);
    expect(below).toContain("Source: MASSLOSS, AGE: By definition.");
    // One cell that has been changed keeps its own entry, and no other's.
    await workbook.write([{ sheet: "Log", row: 9, column: 1, cells: [[7]] }]);
    expect((await thaw.run(workbook, undefined)).left).toEqual(["Log!B10 has been changed since, or moved"]);
    expect(workbook.functions()).toHaveLength(60);
    expect((await workbook.read(["Log"]))[0]?.cells[59]?.[1]?.formula).toBe("=VIV.MASSLOSS($A$1,A60)");
    await workbook.write([{ sheet: "Log", row: 9, column: 1, cells: [[0.1]] }]);
    await thaw.run(workbook, undefined);
    expect((await workbook.read(["Log"]))[0]?.cells[9]?.[1]?.formula).toBe("=VIV.MASSLOSS($A$1,A10)");
    expect(await workbook.sheetNames()).toEqual(["Log"]);
  });

  test("a figure keeps its format, so that a date stays a date", async () => {
    const workbook = new MemoryWorkbook(() => [[46_300]]).put("Plan", [[{ formula: "=VIV.NEXTMEAL(1,2)" }]], {
      format: "yyyy-mm-dd",
    });
    await freeze.run(workbook, undefined);
    expect((await workbook.read(["Plan"]))[0]?.cells[0]?.[0]).toEqual({ value: 46_300, format: "yyyy-mm-dd" });
  });

  test("an answer that looks empty stays text, so that other formulas do not count it as 0", async () => {
    const workbook = new MemoryWorkbook((formula) => [[formula.startsWith("=VIV") ? "" : 1]]).put("Log", [
      [{ formula: "=VIV.AGE(A2,B2)" }],
    ]);
    await freeze.run(workbook, undefined);
    expect((await workbook.read(["Log"]))[0]?.cells[0]?.[0]).toEqual({ value: "", formula: '=""' });
  });

  test("a sheet that is gone or protected since is named, and its entries stay", async () => {
    const workbook = one();
    await freeze.run(workbook, undefined);
    const plan = workbook.sheets.find(({ name }) => name === "Year plan");
    if (plan) plan.locked = true;
    expect((await thaw.run(workbook, undefined)).left).toEqual(["'Year plan'!A1:A2: the sheet is protected"]);
    if (plan) plan.name = "Other";
    expect((await thaw.run(workbook, undefined)).left).toEqual([
      "'Year plan'!A1:A2: there is no sheet of that name any more",
    ]);
    expect(await entriesIn(workbook)).toHaveLength(1);
  });

  test("a row of the entries that was changed is named, and the others are thawed", async () => {
    const workbook = new MemoryWorkbook(() => [[1]]).put("Plan", [
      [{ formula: "=VIV.RELEASE()" }, { formula: "=VIV.AGE(1,2)" }],
    ]);
    await freeze.run(workbook, undefined);
    await workbook.write([{ sheet: "Worked formulas", row: 3, column: 1, cells: [["nowhere"]] }]);
    expect((await thaw.run(workbook, undefined)).left).toEqual([
      'Row 4 of "Worked formulas" cannot be read: it has been changed',
    ]);
    expect(workbook.functions()).toEqual(["Plan 0,1"]);
    expect(await entriesIn(workbook)).toEqual([]);
  });

  test("a keeper's note on the sheet of entries keeps that sheet", async () => {
    const workbook = one();
    await freeze.run(workbook, undefined);
    await workbook.write([{ sheet: "Worked formulas", row: 9, column: 7, cells: [["my note"]] }]);
    await thaw.run(workbook, undefined);
    expect(await workbook.sheetNames()).toContain("Worked formulas");
    expect(workbook.functions()).toEqual(["Year plan 0,0", "Locked 0,0"]);
  });
});

test("where no sheet is chosen it is asked for: nothing is said of formulas that nobody looked for", async () => {
  const workbook = new MemoryWorkbook(answers).put("Sheet1", [[{ formula: "=VIV.LAPSE(24,300,1400)" }]]);
  for (const action of [freeze, thaw]) {
    expect(await action.describe(workbook, [])).toMatchObject({ possible: false, text: "Choose at least one sheet." });
  }
});
