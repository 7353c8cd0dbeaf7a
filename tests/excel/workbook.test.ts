import fc from "fast-check";
import { excelWorkbook } from "../../addin/excel/workbook";
import { readXlsx } from "../../addin/file/read";
import { evaluate } from "../../addin/boundary/evaluate";
import { isoOf } from "../../functions/dates";
import { addRows } from "../../taskpane/actions/addRows";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { linkedCells, tabsOf } from "../../taskpane/actions/links";
import { importReadings } from "../../taskpane/actions/importReadings";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { cleared } from "../../taskpane/sheets/clear";
import { areaOfLog } from "../../taskpane/sheets/grown";
import { growing, longer } from "../../taskpane/sheets/growing";
import { sheets } from "../../taskpane/sheets/catalogue";
import { printOf } from "../../taskpane/sheets/print";
import { formats, type Sheet } from "../../taskpane/sheets/sheet";
import { isPlotted, plottedOf } from "../../taskpane/pictures/plotted";
import { areaOf, columnLetters } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import { WorkbookError, type Change } from "../../taskpane/workbook";
import { FakeExcel, type Answer } from "./fake";

/** Formulas of these tests answer by what they say: SPILL(rows,columns), or one cell of 7. */
const answer: Answer = (formula) => {
  const size = /SPILL\((\d+),(\d+)\)/.exec(formula);
  if (!size) return [[7]];
  const [rows, columns] = [Number(size[1]), Number(size[2])];
  return Array.from({ length: rows }, (_, i) => Array.from({ length: columns }, (_, j) => i * columns + j + 1));
};
const open = (): FakeExcel => {
  const excel = new FakeExcel(answer);
  Object.assign(globalThis, excel.globals());
  return excel;
};

/** A small sheet that uses every field of the data, so that its loops are run with every kind of entry. */
const every: Sheet = {
  key: "every",
  name: "Every field",
  sentence: "A sheet for tests.",
  cautions: ["noVet"],
  sources: ["practice"],
  widths: [12, 8],
  blocks: [
    { at: "A1", role: "title", rows: [["Every field"]] },
    { at: "A2", role: "heading", rows: [["Day", "°C"]] },
    {
      at: "A3",
      role: "input",
      rows: [
        [46300, 24.5],
        [null, null],
        [46302, 0],
      ],
    },
    { at: "C3", role: "computed", rows: [["=VIV.SPILL(3,2)"]], spills: [3, 2] },
    {
      at: "A7",
      role: "text",
      rows: [
        ["-5 is cold", "2026-10-05"],
        ["@home", "TRUE"],
        ["007", "'quoted'"],
      ],
    },
    { at: "A10", role: "caution", rows: [["Ask a vet."]] },
    { at: "A11", role: "setting", rows: [[true]] },
    { at: "A12", role: "source", rows: [["Practice."]] },
    { at: "A13", role: "label", rows: [["Weight"]] },
  ],
  formats: [
    { range: "A3:A5", format: "date" },
    { range: "B3:B5", format: "tenth" },
    { range: "A7:B7", format: "text" },
  ],
  validation: [
    { range: "A3:A5", kind: "date", least: "2000-01-01", most: "2100-01-01", message: "Give a date." },
    { range: "B3:B5", kind: "number", least: -90, most: 60, message: "Give a number." },
    { range: "B6", kind: "whole", least: 0, most: 9, message: "Give a whole number." },
    { range: "A11", kind: "list", words: ["yes", "no"], message: "Choose." },
  ],
  rules: [
    { range: "B3:B5", when: "=$B3<5", look: "stop" },
    { range: "B3:B5", when: "$B3<10", look: "cold" },
  ],
  notes: [{ at: "A3", text: `A note${" that goes on".repeat(30)}.` }],
  system: "metric",
  quantities: [],
  places: {},
  links: [],
  needed: [],
  merges: ["A10:B10"],
  lines: [{ row: 10, lines: 3 }],
  charts: [
    {
      title: "Curve",
      area: "F2:K12",
      along: "A3:A5",
      axis: "°C",
      series: [
        { draw: "band", name: "Night to day", low: "B3:B5", high: "C3:C5" },
        { draw: "bar", name: "Rain", values: "D3:D5" },
        { draw: "line", name: "Mid", values: "B3:B5" },
        { draw: "threshold", name: "Cold", values: "B3:B5" },
        { draw: "stages", name: "Stage", values: "A3:A5" },
        { draw: "ticks", name: "Meals", values: "A3:A5" },
      ],
      summary: "A7",
    },
  ],
  freeze: { rows: 2, columns: 1 },
};

const formulaAt = (excel: FakeExcel, tab: ReturnType<FakeExcel["tab"]>, at: string): unknown => {
  const { top, left } = areaOf(at);
  return excel.cell(tab, top - 1, left - 1).formula;
};

describe("inserting sheets", () => {
  /** One to look, one for contents and formats, one for each kind of ornament, and one more for charts. */
  const TURNS = 8;
  test("every templated sheet goes in as its data says, in eight turns at most", async () => {
    for (const sheet of sheets) {
      const excel = open();
      expect(await excelWorkbook.insert([sheet])).toEqual([sheet.name]);
      expect(excel.syncs).toBeLessThanOrEqual(TURNS);
      const tab = excel.tab(sheet.name);
      expect(excel.active).toBe(tab.id);
      for (const { at, rows } of sheet.blocks) {
        const { top, left } = areaOf(at);
        rows.forEach((row, i) =>
          row.forEach((content, j) => {
            const cell = excel.cell(tab, top - 1 + i, left - 1 + j);
            expect([sheet.key, at, cell.formula]).toEqual([
              sheet.key,
              at,
              typeof content === "number" ? content + 0 : (content ?? ""), // -0 is 0 in a cell
            ]);
            expect(cell.isText && String(content).startsWith("=")).toBe(false);
          }),
        );
      }
      for (const { range, format } of sheet.formats) {
        const { top, left } = areaOf(range);
        expect(excel.cell(tab, top - 1, left - 1).format).toBe(formats[format]);
      }
      const told = tab.told.join("\n");
      for (const { title } of sheet.charts) expect(told).toContain(`chart title.text = ${JSON.stringify(title)}`);
      expect(told.match(/validation\.rule/g) ?? []).toHaveLength(sheet.validation.length);
      const { area, portrait, titleRows, footer } = printOf(sheet);
      expect(told).toContain(`pageLayout.orientation = "${portrait ? "Portrait" : "Landscape"}"`);
      expect(told).toContain('pageLayout.zoom = {"horizontalFitToPages":1}');
      expect(/print area .*/.exec(told)?.[0]).toBe(area && `print area ${area}`);
      expect(told.includes("title rows ")).toBe(titleRows > 0);
      if (titleRows > 0) expect(told).toContain(`title rows $1:$${titleRows}`);
      expect(told).toContain(`footers.centerFooter = ${JSON.stringify(`&8${footer.centre}`)}`);
      expect(told.match(/rule added/g) ?? []).toHaveLength(sheet.rules.length);
    }
    expect(sheets.length).toBeGreaterThan(0);
  });

  test("all sheets at once keep to that, and the first is shown", async () => {
    const excel = open();
    const names = await excelWorkbook.insert(sheets);
    expect(names).toEqual(sheets.map(({ name }) => name));
    expect(excel.syncs).toBeLessThanOrEqual(TURNS * sheets.length);
    expect(excel.active).toBe(excel.tab(names[0] as string).id);
    expect(excel.tabs.map(({ name }) => name)).toEqual(["Sheet1", ...names]);
  });

  test("a name that is taken gets a number, however its capitals are", async () => {
    const excel = open();
    expect(await excelWorkbook.insert([every, every])).toEqual(["Every field", "Every field (2)"]);
    excel.tabs.push(excel.newTab("EVERY FIELD (3)"));
    expect(await excelWorkbook.insert([every])).toEqual(["Every field (4)"]);
  });

  test("each field arrives", async () => {
    const excel = open();
    await excelWorkbook.insert([every]);
    const told = excel.tab("Every field").told;
    for (const line of [
      "gridlines false",
      "A1:A1048576 format.columnWidth = 66.75", // 12 letters of 7 px and 5 px around them, 0.75 points a pixel
      "A10:XFD10 format.rowHeight = 45",
      "A10:B10 merge(false)",
      "freeze A1:A2",
      'A3:A5 validation.rule = {"date":{"formula1":"2000-01-01","formula2":"2100-01-01","operator":"Between"}}',
      'B6 validation.rule = {"wholeNumber":{"formula1":0,"formula2":9,"operator":"Between"}}',
      'A11 validation.rule = {"list":{"inCellDropDown":true,"source":"yes,no"}}',
      'B3:B5 rule.formula = "=$B3<5"',
      'B3:B5 rule.formula = "=$B3<10"',
      "chart Line",
      "chart at F2:K12",
      'chart.displayBlanksAs = "NotPlotted"',
      "series Rain fill #c0561a",
    ]) {
      expect(told).toContain(line);
    }
    // Excel has guessed a series from the cells; it is gone, and those that stand there were told all that they show.
    const along = "A3:A5";
    expect(excel.tab("Every field").charts).toMatchObject([
      {
        name: "Curve",
        series: [
          { name: "Night to day: high", values: "N3:N5", along },
          { name: "Night to day: low", values: "O3:O5", along },
          { name: "Rain", values: "P3:P5", along },
          { name: "Mid", values: "O3:O5", along },
          { name: "Cold", values: "O3:O5", along },
        ],
      },
    ]);
    // No text is plotted as 0: what is drawn says #N/A in its place, out of sight, and is no part of the sheet.
    const tab = excel.tab("Every field");
    expect(["N3", "O4", "P5"].map((at) => formulaAt(excel, tab, at))).toEqual([
      "=IF(ISNUMBER(C3),C3,NA())",
      "=IF(ISNUMBER(B4),B4,NA())",
      "=IF(ISNUMBER(D5),D5,NA())",
    ]);
    for (const column of ["N", "O", "P"]) expect(told).toContain(`${column}1:${column}1048576 columnHidden true`);
    expect(told).toContain("chart.plotVisibleOnly = false");
    expect((await excelWorkbook.read(["Every field"]))[0]?.cells[0]).toHaveLength(4);
    // The first of the sheet's rules is to win: Excel puts each new one before the others.
    expect(told.indexOf('B3:B5 rule.formula = "=$B3<5"')).toBeGreaterThan(
      told.indexOf('B3:B5 rule.formula = "=$B3<10"'),
    );
    expect(told.some((line) => line.includes("Stage") || line.includes("Meals"))).toBe(false);
  });

  test("text stays text, whatever it looks like", async () => {
    const excel = open();
    await excelWorkbook.insert([every]);
    const tab = excel.tab("Every field");
    const texts = ["-5 is cold", "2026-10-05", "@home", "TRUE", "007", "'quoted'"];
    texts.forEach((words, i) => {
      const cell = excel.cell(tab, 6 + Math.floor(i / 2), i % 2);
      expect(cell).toMatchObject({ value: words, isText: true });
    });
  });

  test("notes are notes where Excel has them, else they show when the cell is chosen", async () => {
    const old = open();
    await excelWorkbook.insert([every]);
    const prompt = old.tab("Every field").told.find((line) => line.includes("validation.prompt"));
    expect(prompt).toMatch(/^A3 .*A note that goes on.*…"/);
    const fresh = open();
    fresh.newest = 1.18;
    await excelWorkbook.insert([every]);
    expect(fresh.tab("Every field").told.some((line) => line.startsWith("note A3: A note that goes on"))).toBe(true);
  });

  test("progress is told, and a cancelled insertion leaves nothing behind", async () => {
    const excel = open();
    const before = JSON.stringify(excel.snapshot());
    const stop = new AbortController();
    const shares: number[] = [];
    const insertion = excelWorkbook.insert([every, every, every], {
      signal: stop.signal,
      progress: (share) => {
        shares.push(share);
        if (shares.length === 2) stop.abort();
      },
    });
    await expect(insertion).rejects.toThrow(new WorkbookError("Cancelled. Nothing was changed."));
    expect(shares).toEqual([1 / 3, 2 / 3]);
    expect(JSON.stringify(excel.snapshot())).toBe(before);
  });
});

/** A workbook with something of everything in it. */
const furnished = (): FakeExcel => {
  const excel = open();
  const tab = excel.tab("Sheet1");
  excel.enter(tab, 0, 0, "=SPILL(3,2)");
  excel.enter(tab, 5, 0, "'=text");
  excel.enter(tab, 5, 1, 12);
  excel.enter(tab, 6, 0, "=A1");
  excel.enter(tab, 6, 1, true);
  excel.enter(tab, 7, 0, "word");
  excel.cell(tab, 6, 0).format = "@";
  excel.cell(tab, 5, 1).format = "0.0";
  excel.tabs.push(excel.newTab("Bob's log (1)"));
  excel.enter(excel.tab("Bob's log (1)"), 2, 2, "=VIV.LAPSE(1,2,3)");
  excel.syncs = 0;
  excel.calls = 0;
  return excel;
};

const changes: readonly Change[] = [
  {
    sheet: "Sheet1",
    row: 0,
    column: 0,
    cells: [
      [1, 2],
      [3, 4],
      [5, 6],
    ],
    format: "0.00",
  }, // over a whole spill
  {
    sheet: "Sheet1",
    row: 5,
    column: 0,
    cells: [
      ["=not a formula", null],
      [{ formula: "=VIV.LAPSE(1,2,3)" }, false],
    ],
  },
  { sheet: "Bob's log (1)", row: 2, column: 2, cells: [[18.5]] },
];

describe("an Excel that fails at any call leaves the workbook as it was", () => {
  const actions: readonly (readonly [string, (signal?: AbortSignal) => Promise<unknown>])[] = [
    [
      "add",
      () =>
        excelWorkbook.add(
          "Worked formulas",
          [
            ["Cell", "Formula"],
            ["A1", "=VIV.LAPSE(1,2,3)"],
          ],
          { widths: [8, 40], headings: 1 },
        ),
    ],
    ["copy", () => excelWorkbook.copy(["Sheet1", "Bob's log (1)"])],
    ["write", () => excelWorkbook.write(changes)],
    ["remove", () => excelWorkbook.remove(["Bob's log (1)"])],
    ["read", () => excelWorkbook.read()],
    ["toFile", () => excelWorkbook.toFile(["Sheet1"])],
    ["show", () => excelWorkbook.show("Bob's log (1)", 2, 2)],
    ["selection", () => excelWorkbook.selection()],
    ["sheetNames", () => excelWorkbook.sheetNames()],
  ];
  test.each(actions)("%s", async (name, act) => {
    const whole = furnished();
    await act();
    const calls = whole.calls;
    expect(calls).toBeGreaterThan(1);
    for (let n = 1; n <= calls; n++) {
      const excel = furnished();
      const before = JSON.stringify(excel.snapshot());
      excel.failAt = n;
      const failure = await act().then(
        () => "nothing failed",
        (error: unknown) => error,
      );
      expect([n, failure]).toEqual([n, expect.any(WorkbookError)]);
      expect([n, (failure as Error).message]).toEqual([
        n,
        expect.stringMatching(/^Excel could not .*Nothing was changed\. .*try again\.$/),
      ]);
      // Showing a sheet changes no more than what is shown.
      if (name !== "show") expect([n, JSON.stringify(excel.snapshot())]).toEqual([n, before]);
    }
  });
  test("inserting: whole, whole but for an ornament that is named, or not at all", async () => {
    const whole = furnished();
    await excelWorkbook.insert([every, every]);
    const cells = (excel: FakeExcel): string =>
      JSON.stringify(
        excel.tabs.map(({ name, cells }) => [
          name,
          // What charts are drawn from goes with them.
          [...cells].filter(([, { formula }]) => !isPlotted(String(formula))).sort(([a], [b]) => (a < b ? -1 : 1)),
        ]),
      );
    const calls = whole.calls;
    const lost = new Set<string>();
    for (let n = 1; n <= calls; n++) {
      const excel = furnished();
      const before = JSON.stringify(excel.snapshot());
      excel.failAt = n;
      const missing: string[] = [];
      const failure = await excelWorkbook.insert([every, every], { missing: (words) => missing.push(words) }).then(
        () => undefined,
        (error: unknown) => error,
      );
      if (failure === undefined) {
        expect([n, cells(excel)]).toEqual([n, cells(whole)]);
        expect([n, missing]).toEqual([n, [expect.stringMatching(/^"Every field( \(2\))?" is without (the|its) /)]]);
        for (const words of missing) lost.add(words.replace(/^.* is without /, ""));
        // A chart that is not what it should be is none.
        for (const { charts } of excel.tabs.slice(2))
          expect([n, missing.join().includes("chart") || charts.length === 1]).toEqual([n, true]);
      } else {
        expect([n, missing]).toEqual([n, []]);
        expect([n, (failure as Error).message]).toEqual([
          n,
          expect.stringMatching(/^Excel could not .*Nothing was changed\. .*try again\.$/),
        ]);
        expect([n, JSON.stringify(excel.snapshot())]).toEqual([n, before]);
      }
    }
    expect([...lost].sort()).toEqual([
      "its charts",
      "its colours for what needs care",
      "its notes",
      "its print set-up",
      "the checks of what is typed in",
    ]);
  });
  test("a client's script that knows no notes, though its Excel does, shows them when the cell is chosen", async () => {
    const excel = open();
    excel.newest = 1.18;
    excel.hasNotes = false;
    const missing: string[] = [];
    await excelWorkbook.insert([every], { missing: (words) => missing.push(words) });
    expect(missing).toEqual([]);
    expect(excel.tab("Every field").told.some((line) => line.includes("validation.prompt"))).toBe(true);
  });
  test("a name that is taken at the last moment belongs to somebody else, and stays", async () => {
    const excel = furnished();
    // Between the look at the names and the turn that adds: as when somebody else works in the same workbook.
    excel.beforeSync = () => {
      if (excel.syncs !== 1) return;
      excel.tabs.push(excel.newTab("Every field"));
    };
    await expect(excelWorkbook.insert([every])).rejects.toThrow(
      "Excel could not insert the sheet: a sheet of that name has just been made. Nothing was changed. Try again.",
    );
    expect(excel.tabs.map(({ name }) => name)).toEqual(["Sheet1", "Bob's log (1)", "Every field"]);
  });
  test("a cell that is being edited is told, with what to do", async () => {
    const excel = furnished();
    excel.failAt = 2;
    excel.failWith = "InvalidOperationInCellEditMode";
    await expect(excelWorkbook.insert([every])).rejects.toThrow(
      "Excel could not insert the sheet: a cell is being edited. Nothing was changed. Press Enter or Esc, then try again.",
    );
  });
  test("one that never recovers is told honestly", async () => {
    const excel = furnished();
    excel.failAt = 30;
    excel.stuck = true;
    await expect(excelWorkbook.insert([every])).rejects.toThrow(/delete the new sheets yourself/);
  });
});

describe("reading", () => {
  test("formulas, values, spills, errors and text are told apart", async () => {
    const excel = furnished();
    excel.enter(excel.tab("Sheet1"), 8, 2, "=SPILL(2,1)");
    excel.enter(excel.tab("Sheet1"), 9, 2, "in the way");
    const [first, second] = await excelWorkbook.read();
    expect(excel.syncs).toBeLessThanOrEqual(5);
    expect(first).toMatchObject({ name: "Sheet1", hidden: false, locked: false });
    const cells = first?.cells ?? [];
    expect(cells[0]?.[0]).toEqual({ formula: "=SPILL(3,2)", value: 1 });
    expect(cells[0]?.[1]).toEqual({ value: 2, spilledFrom: { row: 0, column: 0 } });
    expect(cells[2]?.[1]).toEqual({ value: 6, spilledFrom: { row: 0, column: 0 } });
    expect(cells[5]).toEqual([{ value: "=text" }, { value: 12, format: "0.0" }, { value: null }]);
    expect(cells[6]?.[0]).toEqual({ formula: "=A1", value: 7, format: "@" });
    expect(cells[6]?.[1]).toEqual({ value: true });
    expect(cells[8]?.[2]).toEqual({ formula: "=SPILL(2,1)", value: { error: "#SPILL!" } });
    expect(second?.cells[2]?.[2]).toEqual({ formula: "=VIV.LAPSE(1,2,3)", value: 7 });
    expect(second?.cells[0]).toEqual([{ value: null }, { value: null }, { value: null }]);
  });
  test("an empty sheet has no cells, and a sheet that is gone is named", async () => {
    open();
    expect((await excelWorkbook.read(["Sheet1"]))[0]?.cells).toEqual([]);
    await expect(excelWorkbook.read(["Gone"])).rejects.toThrow('There is no sheet "Gone"');
  });
  test("a large sheet comes in bands, and none is lost", async () => {
    const excel = open();
    const tab = excel.tab("Sheet1");
    for (let row = 0; row < 9000; row++)
      for (let column = 0; column < 5; column++) excel.enter(tab, row, column, row * 5 + column);
    const [sheet] = await excelWorkbook.read();
    expect(sheet?.cells.flat().map(({ value }) => value)).toEqual(Array.from({ length: 45_000 }, (_, i) => i));
    expect(excel.syncs).toBeGreaterThan(3);
  });
  test("thousands of formulas are asked about their spill in portions, and only those that can have one", async () => {
    const excel = open();
    const tab = excel.tab("Sheet1");
    // Pairs of a formula and a figure beside it, which might be its spill; and as many with nothing beside them.
    for (let row = 0; row < 2_500; row++) {
      excel.enter(tab, row, 0, "=A1");
      excel.enter(tab, row, 1, row);
      excel.enter(tab, row, 3, "=A1");
    }
    excel.enter(tab, 2_500, 5, "=SPILL(3,2)");
    const [sheet] = await excelWorkbook.read();
    expect(sheet?.cells[2_502]?.[6]).toEqual({ value: 6, spilledFrom: { row: 2_500, column: 5 } });
    const asked = excel.turns.map((calls) => calls.filter((call) => call === "Range.isNullObject").length);
    // The range in use is asked whether it is there, too.
    expect(asked.reduce((sum, one) => sum + one, 0)).toBe(2_501 + 1);
    expect(Math.max(...asked)).toBe(2_000);
  });
  test("the selected cell is told with its place", async () => {
    const excel = furnished();
    excel.selected = { row: 1, column: 1 };
    expect(await excelWorkbook.selection()).toEqual({
      sheet: "Sheet1",
      row: 1,
      column: 1,
      cell: { value: 4, spilledFrom: { row: 0, column: 0 } },
    });
  });
});

describe("writing", () => {
  test("values over a spill, text that looks like a formula, formulas into cells of text", async () => {
    const excel = furnished();
    await excelWorkbook.write(changes);
    const cells = (await excelWorkbook.read(["Sheet1"]))[0]?.cells ?? [];
    expect(cells.slice(0, 3)).toEqual([
      [
        { value: 1, format: "0.00" },
        { value: 2, format: "0.00" },
      ],
      [
        { value: 3, format: "0.00" },
        { value: 4, format: "0.00" },
      ],
      [
        { value: 5, format: "0.00" },
        { value: 6, format: "0.00" },
      ],
    ]);
    expect(cells[5]).toEqual([{ value: "=not a formula" }, { value: null, format: "0.0" }]);
    expect(cells[6]).toEqual([{ formula: "=VIV.LAPSE(1,2,3)", value: 7, format: "@" }, { value: false }]);
    expect(excel.tab("Sheet1").told).toEqual([]);
  });
  test("what was written over comes back by writing it back", async () => {
    furnished();
    const before = await excelWorkbook.read();
    await excelWorkbook.write(changes);
    const back = before.flatMap(({ name, cells }) =>
      cells.flatMap((row, i) =>
        row.map((cell, j) => ({
          sheet: name,
          row: i,
          column: j,
          cells: [
            [
              cell.spilledFrom || typeof cell.value === "object"
                ? cell.formula
                  ? { formula: cell.formula }
                  : null
                : cell.formula
                  ? { formula: cell.formula }
                  : cell.value,
            ],
          ],
          format: cell.format ?? "General",
        })),
      ),
    );
    await excelWorkbook.write(back);
    expect(await excelWorkbook.read()).toEqual(before);
  });
  test("a protected sheet is refused before anything is written, on every sheet", async () => {
    const excel = furnished();
    excel.tab("Bob's log (1)").locked = true;
    const before = JSON.stringify(excel.snapshot());
    await expect(excelWorkbook.write(changes)).rejects.toThrow(`Protected: "Bob's log (1)". Nothing was changed.`);
    expect(JSON.stringify(excel.snapshot())).toBe(before);
  });
  test("a cell that another formula fills is refused, with both addresses", async () => {
    const excel = furnished();
    const before = JSON.stringify(excel.snapshot());
    await expect(excelWorkbook.write([{ sheet: "Sheet1", row: 2, column: 1, cells: [[1]] }])).rejects.toThrow(
      'B3 of "Sheet1" is filled by the formula in A1. Nothing was changed.',
    );
    expect(JSON.stringify(excel.snapshot())).toBe(before);
  });
  const logs = Object.entries(growing).flatMap(([key, all]) => all.map((own) => [key, own[0], own] as const));
  test.each(logs)("%s: rows added to its %s are as if it had been drawn so long", async (key, log, logs) => {
    const excel = open();
    const template = sheets.find((sheet) => sheet.key === key) as Sheet;
    const [name = ""] = await excelWorkbook.insert([template]);
    const selected = { row: areaOfLog(template, log).top, column: 0 };
    excel.active = excel.tab(name).id;
    excel.selected = selected;
    const calls = excel.calls;
    await addRows.run(excelWorkbook, 3);
    const asked = excel.calls - calls;
    const own = excel.tab(name);
    const [fresh = ""] = await excelWorkbook.insert([longer(template, logs, 3)]);
    const cellsOf = (tab: string) =>
      [...excel.tab(tab).cells]
        .filter(([, { formula }]) => formula !== "")
        .map(([at, { formula, format }]) => `${at} ${String(formula)} ${format}`)
        .sort();
    expect(cellsOf(name)).toEqual(cellsOf(fresh));
    const joinedOn = (tab: string) =>
      excel
        .tab(tab)
        .told.filter((one) => one.includes(" merge("))
        .sort();
    expect(joinedOn(name)).toEqual(joinedOn(fresh));

    // Whatever fails while it is done, nothing is left of it.
    await excelWorkbook.remove([name, fresh]);
    for (const share of [0.4, 0.7, 0.9, 1]) {
      const broken = open();
      await excelWorkbook.insert([template]);
      broken.active = broken.tab(own.name).id;
      broken.selected = selected;
      const whole = JSON.stringify(broken.snapshot());
      broken.failAt = broken.calls + Math.round(asked * share);
      await expect(addRows.run(excelWorkbook, 3)).rejects.toThrow(WorkbookError);
      broken.failAt = undefined;
      expect(JSON.stringify(broken.snapshot())).toBe(whole);
    }
  });
  test("a log that Today reads row by row: the rows are there or not, and what is left to do is said", async () => {
    const [feeding, today] = ["feedingLog", "animals"].map((key) => sheets.find((one) => one.key === key) as Sheet);
    const fresh = async () => {
      const excel = open();
      const { names } = await insertLinked(excelWorkbook, [cleared(feeding as Sheet), today as Sheet]);
      const log = excel.tab(names[0] as string);
      Object.assign(excel, { active: log.id, selected: { row: areaOfLog(feeding as Sheet, "log").top, column: 0 } });
      return excel;
    };
    const whole = await fresh();
    const from = whole.calls;
    expect((await addRows.run(excelWorkbook, 3)).text).toContain('"Today" reads them too.');
    const asked = whole.calls - from;
    const [lastRow, longer] = [JSON.stringify(whole.snapshot()), new Set<boolean>()];
    for (const share of [0.6, 0.9, 0.97, 1]) {
      const excel = await fresh();
      const before = JSON.stringify(excel.snapshot());
      excel.failAt = excel.calls + Math.round(asked * share);
      const outcome = await addRows.run(excelWorkbook, 3).catch((failure: unknown) => failure as WorkbookError);
      excel.failAt = undefined;
      longer.add(!(outcome instanceof Error));
      if (outcome instanceof Error) {
        expect([share, outcome instanceof WorkbookError]).toEqual([share, true]);
        expect([share, JSON.stringify(excel.snapshot()) === before]).toEqual([share, true]);
        continue;
      }
      expect(outcome.text).toContain("has 3 rows more");
      const [left = ""] = outcome.left ?? [];
      if (left === "") expect([share, JSON.stringify(excel.snapshot()) === lastRow]).toEqual([share, true]);
      else expect(left).toContain('add 3 rows to its log too, then press "Link sheets"');
      expect(left).not.toContain("Nothing was changed");
    }
    expect([...longer].sort()).toEqual([false, true]);
  });
  test("a tall change goes in parts, tells its progress, and is taken back whole when cancelled", async () => {
    const excel = open();
    const cells = Array.from({ length: 50_000 }, (_, i) => [i]);
    const shares: number[] = [];
    await excelWorkbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells }], {
      progress: (share) => shares.push(share),
    });
    expect(shares.length).toBeGreaterThan(1);
    expect(shares.at(-1)).toBe(1);
    expect(excel.cell(excel.tab("Sheet1"), 49_999, 0).value).toBe(49_999);
    const stop = new AbortController();
    const before = JSON.stringify(excel.snapshot());
    const writing = excelWorkbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: cells.map(() => [0]) }], {
      signal: stop.signal,
      progress: () => stop.abort(),
    });
    await expect(writing).rejects.toThrow("Cancelled. Nothing was changed.");
    expect(JSON.stringify(excel.snapshot())).toBe(before);
  });
  test("any text comes back as it was written (property)", async () => {
    const hard = fc.oneof(
      fc.string({ minLength: 1 }).filter((text) => text !== ""),
      fc.constantFrom(
        "=1+1",
        "+1",
        "-1",
        "@SUM",
        "\tx",
        "\rx",
        "'x",
        "''",
        "1/2",
        "2026-10-05",
        "1e3",
        "#N/A",
        "true",
        "FALSE",
        "0012",
        "12 %",
        " =x",
      ),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(hard, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 4 }),
        async (texts) => {
          open();
          await excelWorkbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: texts }]);
          const [sheet] = await excelWorkbook.read();
          expect(sheet?.cells.map((row) => row.map(({ value, formula }) => [value, formula]))).toEqual(
            texts.map((row) => row.map((text) => [text, undefined])),
          );
        },
      ),
      { seed: 20261005, numRuns: 200 },
    );
  });
});

test("charts are drawn from the rows that are added to a log, too", async () => {
  const excel = open();
  const weights = sheets.find(({ key }) => key === "weights") as Sheet;
  const [name = ""] = await excelWorkbook.insert([weights]);
  const [[range, { at }] = ["", { at: "A1" }]] = plottedOf(weights);
  const [from, plotted] = [areaOf(range), areaOf(at)];
  await excelWorkbook.insertRows({ sheet: name, rows: [from.bottom - 1], count: 4, fill: [] });
  const tab = excel.tab(name);
  for (let row = plotted.top; row <= plotted.bottom + 4; row++) {
    const cell = `${columnLetters(from.left)}${row}`;
    expect(formulaAt(excel, tab, `${columnLetters(plotted.left)}${row}`)).toBe(`=IF(ISNUMBER(${cell}),${cell},NA())`);
  }
});

describe("sheets", () => {
  test("a plain sheet has its text as text, and headings that stay in view", async () => {
    const excel = open();
    expect(
      await excelWorkbook.add(
        "Worked formulas",
        [
          ["Cell", "Formula"],
          ["A1", "=VIV.LAPSE(1,2,3)", 3],
        ],
        { widths: [8, 40], headings: 1 },
      ),
    ).toBe("Worked formulas");
    expect((await excelWorkbook.read(["Worked formulas"]))[0]?.cells).toEqual([
      [{ value: "Cell" }, { value: "Formula" }, { value: null }],
      [{ value: "A1" }, { value: "=VIV.LAPSE(1,2,3)" }, { value: 3 }],
    ]);
    expect(excel.tab("Worked formulas").told).toContain("freeze 1 rows");
    expect(await excelWorkbook.add("Worked formulas", [])).toBe("Worked formulas (2)");
  });
  test("copies come last and hold the same", async () => {
    const excel = furnished();
    const [copy] = await excelWorkbook.copy(["Sheet1"]);
    expect(copy).toBe("Sheet1 (2)");
    const [one, other] = await excelWorkbook.read(["Sheet1", copy as string]);
    expect(other?.cells).toEqual(one?.cells);
    expect(excel.tabs.at(-1)?.name).toBe(copy);
  });
  test("the last visible sheet is not removed", async () => {
    const excel = open();
    await expect(excelWorkbook.remove(["Sheet1"])).rejects.toThrow("keeps at least one sheet");
    expect(excel.tabs).toHaveLength(1);
  });
  test("a sheet is shown with a cell selected", async () => {
    const excel = furnished();
    await excelWorkbook.show("Bob's log (1)", 4, 1);
    expect([excel.active, excel.selected]).toEqual([excel.tab("Bob's log (1)").id, { row: 4, column: 1 }]);
  });
  test("after an insertion each sheet opens where it begins to be filled in, and the first is shown", async () => {
    const excel = open();
    const [first, second] = [
      sheets.find(({ key }) => key === "coolingPlan"),
      sheets.find(({ key }) => key === "weights"),
    ];
    const [name = "", other = ""] = await excelWorkbook.insert([first as Sheet, second as Sheet]);
    const { top, left } = areaOf(cellOf(first as Sheet, "plan.label"));
    expect([excel.active, excel.selected]).toEqual([excel.tab(name).id, { row: top - 1, column: left - 1 }]);
    const own = areaOf(cellOf(second as Sheet, "animal.label"));
    expect(excel.tab(other).selected).toEqual({ row: own.top - 1, column: own.left - 1 });
  });
  test("a file holds the values of VIV formulas, native formulas, and the charts of a sheet of ours", async () => {
    open();
    const [template] = sheets;
    const [name] = await excelWorkbook.insert([template as Sheet]);
    const bytes = await excelWorkbook.toFile([name as string]);
    expect([...bytes.slice(0, 2)]).toEqual([0x50, 0x4b]); // "PK": an .xlsx file is a ZIP archive (ECMA-376, part 2)
    const { sheets: read } = await readXlsx(bytes);
    expect(read.map((sheet) => sheet.name)).toEqual([name]);
    const formulas = read[0]?.cells.flat().flatMap(({ formula }) => formula ?? []) ?? [];
    expect(formulas.filter((formula) => /VIV\./i.test(formula))).toEqual([]);
    expect(read[0]?.cells[0]?.[0]?.value).toBe(template?.name);
    expect(Buffer.from(bytes).includes("xl/charts/chart1.xml")).toBe((template?.charts.length ?? 0) > 0);
  });
});

/** The page says that it runs in this Excel. */
const inExcel = (platform: "OfficeOnline" | "PC" | "Mac"): void => {
  (globalThis as unknown as { Office: { context: { platform?: string } } }).Office.context.platform = platform;
};

test("sheets that cannot be linked go again, and the cell that was shown is shown", async () => {
  const excel = open();
  const plan = sheets.filter(({ key }) => key === "coolingPlan");
  const names = await excelWorkbook.insert(plan);
  const shown = { active: excel.tab("Sheet1").id, selected: { row: 7, column: 2 } };
  Object.assign(excel, shown);
  const from = excel.calls;
  await insertLinked(excelWorkbook, plan);
  const asked = excel.calls - from;
  await excelWorkbook.remove(["Cooling plan (2)"]);
  Object.assign(excel, shown);
  // At the last that is asked: the cells of the new sheet are being read.
  excel.failAt = excel.calls + asked;
  await expect(insertLinked(excelWorkbook, plan)).rejects.toThrow(WorkbookError);
  expect(await excelWorkbook.sheetNames()).toEqual(["Sheet1", ...names]);
  expect([excel.active, excel.selected]).toEqual([shown.active, shown.selected]);
});

test("what is converted from a sheet in other units is known to follow it, though Excel drops the quotes around its name", async () => {
  open();
  const [today, weights] = ["animals", "weights"].map((key) => sheets.find((one) => one.key === key) as Sheet);
  await insertLinked(excelWorkbook, [today as Sheet, inSystem(weights as Sheet, "imperial")]);
  const { tabs } = tabsOf(await excelWorkbook.read());
  const converted = linkedCells(tabs, tabs).filter(({ words, there }) => words.endsWith("(converted)") && there);
  expect(converted.length).toBeGreaterThan(0);
  expect(converted.filter(({ isLinked }) => !isLinked).map(({ words, here }) => [words, here.formula])).toEqual([]);
});

test("only Excel on the web is known to take no more than so many rows in a call", () => {
  open();
  const most = (platform: Parameters<typeof inExcel>[0]): number | undefined => {
    inExcel(platform);
    return excelWorkbook.mostRowsOfCall?.();
  };
  expect(["OfficeOnline", "PC", "Mac"].map((platform) => most(platform as "PC"))).toEqual([
    50_000,
    undefined,
    undefined,
  ]);
});

test("one reading more than Excel on the web hands to a function: its days are fixed figures, and no formula asks for them", async () => {
  const excel = open();
  inExcel("OfficeOnline");
  const [first, count] = [46_023, 50_001]; // from the first minute of 2026 on
  const day = (days: number): string => isoOf(first + days);
  const two = (number: number): string => String(number).padStart(2, "0");
  const lines = Array.from(
    { length: count },
    (_, i) => `${day(Math.floor(i / 1440))} ${two(Math.floor(i / 60) % 24)}:${two(i % 60)},${i % 1440 < 720 ? 4 : 6}`,
  );
  const text = `Time,°C\n${lines.join("\n")}\n`;
  const { layout, titles } = guessLayout(text, {});
  const choice = { name: "box.csv", text, layout, titles, evaluate };
  expect(await importReadings.describe(excelWorkbook, choice)).toMatchObject({ ask: true });
  const shorter = { ...choice, text: text.slice(0, text.lastIndexOf(lines.at(-1) as string)) };
  expect(await importReadings.describe(excelWorkbook, shorter)).toMatchObject({ ask: false });

  const { text: said } = await importReadings.run(excelWorkbook, choice);
  expect(said).toContain(`${count} readings on "Readings". They are more than Excel hands to a function here`);
  const { cells } = excel.tab("Readings");
  expect([...cells.values()].filter(({ formula }) => String(formula).includes("VIV."))).toEqual([]);
  const value = (row: number, column: number): unknown => cells.get(`${row},${column}`)?.value;
  expect([value(4, 0), value(4, 1), value(count + 3, 1)]).toEqual([first, 4, 6]);
  // Day, high, low of the first day; then as many days as there are, the last with the rest of the readings.
  expect([3, 4, 5].map((column) => value(4, column))).toEqual([first, 6, 4]);
  const days = Math.ceil(count / 1440);
  expect([value(days + 3, 3), value(days + 3, 9), value(days + 4, 3)]).toEqual([
    first + days - 1,
    count % 1440,
    undefined,
  ]);
});
