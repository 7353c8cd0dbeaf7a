import { evaluate } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import { lapse } from "../../functions/climate/lapse";
import { ramp } from "../../functions/winter/ramp";
import { perform, type Action } from "../../taskpane/actions/action";
import { clearExample } from "../../taskpane/actions/clearExample";
import { importReadings, type ReadingsChoice } from "../../taskpane/actions/importReadings";
import { insertFormula } from "../../taskpane/actions/insertFormula";
import { insertSheet } from "../../taskpane/actions/insertSheet";
import { openFile } from "../../taskpane/actions/openFile";
import { probe } from "../../taskpane/actions/probe";
import { reenter } from "../../taskpane/actions/reenter";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { fileName, saveFile } from "../../taskpane/actions/saveFile";
import type { SavedFile } from "../../taskpane/actions/savedFile";
import { blankYear, startYear } from "../../taskpane/actions/startYear";
import { picturesIn } from "../../taskpane/actions/picturesIn";
import { picturesOf, savePicture } from "../../taskpane/actions/savePicture";
import { areaOf } from "../../taskpane/actions/place";
import { recognise } from "../../taskpane/actions/template";
import { sheets } from "../../taskpane/sheets/catalogue";
import { clearing } from "../../taskpane/sheets/clear";
import { paste } from "../../taskpane/sheets/readings";
import { cellOf } from "../../taskpane/sheets/shared/page";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { WorkbookError } from "../../taskpane/workbook";
import { MemoryWorkbook } from "./memoryWorkbook";

const coolingPlan = sheets.find(({ key }) => key === "coolingPlan") as Sheet;
const one = () => new MemoryWorkbook(() => [[1]]).put("Sheet1", []);
const example = lapse.examples[0];
const nothing = (): Promise<void> => Promise.resolve();

describe("insert a sheet", () => {
  test("says what changes, and the name that the sheet was given", async () => {
    const workbook = one().put(coolingPlan.name, [["mine"]]);
    expect(await insertSheet.describe(workbook, [coolingPlan])).toMatchObject({ possible: true, ask: false });
    const { text } = await insertSheet.run(workbook, [coolingPlan]);
    expect(text).toContain(`"${coolingPlan.name} (2)" is in the workbook`);
    expect((await workbook.read([coolingPlan.name]))[0]?.cells[0]?.[0]?.value).toBe("mine");
  });
});

describe("clear the example", () => {
  test.each(sheets.filter((sheet) => clearing(sheet).length > 0).map((sheet) => [sheet.name, sheet] as const))(
    "of %s: the cells to fill, and no others",
    async (_, sheet) => {
      const workbook = one();
      await insertSheet.run(workbook, [sheet]);
      const before = (await workbook.read([sheet.name]))[0];
      const words = await clearExample.describe(workbook);
      expect(words).toMatchObject({ possible: true, ask: true });
      expect(words.text).not.toContain("your own");
      await clearExample.run(workbook);
      const after = (await workbook.read([sheet.name]))[0];
      const emptied = before?.cells.flatMap((line, row) =>
        line.filter(
          (state, column) => JSON.stringify(state) !== JSON.stringify(after?.cells[row]?.[column] ?? { value: null }),
        ),
      );
      expect(emptied?.length).toBeGreaterThan(0);
      expect(after && recognise(after, sheets)).toEqual({ template: sheet, inPlace: true });
      expect(await clearExample.describe(workbook)).toMatchObject({
        possible: false,
        text: `"${sheet.name}" is clear already.`,
      });
    },
  );

  test("counts what the keeper has put there, and says that it goes too", async () => {
    const workbook = one();
    await insertSheet.run(workbook, [coolingPlan]);
    const [address = ""] = clearing(coolingPlan);
    const cell = address.split(":")[0] ?? "";
    const [row, column] = [Number(/\d+/.exec(cell)?.[0]) - 1, cell.charCodeAt(0) - 65];
    await workbook.write([{ sheet: coolingPlan.name, row, column, cells: [["Juniper II"]] }]);
    expect((await clearExample.describe(workbook)).text).toContain("1 cell of these is your own");
  });

  test("does nothing on another sheet, on a protected one, or where rows have moved", async () => {
    const workbook = one();
    expect(await clearExample.describe(workbook)).toMatchObject({ possible: false, text: /not a sheet of this pane/ });
    await insertSheet.run(workbook, [coolingPlan]);
    const stored = workbook.sheets.at(-1);
    if (!stored) throw new Error("no sheet");
    stored.locked = true;
    expect(await clearExample.describe(workbook)).toMatchObject({ possible: false, text: /protected/ });
    stored.locked = false;
    // A row is inserted under the title.
    const moved = [...stored.contents].map(([key, content]): [string, typeof content] => {
      const [row = 0, column = 0] = key.split(",").map(Number);
      return [row === 0 ? key : `${row + 1},${column}`, content];
    });
    stored.contents.clear();
    for (const [key, content] of moved) stored.contents.set(key, content);
    expect(await clearExample.describe(workbook)).toMatchObject({ possible: false, text: /have been moved/ });
    const before = workbook.snapshot();
    await clearExample.run(workbook);
    expect(workbook.snapshot()).toEqual(before);
  });
});

describe("insert a formula", () => {
  const choice = { definition: lapse, example };

  test("at the selected cell, when it is empty", async () => {
    const workbook = one();
    workbook.selected = { sheet: "Sheet1", row: 4, column: 1 };
    const outcome = await perform(insertFormula, workbook, choice);
    expect(outcome.kind).toBe("done");
    expect((await workbook.selection()).cell.formula).toBe("=VIV.LAPSE(24,300,1400)");
  });

  test("never over something without asking; the question says what is there", async () => {
    const workbook = new MemoryWorkbook().put("My log", [["Juniper"]]);
    const before = workbook.snapshot();
    const asked = await perform(insertFormula, workbook, choice);
    expect(asked).toEqual({
      kind: "ask",
      words: {
        text: "'My log'!A1 holds Juniper. =VIV.LAPSE(24,300,1400) will stand in its place.",
        possible: true,
        ask: true,
      },
    });
    expect(workbook.snapshot()).toEqual(before);
    // The keeper selects another full cell, then agrees to the first question: nothing is lost.
    await workbook.write([{ sheet: "My log", row: 2, column: 2, cells: [[5]] }]);
    workbook.selected = { sheet: "My log", row: 2, column: 2 };
    const again = await perform(insertFormula, workbook, choice, {}, asked.kind === "ask" ? asked.words : undefined);
    expect(again).toMatchObject({ kind: "ask", words: { text: /C3 holds 5/ } });
    expect((await workbook.selection()).cell.value).toBe(5);
    const done = await perform(insertFormula, workbook, choice, {}, again.kind === "ask" ? again.words : undefined);
    expect(done.kind).toBe("done");
  });

  test("not where its answer would be blocked, nor into another answer, nor on a protected sheet", async () => {
    const longer = { definition: ramp, example: ramp.examples[0] };
    const workbook = new MemoryWorkbook((formula) => (formula === "=TWO" ? [[1], [2]] : [[1]]))
      .put("Sheet1", [[null], [null], ["in the way"]])
      .put("Spill", [[{ formula: "=TWO" }]])
      .put("Locked", [[null]], { locked: true });
    expect(await perform(insertFormula, workbook, longer)).toMatchObject({
      kind: "refused",
      words: { text: /A3 already hold/ },
    });
    workbook.selected = { sheet: "Spill", row: 1, column: 0 };
    expect(await perform(insertFormula, workbook, choice)).toMatchObject({
      kind: "refused",
      words: { text: /another formula's answer/ },
    });
    workbook.selected = { sheet: "Locked", row: 0, column: 0 };
    expect(await perform(insertFormula, workbook, choice)).toMatchObject({
      kind: "refused",
      words: { text: /protected/ },
    });
  });
});

describe("re-enter formulas", () => {
  const stuck = () =>
    new MemoryWorkbook((formula) => [
      [formula.includes("STUCK") || formula.startsWith("=_xl") ? { error: "#NAME?" } : 1],
    ])
      .put("Log", [
        [
          { formula: "=VIV.STUCK()" },
          { formula: "=VIV.AGE(1,2)" },
          { formula: "=STUCK()" },
          { formula: "=_xldudf_VIV_AGE(1,2)" },
        ],
      ])
      .put("Locked", [[{ formula: "=VIV.STUCK()" }]], { locked: true });

  test("those that are stuck, as they stand; the stored spelling becomes the typed one", async () => {
    const workbook = stuck();
    expect(await reenter.describe(workbook)).toMatchObject({ ask: true, list: ["Log!A1", "Log!D1"] });
    const { text, left } = await reenter.run(workbook);
    expect(text).toContain("2 formulas entered again");
    expect(left).toEqual(["Locked!A1: the sheet is protected"]);
    expect((await workbook.read(["Log"]))[0]?.cells[0]?.map(({ formula }) => formula)).toEqual([
      "=VIV.STUCK()",
      "=VIV.AGE(1,2)",
      "=STUCK()",
      "=VIV.AGE(1,2)",
    ]);
  });

  test("says when none is", async () =>
    expect(await reenter.describe(one())).toMatchObject({ possible: false, text: /No VIV formula is stuck/ }));
});

describe("probe", () => {
  const over = (answer: number | { error: string }) => new MemoryWorkbook(() => [[answer]]).put("Sheet1", [[1]]);
  test.each([
    [{ error: "#N/A" }, /^A blank is handed over as a blank by the test\./],
    [10, /^A blank is handed over as 0 by /],
  ] as const)("%j", async (answer, words) => {
    const workbook = over(answer);
    const before = workbook.snapshot();
    expect((await probe.run(workbook)).text).toMatch(words);
    expect(workbook.snapshot()).toEqual(before);
  });

  test("the functions are not at work", async () => {
    const workbook = over({ error: "#NAME?" });
    expect((await probe.run(workbook)).text).toMatch(/did not answer \(#NAME\?\)/);
    expect(await workbook.sheetNames()).toEqual(["Sheet1"]);
  }, 10_000);

  test("the function that it uses is there, and answers as it takes it to", () => {
    const fluctuation = catalogue.find(({ name }) => name === "FLUCTUATION");
    expect(fluctuation?.calculate({ high: 10, low: 0 })).toBe(10);
  });
});

describe("files", () => {
  test("saves the chosen sheets, and changes nothing", async () => {
    const workbook = new MemoryWorkbook(() => [[1]]).put("Winter: 2026/27", [[{ formula: "=VIV.RELEASE()" }]]);
    const before = workbook.snapshot();
    const saved: SavedFile[] = [];
    const choice = { names: ["Winter: 2026/27"], save: (file: SavedFile) => void saved.push(file) };
    expect((await saveFile.describe(workbook, choice)).text).toContain("1 VIV formula as fixed figures");
    await saveFile.run(workbook, choice);
    expect(saved.map(({ name }) => name)).toEqual(["Winter 2026 27.xlsx"]);
    expect(workbook.saved).toEqual([["Winter: 2026/27"]]);
    expect(workbook.snapshot()).toEqual(before);
    expect(await saveFile.describe(workbook, { ...choice, names: [] })).toMatchObject({ possible: false });
  });

  test("file names", () => {
    expect(fileName(' a<b>:"c" ', "png")).toBe("a b c.png");
    expect(fileName("???", "svg")).toBe("Workbook.svg");
  });

  test("opens a file only where the workbook can, and lists first what could not be carried over", async () => {
    const file = { name: "Log.xlsx", bytes: new Uint8Array(4) };
    const workbook = one();
    expect(await openFile.describe(workbook, file)).toMatchObject({ possible: false });
    const found = { sheets: ["Log"], left: ["The chart on Log"] };
    workbook.open = () => Promise.resolve(found);
    workbook.look = () => Promise.resolve(found);
    expect(await openFile.describe(workbook, undefined)).toMatchObject({ possible: false, text: /Choose/ });
    expect(await openFile.describe(workbook, { ...file, name: "Log.ods" })).toMatchObject({
      possible: false,
      text: /neither/,
    });
    expect(await openFile.describe(workbook, file)).toMatchObject({
      possible: true,
      ask: true,
      text: /^"Log\.xlsx", 1 sheet, will take the place of "Sheet1"/,
      list: ["The chart on Log"],
    });
    expect(await openFile.run(workbook, file)).toEqual({
      text: '"Log.xlsx" is open: 1 sheet. The file itself stays as it is: save the workbook to keep your work. Not carried over:',
      left: ["The chart on Log"],
    });
  });
});

describe("pictures", () => {
  test("of the sheets with charts whose cells still stand in their places", async () => {
    const workbook = one();
    await insertSheet.run(workbook, [coolingPlan]);
    expect(coolingPlan.charts.length).toBeGreaterThan(0);
    expect(await picturesOf(workbook)).toEqual(
      [
        ...coolingPlan.charts.map(({ title }) => title),
        "The year as a strip",
        "The year as a ring",
        "The sheet as a page",
      ].map((picture) => ({
        sheet: coolingPlan.name,
        picture,
      })),
    );
    const contents = (await workbook.read([coolingPlan.name]))[0];
    if (!contents) throw new Error("no sheet");
    expect(picturesIn({ ...contents, cells: [contents.cells[0] ?? [], [], ...contents.cells.slice(1)] })).toEqual([]);
    const gone = {
      sheet: coolingPlan.name,
      picture: "none",
      kind: "svg",
      paper: "light",
      document: {} as Document,
      save: () => Promise.resolve(),
      today: new Date(0),
    } as const;
    expect(await savePicture.describe(workbook, gone)).toMatchObject({ possible: false });
    await expect(savePicture.run(workbook, gone)).rejects.toThrow("Nothing was saved");
  });
});

describe("import readings", () => {
  const text = [
    "Time;Temp °C;Note",
    "2026-01-10 00:00;5,5;",
    "2026-01-10 12:00;6,5;=1+1",
    "2026-01-11 00:00;cold;",
    "yesterday;7;",
    "2026-01-11 12:00;7,5;@home",
  ].join("\n");
  const choice = (): ReadingsChoice => {
    const { layout, titles } = guessLayout(text, { others: [2] });
    return { name: "box.csv", text, layout, titles, evaluate };
  };

  test("rows land with their times; what could not be read is named by row and reason", async () => {
    const workbook = one();
    const shares: number[] = [];
    const { text: words, left } = await importReadings.run(workbook, choice(), {
      progress: (share) => shares.push(share),
    });
    expect(words).toBe('4 readings on "Readings". Fill in its two limits. 2 rows could not be read as they stand:');
    expect(left?.[0]).toMatch(/^Row 4: temperature 'cold' is no number \(kept/);
    expect(left?.[1]).toMatch(/^Row 5: time 'yesterday' .* \(left out\)$/);
    const cells = (await workbook.read(["Readings"]))[0]?.cells ?? [];
    expect(cells.slice(4, 8).map((row) => row.slice(0, 3).map(({ value }) => value))).toEqual([
      [46_032, 5.5, null],
      [46_032.5, 6.5, "=1+1"],
      [46_033, "cold", null],
      [46_033.5, 7.5, "@home"],
    ]);
    expect(
      cells
        .flat()
        .filter(({ formula }) => formula !== undefined)
        .map(({ formula }) => formula),
    ).toEqual(["=VIV.DAYTABLE(A5:A8,B5:B8)", '=IF(COUNT(F2,H2)<2,"",VIV.TIMEOUTSIDE(A5:A8,B5:B8,F2,H2))']);
    expect(cells[1]?.map(({ value }) => value).slice(4, 8)).toEqual(["Low °C", null, "High °C", null]);
    expect(cells[4]?.[0]?.format).toBe("yyyy-mm-dd hh:mm");
    expect(shares.at(-1)).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  test("more readings than the program hands to a function: asked first, then the days are fixed figures", async () => {
    const workbook = Object.assign(one(), { mostRowsOfCall: () => 3 });
    expect(await importReadings.describe(workbook, choice())).toMatchObject({
      possible: true,
      ask: true,
      text: expect.stringContaining("It has more rows than the 3 that the test hands to a function here") as string,
    });
    const { text: words } = await importReadings.run(workbook, choice());
    expect(words).toContain("the table of days is written as fixed figures, and the time outside limits is left out");
    const cells = (await workbook.read(["Readings"]))[0]?.cells ?? [];
    expect(cells.flat().filter(({ formula = '=""' }) => formula !== '=""')).toEqual([]);
    expect(cells.slice(4, 8).map((row) => row[1]?.value)).toEqual([5.5, 6.5, "cold", 7.5]);
    // Day, high, low of two days; too few hours for more; readings, skipped, hours covered.
    expect(cells.slice(4, 6).map((row) => row.slice(4, 13).map(({ value }) => value))).toEqual([
      [46_032, 6.5, 5.5, "", "", "", 2, 0, 0],
      [46_033, 7.5, 7.5, "", "", "", 1, 1, 0],
    ]);
    expect(cells[4]?.[4]?.format).toBe("yyyy-mm-dd");
    // Five rows: the heading is none, nor is what follows the last.
    const enough = Object.assign(one(), { mostRowsOfCall: () => 5 });
    expect(await importReadings.describe(enough, { ...choice(), text: `${text}\n\n` })).toMatchObject({ ask: false });
  });

  test("where the sheet of that name has room: into it, without its invented limits and plan", async () => {
    const workbook = one();
    const { text: words } = await importReadings.run(workbook, {
      ...choice(),
      layout: { ...choice().layout, others: [] },
    });
    expect(words).toContain('4 readings on "Readings". Fill in its framed cells: limits and plan.');
    const contents = (await workbook.read(["Readings"]))[0];
    const { row, column } = areaOf(paste.at) as { row: number; column: number };
    const landed = contents?.cells
      .slice(row, row + 5)
      .map((line) => line.slice(column, column + 2).map(({ value }) => value));
    expect(landed).toEqual([
      [46_032, 5.5],
      [46_032.5, 6.5],
      [46_033, "cold"],
      [46_033.5, 7.5],
      [null, null],
    ]);
    const template = sheets.find(({ key }) => key === paste.sheet) as Sheet;
    const pasted = ["pasted.time", "pasted.celsius"].map((name) => cellOf(template, name));
    for (const address of clearing(template).filter((one) => !pasted.includes(one))) {
      const area = areaOf(address) as { row: number; column: number };
      expect([address, contents?.cells[area.row]?.[area.column]?.value ?? null]).toEqual([address, null]);
    }
  });

  test("nothing is written before an open question is answered, nor when no row can be read", async () => {
    const workbook = one();
    const before = workbook.snapshot();
    expect(await perform(importReadings, workbook, { ...choice(), open: "Say first." })).toMatchObject({
      kind: "refused",
    });
    expect(await perform(importReadings, workbook, undefined)).toMatchObject({ kind: "refused" });
    expect((await importReadings.run(workbook, { ...choice(), text: "a;b;c\nd;e;f" })).text).toMatch(
      /Nothing was changed/,
    );
    expect(workbook.snapshot()).toEqual(before);
  });
});

test("any failure is told in words, and a stranger one too", async () => {
  const broken: Action = { ...probe, run: () => Promise.reject(new TypeError("x is not a function")) };
  await expect(perform(broken, one(), undefined)).rejects.toThrow(TypeError);
});

describe("a workbook that fails at the n-th call, or a keeper who cancels, leaves it as it was", () => {
  const cases: readonly [
    string,
    (workbook: MemoryWorkbook) => Promise<unknown>,
    (workbook: MemoryWorkbook, signal?: AbortSignal) => Promise<unknown>,
  ][] = [
    ["insert a sheet", nothing, (workbook) => insertSheet.run(workbook, [coolingPlan])],
    [
      "clear",
      (workbook) => insertSheet.run(workbook, [coolingPlan]),
      (workbook, signal) => clearExample.run(workbook, undefined, { signal }),
    ],
    [
      "insert a formula",
      nothing,
      (workbook, signal) => insertFormula.run(workbook, { definition: lapse, example }, { signal }),
    ],
    [
      "re-enter",
      (workbook) => Promise.resolve(workbook.put("Stuck", [[{ formula: "=_xldudf_VIV_AGE(1,2)" }]])),
      (workbook, signal) => reenter.run(workbook, undefined, { signal }),
    ],
    [
      "start a year",
      nothing,
      (workbook, signal) =>
        startYear.run(workbook, { ...blankYear, label: "Juniper", sheets: ["animals", "coolingPlan"] }, { signal }),
    ],
    ["probe", nothing, (workbook, signal) => probe.run(workbook, undefined, { signal })],
    ...[[], [2]].map((others): (typeof cases)[number] => [
      others.length === 0 ? "readings" : "readings with further columns",
      nothing,
      (workbook, signal) => {
        const text = "Time,°C,%\n2026-01-10 00:00,5.5,80\n2026-01-11 00:00,6.5,81\n";
        const { layout, titles } = guessLayout(text, { others });
        return importReadings.run(workbook, { name: "box.csv", text, layout, titles, evaluate }, { signal });
      },
    ]),
  ];
  test.each(cases)("%s: every call", async (name, prepare, act) => {
    const whole = one();
    await prepare(whole);
    whole.calls = [];
    await act(whole);
    const calls = whole.calls.length;
    expect(calls).toBeGreaterThan(0);
    for (let failing = 1; failing <= calls; failing++) {
      const workbook = one();
      await prepare(workbook);
      const before = workbook.snapshot();
      workbook.calls = [];
      workbook.failing = failing;
      const failure: unknown = await act(workbook).then(
        () => undefined,
        (reason: unknown) => reason,
      );
      // Where the keeper was, to be shown again, is no reason to fail.
      const done = failure === undefined && workbook.calls[failing - 1]?.startsWith("selection");
      // The probe alone leaves nothing behind, and so may try again and succeed.
      if (!done && (failure !== undefined || name !== "probe")) expect(failure).toBeInstanceOf(WorkbookError);
      expect([workbook.calls, workbook.snapshot()]).toEqual([workbook.calls, done ? whole.snapshot() : before]);
    }
  });

  test.each(cases.slice(1))("%s: cancelled", async (_, prepare, act) => {
    const workbook = one();
    await prepare(workbook);
    const before = workbook.snapshot();
    await expect(act(workbook, AbortSignal.abort())).rejects.toThrow("Cancelled. Nothing was changed.");
    expect(workbook.snapshot()).toEqual(before);
  });
});
