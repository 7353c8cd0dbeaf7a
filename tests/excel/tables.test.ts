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

/** A bold heading on a fill and a line below; the figures in italics, the second row banded. */
const LOOKS = [
  {
    format: {
      fill: { color: "#1F4E78" },
      font: { bold: true, color: "#FFFFFF", size: 12 },
      borders: { bottom: { style: "Continuous", color: "#000000", weight: "Thin" }, top: { style: "None" } },
      wrapText: false,
    },
  },
  { format: { fill: { color: "#FFFFFF" }, font: { italic: true }, horizontalAlignment: "Center" } },
  { format: { fill: { color: "#DDEBF7" }, font: { italic: true }, horizontalAlignment: "Center" } },
];

test.each([2, 12])(
  "a new column looks like the one beside it, in a table of Excel's own and in none (row %d)",
  async (top) => {
    const excel = open();
    const tab = excel.tab("Sheet1");
    for (const [i, look] of LOOKS.entries()) tab.looks.set(`${top + i},4`, look);
    await addColumn.run(excelWorkbook, share(top + 1));
    const { borders: _, ...heading } = LOOKS[0]?.format ?? {};
    const { fill: white, ...plain } = LOOKS[1]?.format ?? {};
    expect(white).toEqual({ color: "#FFFFFF" });
    expect([0, 1, 2].map((i) => tab.looks.get(`${top + i},5`))).toEqual([
      { format: { ...heading, borders: { bottom: LOOKS[0]?.format.borders?.bottom } } },
      { format: plain },
      LOOKS[2],
    ]);
    expect(excel.cell(tab, top + 1, 5).format).toBe("0.0%");
    // 25 letters in bold need more than the 48 points of a column that nobody has widened.
    const widths = tab.told.filter((one) => one.includes("columnWidth"));
    expect(widths).toEqual([expect.stringMatching(/^F1:F1048576 format\.columnWidth = 1[5-9]\d/)]);
  },
);

test("whatever fails while it is done, nothing is left of it; where only its look fails, that is said", async () => {
  const whole = open();
  const before = JSON.stringify(whole.snapshot());
  const calls = whole.calls;
  await addColumn.run(excelWorkbook, share(3));
  const asked = whole.calls - calls;
  let plain = 0;
  for (let call = 1; call <= asked; call++) {
    const excel = open();
    excel.failAt = excel.calls + call;
    const said = await addColumn.run(excelWorkbook, share(3)).catch((failure: unknown) => failure);
    if (said instanceof WorkbookError) {
      expect([call, JSON.stringify(excel.snapshot())]).toEqual([call, before]);
      expect(excel.tab("Sheet1").tables[0]?.headings).toHaveLength(4);
    } else {
      plain += 1;
      expect(said).toMatchObject({
        text: expect.stringMatching(/does not look like your table: copy the look/) as unknown,
      });
      expect(column(excel, 2)).toEqual(column(whole, 2));
    }
  }
  expect(plain).toBeGreaterThan(1);
  expect(plain).toBeLessThan(asked - 1);
});
