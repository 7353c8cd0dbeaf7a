import { catalogue } from "../../functions/catalogue";
import { hints } from "../../addin/preview/bind";
import { evaluateFormulas } from "../../addin/preview/formulas";
import type { CellContent, Workbook } from "../../taskpane/workbook";
import { openWorkbook, readSheet, type Reading } from "./engine";

jest.setTimeout(60_000);

let open: ReturnType<typeof openWorkbook>;
let workbook: Workbook;
beforeEach(() => {
  open = openWorkbook();
  ({ workbook } = open);
});
afterEach(() => open.close());

const formula = (text: string): CellContent => ({ formula: text });
const put = async (rows: readonly (readonly CellContent[])[], row = 0, column = 0): Promise<Reading> => {
  await workbook.write([{ sheet: "Sheet1", row, column, cells: rows }]);
  return readSheet(workbook, "Sheet1");
};

describe("a VIV function in a cell", () => {
  test("spills, shows dates as dates, the spilled ones too, and is worked out again when an input changes", async () => {
    const before = await put([[24, null, null], [formula("=VIV.RAMP(DATE(2026,10,5),A1,8,42)")]]);
    expect(before.block("A2:B8")).toEqual([
      ["2026-10-05", 24],
      ["2026-10-12", expect.closeTo(21.3333, 4)],
      ["2026-10-19", expect.closeTo(18.6667, 4)],
      ["2026-10-26", 16],
      ["2026-11-02", expect.closeTo(13.3333, 4)],
      ["2026-11-09", expect.closeTo(10.6667, 4)],
      ["2026-11-16", 8],
    ]);
    expect(before.state("A3")).toMatchObject({ format: "yyyy-mm-dd", spilledFrom: { row: 1, column: 0 } });
    // What the grid draws, not only what the engine keeps.
    const drawn = open.engine.api.getActiveWorkbook()?.getActiveSheet().getRange("A2:A8").getDisplayValues();
    expect(drawn?.flat()).toEqual(before.block("A2:A8").flat());
    const after = await put([[22]]);
    expect(after.at("B2")).toBe(22);
    expect(after.at("B8")).toBe(8);
  });

  test("keeps the number format that a cell has", async () => {
    await workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [[null], [null]], format: "dd/mm/yyyy" }]);
    const sheet = await put([[formula("=VIV.RAMP(DATE(2026,10,5),24,8,42)")]]);
    expect(sheet.state("A1").format).toBe("dd/mm/yyyy");
    expect(sheet.state("A2").format).toBe("dd/mm/yyyy");
    expect(sheet.state("A3").format).toBe("yyyy-mm-dd");
  });

  test.each<[string, CellContent, string, unknown]>([
    ["a blank is not 0", null, "=VIV.LAPSE(A1,500,1500)", "#N/A"],
    ["0 is a value", 0, "=VIV.LAPSE(A1,500,1500)", -6.5],
    ["text that is a number is read", "20", "=VIV.LAPSE(A1,500,1500)", 13.5],
    ["other text is refused", "warm", "=VIV.LAPSE(A1,500,1500)", "#VALUE!"],
    ["TRUE is no number", true, "=VIV.LAPSE(A1,500,1500)", "#VALUE!"],
    ["an error goes through", formula("=1/0"), "=VIV.LAPSE(A1,500,1500)", "#VALUE!"],
    ["#N/A stays #N/A", formula("=NA()"), "=VIV.LAPSE(A1,500,1500)", "#N/A"],
    ["an empty text is a blank", formula('=""'), "=VIV.LAPSE(A1,500,1500)", "#N/A"],
    ["a left out argument is a blank", 20, "=VIV.LAPSE(A1,500,1500,,)", 13.5],
    ["a native function catches a problem", "warm", '=IFERROR(VIV.LAPSE(A1,500,1500),"caught")', "caught"],
    ["a native function sees which", null, "=ISNA(VIV.LAPSE(A1,500,1500))", true],
    ["an answer goes into native functions", 20, "=ROUND(SUM(VIV.LAPSE(A1,{500;600},1500)),2)", 27.65],
  ])("%s", async (_, cell, text, expected) => {
    const sheet = await put([[cell, formula(text)]]);
    expect(sheet.at("B1")).toEqual(typeof expected === "number" ? expect.closeTo(expected, 9) : expected);
  });

  test("a row whose cells are all blank shows nothing", async () => {
    const sheet = await put([[null, null, null, formula("=VIV.LAPSE(A1,B1,C1)")]]);
    expect(sheet.at("D1")).toBe("");
  });

  test("the words of a problem stay with its cell", async () => {
    await put([["warm", formula("=VIV.LAPSE(A1,500,1500)")]]);
    const cell = open.engine.api.getActiveWorkbook()?.getActiveSheet().getSheet().getCellMatrix().getValue(0, 1);
    expect(cell?.custom).toEqual({ message: "temperature holds 'warm': give a number from -90 to 60 °C" });
  });

  test.each<readonly [what: string, text: string, words: string]>([
    [
      "a column",
      "=VIV.MASSTREND(A2:A4,B2:B4)",
      "row 2 of masses (B3) holds 'refused': give a number from 0.1 to 200000 g",
    ],
    ["a column of another sheet", "=VIV.MASSTREND(Sheet1!A2:A4,Sheet1!B2:B4)", "row 2 of masses (B3) holds"],
    ["a row", "=VIV.MASSTREND({100,107,114},A6:C6)", "row 3 of masses (C6) holds 'lost'"],
    ["one animal's rows of a long table", '=VIV.MASSTREND(A2:A4,B2:B4,7,C2:C4,"Birch")', "row 2 of masses (B3) holds"],
    [
      "rows that FILTER has taken stand nowhere",
      '=VIV.MASSTREND(FILTER(A2:A4,C2:C4="Birch"),FILTER(B2:B4,C2:C4="Birch"))',
      "row 1 of masses holds",
    ],
    ...[
      "SORT(B2:B4,1,-1)",
      "TAKE(B2:B4,-2)",
      "DROP(B2:B4,1)",
      "CHOOSECOLS(A2:B4,2)",
      "UNIQUE(B2:B4)",
      "VSTACK(B3,B2)",
    ].map((made) => [made, `=VIV.MASSTREND({100;107;114},${made})`, " of masses holds 'refused'"] as const),
    ["cells that a formula has made", '=VIV.MASSTREND(A2:A4,B2:B4&"")', "row 2 of masses"],
  ])("words name the cell of %s as the sheet does", async (_, text, words) => {
    await put([
      ["Date", "Mass", "Animal", formula(text)],
      [46_000, 140, "Ash"],
      [46_007, "refused", "Birch"],
      [46_014, 142, "Ash"],
      [null, null, null],
      [140, 141, "lost"],
    ]);
    const cell = open.engine.api.getActiveWorkbook()?.getActiveSheet().getSheet().getCellMatrix().getValue(0, 3);
    expect((cell?.custom as { message?: string } | undefined)?.message).toContain(words);
  });

  test("says so where the way of a spill is blocked, and spills when it is free", async () => {
    await workbook.write([{ sheet: "Sheet1", row: 1, column: 0, cells: [["in the way"]] }]);
    expect((await put([[formula("=VIV.LAPSE({20;10},500,1500)")]])).at("A1")).toBe("#SPILL!");
    await workbook.write([{ sheet: "Sheet1", row: 1, column: 0, cells: [[null]] }]);
    expect((await readSheet(workbook, "Sheet1")).block("A1:A2")).toEqual([[13.5], [3.5]]);
  });

  test("a spill that would freeze the page is refused in words, and counts inside a formula", async () => {
    const long = "VIV.LAPSE(SEQUENCE(120000,1,10,0),500,1500)";
    open.engine.api.getActiveWorkbook()?.getActiveSheet().setRowCount(130_000);
    const sheet = await put([[formula(`=${long}`), formula(`=ROWS(${long})`)]]);
    expect(sheet.block("A1:B1")).toEqual([["#VALUE!", 120_000]]);
  });
});

test("formulas that are worked out without a cell see the sheet, and not one another", async () => {
  await put([[20, 500, 1500]]);
  const answers = await evaluateFormulas(open.engine, ["=VIV.LAPSE(A1,B1,C1)", "=D1", "=1+", "=DATE(2026,10,5)"]);
  expect(answers).toEqual([[[{ value: 13.5 }]], [[{ value: null }]], undefined, [[{ date: 46_300 }]]]);
});

test("every function has a hint for each argument, with what it takes", () => {
  const found = hints(catalogue);
  expect(found).toHaveLength(catalogue.length);
  const lapse = found.find(({ functionName }) => functionName === "VIV.LAPSE");
  expect(lapse?.functionParameter.map(({ name, require }) => [name, require])).toEqual([
    ["temperature", 1],
    ["stationElevation", 1],
    ["homeElevation", 1],
    ["rate", 0],
    ["units", 0],
  ]);
  // The engine joins the examples of a copy with commas; arguments that are left out at the end leave none behind.
  const example = found.map((one) => one.functionParameter.map((parameter) => parameter.example).join(","));
  expect(example.filter((one) => one.endsWith(","))).toEqual([]);
  expect(example[found.indexOf(lapse as (typeof found)[number])]).toBe("24,300,1400");
  expect(lapse?.functionParameter[0]?.detail).toBe("Temperature at the station: a number from -90 to 60 °C");
});
