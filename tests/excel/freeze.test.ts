import fc from "fast-check";
import { excelWorkbook } from "../../addin/excel/workbook";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction, onOtherSheets } from "../../taskpane/actions/formulas";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy } from "../../taskpane/actions/workingCopy";
import { WorkbookError } from "../../taskpane/workbook";
import { answers, anyWorkbook, type AnySheet } from "../pane/anyWorkbook";
import { FakeExcel, type Answer } from "./fake";

/** The native formulas that a frozen answer may become. */
const NATIVE: Readonly<Record<string, string>> = {
  "=NA()": "#N/A",
  '=VALUE("?")': "#VALUE!",
  "=1/0": "#DIV/0!",
  "=SQRT(-1)": "#NUM!",
  '=""': "",
};
const answer: Answer = (formula) => {
  const native = NATIVE[formula];
  if (native !== undefined) return [[native]];
  return answers(formula).map((row) => row.map((value) => (typeof value === "object" ? value.error : value)));
};

const opened = (sheets: readonly AnySheet[]): FakeExcel => {
  const excel = new FakeExcel(answer);
  Object.assign(globalThis, excel.globals());
  for (const { name, hidden, locked, cells } of sheets) {
    const tab = excel.newTab(name);
    excel.tabs.push(tab);
    cells.forEach((row, i) =>
      row.forEach((content, j) => {
        if (content === null || content === "") return;
        excel.enter(
          tab,
          i,
          j,
          typeof content === "object" ? content.formula : typeof content === "string" ? `'${content}` : content,
        );
        excel.cell(tab, i, j).format = "0.00";
      }),
    );
    tab.locked = locked;
    if (hidden) tab.visibility = "Hidden";
  }
  excel.calls = 0;
  return excel;
};

const RUNS = { seed: 20261005, numRuns: 150 };

test("through Office.js, thawing gives back what was frozen to the letter, over any workbook", async () => {
  let frozen = 0;
  await fc.assert(
    fc.asyncProperty(anyWorkbook, async (sheets) => {
      opened(sheets);
      const before = await excelWorkbook.read();
      await freeze.run(excelWorkbook, undefined);
      const between = await excelWorkbook.read();
      const count = (all: typeof before) =>
        all.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => formula !== undefined && hasFunction(formula))
          .length;
      frozen += count(before) - count(between);
      await thaw.run(excelWorkbook, undefined);
      const after = await excelWorkbook.read();
      for (const sheet of before) expect(after.find(({ name }) => name === sheet.name)).toEqual(sheet);
    }),
    RUNS,
  );
  expect(frozen).toBeGreaterThan(150);
}, 60_000);

test("through Office.js, a working copy leaves the keeper's sheets as they were, and thaws into them", async () => {
  let written = 0;
  await fc.assert(
    fc.asyncProperty(anyWorkbook, async (sheets) => {
      opened(sheets);
      const before = await excelWorkbook.read();
      const names = before.map(({ name }) => name);
      await workingCopy.run(excelWorkbook, names);
      const between = await excelWorkbook.read();
      expect(between.slice(0, names.length)).toEqual(before);
      const copies = between.slice(names.length, 2 * names.length).map(({ name }) => name);
      const others = new Map(names.map((name, i) => [name.toLowerCase(), copies[i] as string]));
      await thaw.run(excelWorkbook, copies);
      const after = await excelWorkbook.read();
      expect(after.slice(0, names.length)).toEqual(before);
      for (const [i, { locked, cells }] of before.entries()) {
        if (locked) continue;
        const back = after.find(({ name }) => name === copies[i])?.cells;
        for (const [row, line] of cells.entries()) {
          for (const [column, { formula }] of line.entries()) {
            const wanted = formula === undefined ? undefined : onOtherSheets(formula, others);
            expect(back?.[row]?.[column]?.formula).toBe(wanted);
            if (formula !== undefined && hasFunction(formula)) written++;
          }
        }
      }
    }),
    { ...RUNS, numRuns: 25 },
  );
  expect(written).toBeGreaterThan(25);
}, 60_000);

test("a frozen date is still one, in a cell that nobody gave a format", async () => {
  // Excel shows these by the format that comes with the answer, and tells the cells' own: none.
  const excel = new FakeExcel((formula) =>
    formula.startsWith("=VIV.RAMP(")
      ? [
          [46300, 24],
          [46307, 16],
        ]
      : [[46300]],
  );
  Object.assign(globalThis, excel.globals());
  const tab = excel.tab("Sheet1");
  excel.enter(tab, 0, 0, "=VIV.RAMP(46300,24,8,14)");
  excel.enter(tab, 4, 0, "=VIV.RAMP(46300,24,8,14)+0");
  excel.enter(tab, 8, 0, "=VIV.LAPSE(24,300,1400)");
  await freeze.run(excelWorkbook, undefined);
  const format = (row: number, column: number): string => excel.cell(tab, row, column).format;
  expect([format(0, 0), format(1, 0), format(0, 1)]).toEqual(["yyyy-mm-dd", "yyyy-mm-dd", "General"]);
  expect([format(4, 0), format(8, 0)]).toEqual(["General", "General"]);
});

test("an Excel that fails at any call of freezing leaves every cell as it was", async () => {
  const [sheets] = fc.sample(
    anyWorkbook.filter(
      (all) =>
        all
          .filter(({ locked }) => !locked)
          .flatMap(({ cells }) => cells.flat())
          .filter((content) => content !== null && typeof content === "object" && hasFunction(content.formula)).length >
        4,
    ),
    { seed: 7, numRuns: 1 },
  );
  const whole = opened(sheets ?? []);
  await freeze.run(excelWorkbook, undefined);
  const { calls } = whole;
  expect(calls).toBeGreaterThan(20);
  for (let n = 1; n <= calls; n++) {
    const excel = opened(sheets ?? []);
    const before = JSON.stringify(excel.snapshot());
    excel.failAt = n;
    const failure = await freeze.run(excelWorkbook, undefined).then(
      () => undefined,
      (error: unknown) => error,
    );
    expect([n, failure]).toEqual([n, expect.any(WorkbookError)]);
    expect([n, JSON.stringify(excel.snapshot())]).toEqual([n, before]);
  }
}, 60_000);
