import { Workbook as Book } from "@cj-tech-master/excelts";
import { editZip, zip } from "@cj-tech-master/excelts/archive";
import { filedFormula, isFileable, typedFormula } from "../../addin/file/newFunctions";
import { readXlsx } from "../../addin/file/read";
import { openWorkbook, readSheet } from "../preview/engine";
import { LibreOffice } from "./libreOffice";

jest.setTimeout(120_000);

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
let open: ReturnType<typeof openWorkbook>;
beforeEach(() => (open = openWorkbook()));
afterEach(() => open.close());
const opened = (name: string, bytes: Uint8Array) => {
  if (!open.workbook.open) throw new Error("the preview opens files");
  return open.workbook.open(name, bytes);
};

test("a log made in LibreOffice gets a VIV column, is saved, and opens in LibreOffice with the figures", async () => {
  const office = new LibreOffice();
  try {
    const log = 'day,high,low,note\n2026-10-05,21.5,11,"warm, dry"\n2026-10-06,19,9.5,=not a formula\n2026-10-07,,,\n';
    const made = await office.convert(bytesOf(log), "csv", "xlsx");
    expect(await opened("log.xlsx", made)).toEqual({ sheets: ["given"], left: [] });
    await open.workbook.write([
      { sheet: "given", row: 0, column: 4, cells: [["at 1500 m"], [{ formula: "=VIV.LAPSE(B2:B3,500,1500)" }]] },
      { sheet: "given", row: 4, column: 1, cells: [[{ formula: "=SUM(B2:B4)" }]] },
    ]);
    const bytes = await open.workbook.toFile(["given"]);
    const { sheets } = await readXlsx(await office.convert(bytes, "xlsx", "xlsx"));
    const shown = sheets[0]?.cells.map((row) => row.map(({ value }) => value));
    expect(shown?.[0]).toEqual(["day", "high", "low", "note", "at 1500 m"]);
    expect(shown?.[1]?.slice(1)).toEqual([21.5, 11, "warm, dry", 15]);
    expect(shown?.[2]?.[4]).toBe(12.5);
    expect(sheets[0]?.cells[4]?.[1]).toMatchObject({ value: 40.5, formula: "=SUM(B2:B4)" });
  } finally {
    office.close();
  }
});

test("a CSV file is opened, worked on, and taken back by one undo", async () => {
  await open.workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [["mine"]] }]);
  const result = await opened("Box log.csv", bytesOf("\uFEFFday;box °C\n2026-11-20;7,5\n2026-11-21;8.25\n"));
  const sheet = await readSheet(open.workbook, "Box log");
  // Both marks in one file: one of them is left as text and named, and never read as 75.
  expect(result).toEqual({
    sheets: ["Box log"],
    left: ["1 cell that looks like a date or a figure stays text (row 2, column 2: '7,5')"],
  });
  expect(sheet.block("A1:B3")).toEqual([
    ["day", "box °C"],
    ["2026-11-20", "7,5"],
    ["2026-11-21", 8.25],
  ]);
  open.engine.api.getActiveWorkbook()?.undo();
  expect(await open.workbook.sheetNames()).toEqual(["Sheet1"]);
  expect((await readSheet(open.workbook, "Sheet1")).at("A1")).toBe("mine");
});

test("sheets that speak of one another, names, and a sheet with the name of an open one", async () => {
  const book = new Book();
  const first = book.addWorksheet("Sheet1");
  first.getCell("A1").value = { formula: "'It''s mine'!A1*2", result: 14 };
  first.getCell("A2").value = { formula: '_xlfn.CONCAT(warm,"!")', result: "24!" };
  book.addWorksheet("It's mine").getCell("A1").value = 7;
  first.getCell("B1").value = 24;
  book.definedNames.add("Sheet1!$B$1", "warm");
  const result = await opened("book.xlsx", new Uint8Array(await book.xlsx.writeBuffer()));
  expect(result).toEqual({ sheets: ["Sheet1", "It's mine"], left: [] });
  const sheet = await readSheet(open.workbook, "Sheet1");
  expect(sheet.block("A1:A2")).toEqual([[14], ["24!"]]);
  expect(sheet.state("A2").formula).toBe('=CONCAT(warm,"!")');
});

test("what cannot be carried over is listed", async () => {
  const book = new Book();
  const sheet = book.addWorksheet("Log");
  sheet.getCell("A1").value = { formula: "SOMEBODYS.FUNCTION(1)", result: 12 };
  sheet.addTable({ name: "T", ref: "C1", columns: [{ name: "a" }, { name: "b" }], rows: [[1, 2]] });
  sheet.addConditionalFormatting({
    ref: "A1:A5",
    rules: [
      {
        type: "colorScale",
        priority: 1,
        cfvo: [{ type: "min" }, { type: "max" }],
        color: [{ argb: "FF00FF00" }, { argb: "FFFF0000" }],
      },
    ],
  });
  sheet.getCell("B1").dataValidation = { type: "custom", formulae: ["LEN(B1)>2"] };
  await sheet.protect("", {});
  const { left } = await opened("log.xlsx", new Uint8Array(await book.xlsx.writeBuffer()));
  expect(left).toEqual([
    '"Log": 1 table (its cells are here, its filter buttons and totals are not), at C1',
    '"Log": 1 rule for what a cell takes, at B1',
    '"Log": 1 colour rule of a kind that the preview does not draw, at A1',
    '"Log": its protection',
    '"Log" A1: =SOMEBODYS.FUNCTION(1) was 12 in the file and is #NAME? here',
  ]);
});

describe("a file that the preview can't open is refused in words, and nothing changes", () => {
  /** A sheet of so many cells, as text. */
  const sheetOfCells = (count: number): string => {
    const row = (number: number) =>
      `<row r="${number}">${Array.from({ length: 1000 }, () => "<c><v>1</v></c>").join("")}</row>`;
    const rows = Array.from({ length: count / 1000 }, (_, i) => row(i + 1)).join("");
    return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData></worksheet>`;
  };
  const book = async (): Promise<Uint8Array> => {
    const made = new Book();
    made.addWorksheet("Log").getCell("A1").value = 1;
    return new Uint8Array(await made.xlsx.writeBuffer());
  };
  const withPart = async (path: string, content: string | Uint8Array): Promise<Uint8Array> =>
    editZip(await book()).then((file) => file.set(path, content).bytes());
  test.each<[what: string, name: string, make: () => Uint8Array | Promise<Uint8Array>, words: RegExp]>([
    ["another kind", "note.txt", () => bytesOf("hello"), /neither .xlsx nor CSV/],
    ["text in a zip's clothes", "broken.xlsx", () => bytesOf("PK this is no zip"), /can't be read as an .xlsx file/],
    ["nothing at all", "empty.xlsx", () => new Uint8Array(), /can't be read as an .xlsx file/],
    ["cut off", "half.xlsx", async () => (await book()).slice(0, 3000), /can't be read as an .xlsx file/],
    [
      "a zip of something else",
      "other.xlsx",
      () => zip().add("a.txt", "hello").bytes(),
      /can't be read|holds no sheet/,
    ],
    ["one under a password", "secret.xlsx", () => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0]), /under a password/],
    [
      "a million cells",
      "million.xlsx",
      () => withPart("xl/worksheets/sheet1.xml", sheetOfCells(1e6)),
      /"million.xlsx" has 1 000 000 cells; the preview opens up to 500 000/,
    ],
    [
      "a zip bomb",
      "bomb.xlsx",
      () => withPart("xl/media/image1.png", new Uint8Array(400e6)),
      /unpacks to 400 MB; the preview opens up to 250 MB/,
    ],
  ])("%s", async (_, name, make, words) => {
    const said = jest.spyOn(console, "warn").mockImplementation(() => undefined);
    await open.workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [["mine", { formula: "=1+1" }]] }]);
    const before = await open.workbook.read();
    const bytes = await make();
    await expect(opened(name, bytes)).rejects.toThrow(words);
    await expect(opened(name, bytes)).rejects.toThrow(/Nothing was changed|neither/);
    expect(await open.workbook.read()).toEqual(before);
    said.mockRestore();
  });
});

test("two hundred sheets open, each with its own figure", async () => {
  const made = new Book();
  for (let i = 1; i <= 200; i++)
    made.addWorksheet(`Box ${i}`).getCell("A1").value = { formula: i === 1 ? "1" : `'Box ${i - 1}'!A1+1` };
  const { left } = await opened("many.xlsx", new Uint8Array(await made.xlsx.writeBuffer()));
  expect(left).toEqual([]);
  const sheets = await open.workbook.read();
  expect(sheets.map(({ cells }) => cells[0]?.[0]?.value)).toEqual(Array.from({ length: 200 }, (_, i) => i + 1));
});

test("notes on cells that a file says nothing else of are carried; macros are told of", async () => {
  const made = new Book();
  const log = made.addWorksheet("Log & co");
  log.getCell("A1").value = 1;
  log.getCell("A1").note = "weighed";
  // The library writes no cell for this one.
  log.getCell("C7").note = { texts: [{ text: "fed " }, { text: "twice" }] };
  const bytes = await editZip(new Uint8Array(await made.xlsx.writeBuffer())).then((file) =>
    file.set("xl/vbaProject.bin", "macros").bytes(),
  );
  const read = await readXlsx(bytes);
  expect(read.left).toEqual(["its macros"]);
  expect(read.sheets[0]?.notes).toEqual([
    { at: "A1", text: "weighed" },
    { at: "C7", text: "fed twice" },
  ]);
  await opened("log.xlsm", bytes);
  const note = open.engine.api.getActiveWorkbook()?.getActiveSheet().getRange("C7").getNote()?.note;
  expect(note).toBe("fed twice");
});

test("a sheet comes back from its own file as it was, and stays live", async () => {
  await open.workbook.write([
    {
      sheet: "Sheet1",
      row: 0,
      column: 0,
      cells: [["=text", 1, true, "007", null, { formula: "=B1/0" }, { formula: "=B1+1" }]],
    },
    { sheet: "Sheet1", row: 2, column: 0, cells: [[{ formula: "=SEQUENCE(3)" }, { formula: "=LET(a,B1,a+1)" }]] },
  ]);
  const before = (await readSheet(open.workbook, "Sheet1")).block("A1:G5");
  await opened("again.xlsx", await open.workbook.toFile(["Sheet1"]));
  const after = await readSheet(open.workbook, "Sheet1");
  expect(after.block("A1:G5")).toEqual(before);
  expect(after.state("G1").formula).toBe("=B1+1");
  // These two cannot stand in a file such that every program reads them: their answers do.
  expect(after.state("A3")).toEqual({ value: 1 });
  expect(after.state("B3")).toEqual({ value: 2 });
});

test.each([
  ['=XLOOKUP(A1,B:B,C:C)&"XLOOKUP(x)"', '_xlfn.XLOOKUP(A1,B:B,C:C)&"XLOOKUP(x)"'],
  ["=SUM(SORT(FILTER(A1:A9,B1:B9>0)))", "SUM(_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,B1:B9>0)))"],
  ["='IFS (old)'!A1+ifs(A1,1)", "'IFS (old)'!A1+_xlfn.IFS(A1,1)"],
])("%s is spelled for a file and back", (typed, filed) => {
  expect(filedFormula(typed)).toBe(filed);
  expect(typedFormula(filed).toUpperCase()).toBe(typed.toUpperCase());
});

test.each([
  ["=LET(a,1,a)", false],
  ["=SUM(A1#)", false],
  ["=MAP(A1:A2,LAMBDA(x,x))", false],
  ['="LET(1)"', true],
  ["=OUTLET(1)", true],
])("%s can stand in a file: %s", (formula, able) => expect(isFileable(formula)).toBe(able));
