import { PaperSize, Workbook as Book } from "@cj-tech-master/excelts";
import { readXlsx } from "../../addin/file/read";
import { storedFormula, typedFormula } from "../../addin/file/newFunctions";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { respelled } from "../../taskpane/actions/formulas";
import { saveFile, saveWorkbook } from "../../taskpane/actions/saveFile";
import type { SavedFile } from "../../taskpane/actions/savedFile";
import { thaw } from "../../taskpane/actions/thaw";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { openWorkbook, readSheet } from "../preview/engine";

jest.setTimeout(120_000);

let opened: ReturnType<typeof openWorkbook>;
let workbook: PreviewWorkbook;
beforeEach(() => {
  opened = openWorkbook();
  workbook = new PreviewWorkbook(opened.engine);
});
afterEach(() => opened.close());

/** A keeper's file with ordinary things in it. */
const keepers = async (): Promise<Uint8Array> => {
  const book = new Book();
  const log = book.addWorksheet("Log", {
    pageSetup: { orientation: "landscape", paperSize: PaperSize.A4, printArea: "A1:D20" },
    headerFooter: { oddHeader: "&CBox 3" },
  });
  log.getCell("A1").value = { text: "where it came from", hyperlink: "https://example.org/box-3" };
  log.getCell("A2").value = new Date("2026-10-05T00:00:00Z");
  log.getCell("A2").numFmt = "yyyy-mm-dd";
  log.getCell("B2").value = 16.5;
  log.getCell("B3").value = { formula: "SUM(B2:B2)*Rates!A1", result: 33 };
  log.getCell("D2").note = "weighed after shedding";
  log.getCell("D2").alignment = { vertical: "top" };
  log.getColumn(3).hidden = true;
  log.getColumn(3).width = 12;
  log.getRow(2).hidden = true;
  log.getCell("A1").font = { bold: true, size: 11, name: "Calibri" };
  const rates = book.addWorksheet("Rates", { state: "hidden" });
  rates.getCell("A1").value = 2;
  book.definedNames.add("Rates!$A$1", "ratio");
  return new Uint8Array(await book.xlsx.writeBuffer());
};

test("save, reopen, save: the second file is the first, with every formula in it", async () => {
  expect((await workbook.open("Years of box 3.xlsx", await keepers())).left).toEqual([]);
  await workbook.write([
    {
      sheet: "Log",
      row: 9,
      column: 0,
      cells: [
        [
          { formula: "=VIV.LAPSE(B2:B3,500,1500)" },
          { formula: '=IF(VIV.LAPSE(20,500,1500)>1,"VIV.LAPSE(",1)' },
          null,
          { formula: "=LET(a,ratio,a+a)" },
          { formula: "=SEQUENCE(2,2)" },
          null,
          { formula: '=VIV.LAPSE("x",1,2)' },
          { formula: "=MAP(B2:B3,LAMBDA(x,x*2))" },
        ],
      ],
    },
  ]);
  await workbook.insert([nativeClimate]);
  const stood = await workbook.read();
  expect(workbook.title()).toBe("Years of box 3");
  const first = await workbook.save();
  const { left } = await workbook.open("Years of box 3.xlsx", first);
  expect(left).toEqual([]);
  expect(await workbook.read()).toEqual(stood);
  const [one, other] = [await readXlsx(first), await readXlsx(await workbook.save())];
  expect(other).toEqual(one);
  const [log, rates, climate] = one.sheets;
  expect(log).toMatchObject({
    hiddenColumns: [3],
    hiddenRows: [2],
    notes: [{ at: "D2", text: "weighed after shedding" }],
    page: {
      setup: { orientation: "landscape", paperSize: 9, printArea: "A1:D20" },
      headerFooter: { oddHeader: "&CBox 3" },
    },
  });
  expect(log?.cells[0]?.[0]).toMatchObject({ value: "where it came from", link: "https://example.org/box-3" });
  expect(log?.cells[9]?.[0]?.formula).toBe("=VIV.LAPSE(B2:B3,500,1500)");
  expect(rates).toMatchObject({ hidden: true, names: [{ name: "ratio", range: "A1" }] });
  expect(climate).toMatchObject({ template: "nativeClimate" });
  expect(climate?.charts.length).toBeGreaterThan(0);
});

test("the two ways to save, each by its own name; what is saved for others thaws", async () => {
  await workbook.open("Years of box 3.xlsx", await keepers());
  await workbook.write([
    {
      sheet: "Log",
      row: 9,
      column: 0,
      cells: [
        [
          { formula: "=VIV.LAPSE(B2:B3,500,1500)" },
          { formula: '=IF(TRUE,"",VIV.LAPSE(1,1,1))' },
          { formula: '=VIV.LAPSE("x",1,2)' },
        ],
      ],
    },
  ]);
  const before = await workbook.read();
  const saved: SavedFile[] = [];
  const save = (file: SavedFile) => void saved.push(file);
  await saveWorkbook.run(workbook, { save });
  await saveFile.run(workbook, { names: await workbook.sheetNames(), save });
  expect(saved.map(({ name }) => name)).toEqual(["Years of box 3.xlsx", "Years of box 3 for others.xlsx"]);
  expect(await workbook.read()).toEqual(before);

  const { sheets } = await readXlsx(saved[1]?.bytes as Uint8Array);
  expect(sheets.map(({ name }) => name)).toEqual(["Log", "Rates", "Worked formulas"]);
  expect(sheets.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => formula?.includes("VIV"))).toEqual([]);
  expect(sheets[0]?.cells[9]?.[0]).toMatchObject({ value: 10 });
  await workbook.open("Shared.xlsx", saved[1]?.bytes as Uint8Array);
  expect((await thaw.run(workbook, undefined)).left).toEqual([]);
  expect(await workbook.read()).toEqual(before);
});

test("cells far from the first come back", async () => {
  await workbook.write([
    { sheet: "Sheet1", row: 2_500, column: 60, cells: [[{ formula: "=VIV.LAPSE(20,500,1500)" }]] },
  ]);
  await workbook.open("far.xlsx", await workbook.save());
  expect((await readSheet(workbook, "Sheet1")).at("BI2501")).toBe(13.5);
});

test.each([
  ["=VIV.LAPSE(1,2,3)", "_xldudf_VIV_LAPSE(1,2,3)"],
  ['=viv.lapse(1,2,3)&"VIV.LAPSE("', '_xldudf_VIV_LAPSE(1,2,3)&"VIV.LAPSE("'],
  ["='VIV.LAPSE('!A1+MYVIV.LAPSE(1)", "'VIV.LAPSE('!A1+MYVIV.LAPSE(1)"],
  ["=SUM(A1#)", "SUM(_xlfn.ANCHORARRAY(A1))"],
  ["=LET(a,1,b,a+A1,a+b)", "_xlfn.LET(_xlpm.a,1,_xlpm.b,_xlpm.a+A1,_xlpm.a+_xlpm.b)"],
  ["=MAP(A1:A2,LAMBDA(x,VIV.AGE(x)))", "_xlfn.MAP(A1:A2,_xlfn.LAMBDA(_xlpm.x,_xldudf_VIV_AGE(_xlpm.x)))"],
])("%s is stored as %s, and read back", (typed, stored) => {
  expect(storedFormula(typed)).toBe(stored);
  expect(respelled(typedFormula(stored))).toBe(typed.replace("viv.lapse", "VIV.LAPSE"));
});
