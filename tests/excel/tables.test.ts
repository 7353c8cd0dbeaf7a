import { excelWorkbook } from "../../addin/excel/workbook";
import { addColumn } from "../../taskpane/actions/addColumn";
import { wishes } from "../../taskpane/columns/wishes";
import type { Wish } from "../../taskpane/columns/wish";
import { WorkbookError } from "../../taskpane/workbook";
import { FakeExcel } from "./fake";

const CELLS = [
  ["Animal", "Date", "Mass [g]", "Mouse (g)"],
  ["Ash", 46_000, 240, 18],
  ["Ash", 46_007, 242, ""],
];

/** A workbook with a table of a keeper's own from B3 on, and the same cells as none from B13 on. */
const open = (): FakeExcel => {
  const excel = new FakeExcel();
  Object.assign(globalThis, excel.globals());
  const [tab] = excel.tabs;
  if (!tab) throw new Error("no tab");
  for (const [i, row] of CELLS.entries()) {
    for (const [j, value] of row.entries()) {
      for (const top of [2, 12]) {
        excel.enter(tab, top + i, 1 + j, value);
        if (j === 1 && i > 0) excel.cell(tab, top + i, 1 + j).format = "yyyy-mm-dd";
      }
    }
  }
  tab.tables.push({
    name: "Log",
    showHeaders: true,
    row: 2,
    column: 1,
    rows: 2,
    headings: [...(CELLS[0] ?? [])].map(String),
  });
  return excel;
};
const wish = (key: string) => wishes.find((one) => one.key === key) as Wish;
const share = (row: number) => ({
  wish: wish("PREYRATIO"),
  at: { sheet: "Sheet1", row, column: 2 },
  columns: new Map([
    ["prey", 4],
    ["body", 3],
  ]),
  once: new Map<string, string>(),
});
const column = (excel: FakeExcel, top: number): unknown[] =>
  [0, 1, 2].map((i) => excel.cell(excel.tab("Sheet1"), top + i, 5).formula);

test("in a table of Excel's own a column is of one formula, which names columns by their headings", async () => {
  const excel = open();
  const { text } = await addColumn.run(excelWorkbook, share(3));
  expect(text).toBe(
    '"Meal, share of the animal" is a column of the table "Log" now: rows that you add to it answer too.',
  );
  const formula = `=IF(OR([@[Mouse (g)]]="",[@[Mass '[g']]]=""),"",VIV.PREYRATIO([@[Mouse (g)]],[@[Mass '[g']]]))`;
  expect(column(excel, 2)).toEqual(["Meal, share of the animal", formula, formula]);
  expect(excel.cell(excel.tab("Sheet1"), 3, 5).format).toBe("0.0%");
  expect(excel.tab("Sheet1").tables[0]?.headings).toHaveLength(5);
});

test("what looks at the rows above names them from the table's first row on", async () => {
  const excel = open();
  await addColumn.run(excelWorkbook, {
    wish: wish("MASSTREND"),
    at: { sheet: "Sheet1", row: 3, column: 2 },
    columns: new Map([
      ["dates", 2],
      ["masses", 3],
      ["animals", 1],
    ]),
    once: new Map(),
  });
  expect(column(excel, 2)[1]).toContain(
    `VIV.MASSTREND(INDEX([Date],1):[@[Date]],INDEX([Mass '[g']],1):[@[Mass '[g']]],"",INDEX([Animal],1):[@[Animal]],[@[Animal]])`,
  );
});

test("cells that are no such table get a formula each", async () => {
  const excel = open();
  await addColumn.run(excelWorkbook, share(13));
  expect(column(excel, 12)).toEqual([
    "Meal, share of the animal",
    '=IF(OR(E14="",D14=""),"",VIV.PREYRATIO(E14,D14))',
    '=IF(OR(E15="",D15=""),"",VIV.PREYRATIO(E15,D15))',
  ]);
});

test("whatever fails while it is done, nothing is left of it", async () => {
  const whole = open();
  const before = JSON.stringify(whole.snapshot());
  const calls = whole.calls;
  await addColumn.run(excelWorkbook, share(3));
  const asked = whole.calls - calls;
  for (let call = 1; call <= asked; call++) {
    const excel = open();
    excel.failAt = excel.calls + call;
    await expect(addColumn.run(excelWorkbook, share(3))).rejects.toThrow(WorkbookError);
    expect([call, JSON.stringify(excel.snapshot())]).toEqual([call, before]);
    expect(excel.tab("Sheet1").tables[0]?.headings).toHaveLength(4);
  }
});
