import { Workbook as Book } from "@cj-tech-master/excelts";
import { InsertSheetCommand } from "@univerjs/sheets";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import type { Engine } from "../../addin/preview/engine";
import { watchChanges } from "../../addin/preview/unsaved";
import { perform } from "../../taskpane/actions/action";
import { freeze } from "../../taskpane/actions/freeze";
import type { SavedFile } from "../../taskpane/actions/savedFile";
import { saveWorkbook } from "../../taskpane/actions/saveFile";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { openWorkbook } from "./engine";
import { everythingIn } from "./everythingIn";
import { refuse } from "./refuse";

jest.setTimeout(60_000);

let opened: { readonly engine: Engine; readonly workbook: PreviewWorkbook; readonly close: () => void };
beforeEach(() => {
  const { engine, close } = openWorkbook();
  opened = { engine, workbook: new PreviewWorkbook(engine), close };
});
afterEach(() => opened.close());

const book = () => {
  const found = opened.engine.api.getActiveWorkbook();
  if (!found) throw new Error("no workbook");
  return found;
};

/** Two sheets that speak of one another, one of them hidden, and a name. */
const file = async (first: string, second: string, rate: number): Promise<Uint8Array> => {
  const made = new Book();
  const one = made.addWorksheet(first);
  one.getCell("A1").value = rate;
  one.getCell("A2").value = { formula: `'${second}'!A1*2`, result: 2 };
  one.getCell("A3").value = { formula: "warm+1", result: rate + 1 };
  one.getCell("B1").note = "a note";
  const two = made.addWorksheet(second, { state: "hidden" });
  two.getCell("A1").value = { formula: `'${first}'!A1+1`, result: rate + 1 };
  made.definedNames.add(`'${first}'!$A$1`, "warm");
  return new Uint8Array(await made.xlsx.writeBuffer());
};

/** Everything that stands, and which sheet is shown. */
const everything = async (): Promise<string> =>
  `${book().getActiveSheet().getSheetName()} ${await everythingIn(opened.engine, opened.workbook)}`;

test("a file after a file, from any active tab, with and without undo between: one or the other stands whole", async () => {
  const { workbook } = opened;
  await workbook.insert([nativeClimate]);
  const placed = await everything();
  const files = [
    await file("Log", "Behind", 5),
    await file("Log", nativeClimate.name, 7),
    await file("Old", "Sheet1", 9),
  ];
  const stood = [placed];
  for (const [i, bytes] of files.entries()) {
    const { left } = await workbook.open(`${i}.xlsx`, bytes);
    expect(left).toEqual([]);
    const [first] = await workbook.read();
    expect(first?.cells.map(([cell]) => cell?.value)).toEqual([5 + 2 * i, 2 * (6 + 2 * i), 6 + 2 * i]);
    stood.push(await everything());
  }
  for (const before of stood.toReversed().slice(1)) {
    book().undo();
    expect(await everything()).toBe(before);
  }
  // Opened again after undo, and from the last tab.
  await workbook.show("Sheet1");
  await workbook.open("0.xlsx", files[0] as Uint8Array);
  expect(await everything()).toBe(stood[1]);
  book().undo();
  book().undo();
  expect((await workbook.sheetNames()).length).toBe(1);
  book().redo();
  book().redo();
  expect(await everything()).toBe(stood[1]);
  await workbook.open("2.xlsx", files[2] as Uint8Array);
  expect(await everything()).toBe(stood[3]);
});

test("an Open that fails half way leaves the old workbook to the letter, and nothing to redo", async () => {
  const { workbook } = opened;
  await workbook.open("1.xlsx", await file("Log", "Behind", 5));
  const before = await everything();
  // The engine refuses the second sheet, when the first stands already.
  const refusing = refuse(opened.engine, InsertSheetCommand.id, 3);
  await expect(workbook.open("2.xlsx", await file("Log", "Next", 7))).rejects.toThrow(/Nothing was changed/);
  expect(refusing.restore()).toBe(true);
  expect(await everything()).toBe(before);
  book().redo();
  expect(await everything()).toBe(before);
});

test("a name that the preview has a use for is another, in formulas too, and is told of", async () => {
  const made = new Book();
  const sheet = made.addWorksheet("Log");
  sheet.getCell("A1").value = 3;
  sheet.getCell("A2").value = { formula: 'rate*2&"rate"', result: "6rate" };
  made.definedNames.add("Log!$A$1", "rate");
  const { left } = await opened.workbook.open("1.xlsx", new Uint8Array(await made.xlsx.writeBuffer()));
  expect(left).toEqual([
    'the name "rate": it is "rate_2" here, in formulas too, because the preview has a use of its own for it',
  ]);
  const [log] = await opened.workbook.read();
  expect(log?.cells[1]?.[0]).toMatchObject({ formula: '=rate_2*2&"rate"', value: "6rate" });
});

test("a sheet of more cells than the engine's own undo takes comes back as well", async () => {
  const { workbook } = opened;
  const cells = Array.from({ length: 20_000 }, (_, i) => [i, `row ${i}`, i / 7]);
  const csv = `n,word,share\n${cells.map((row) => row.join()).join("\n")}`;
  await workbook.open("long.csv", new TextEncoder().encode(csv));
  const before = await everything();
  await workbook.open("1.xlsx", await file("Log", "Behind", 5));
  book().undo();
  expect((await everything()) === before).toBe(true);
});

test("a workbook is unsaved from its first change to its next save; figures that come in are no change", async () => {
  const { engine } = opened;
  const unsaved = watchChanges(engine);
  const workbook = new PreviewWorkbook(engine, undefined, unsaved.standing);
  await workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [[1, { formula: "=A1+1" }]] }]);
  expect(unsaved.isChanged()).toBe(true);
  await workbook.save();
  expect(unsaved.isChanged()).toBe(false);
  engine.api.getFormula().executeCalculation();
  await workbook.read();
  await workbook.show("Sheet1", 3, 3);
  expect(unsaved.isChanged()).toBe(false);
  book().undo();
  expect(unsaved.isChanged()).toBe(true);
  await workbook.save();
  await workbook.insert([nativeClimate]);
  expect(unsaved.isChanged()).toBe(true);
});

test("what is changed while a file is made, or whose file was not taken, stays unsaved", async () => {
  const { engine } = opened;
  const unsaved = watchChanges(engine);
  const workbook = new PreviewWorkbook(engine, undefined, unsaved.standing);
  const put = (value: number) => workbook.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [[value]] }]);
  await put(1);
  const save = jest.fn<undefined, [SavedFile]>(() => {
    throw new Error("the disk is full");
  });
  await expect(saveWorkbook.run(workbook, { save })).rejects.toThrow("the disk is full");
  expect([save.mock.calls.length, unsaved.isChanged()]).toEqual([1, true]);
  const stopped = AbortSignal.abort();
  await expect(saveWorkbook.run(workbook, { save }, { signal: stopped })).rejects.toThrow("Cancelled");
  expect(unsaved.isChanged()).toBe(true);

  await saveWorkbook.run(workbook, { save: () => put(2) });
  expect(unsaved.isChanged()).toBe(true);
  await saveWorkbook.run(workbook, { save: () => undefined });
  expect(unsaved.isChanged()).toBe(false);
});

test("Freeze and the sheet that it adds are one step of undo", async () => {
  const { workbook } = opened;
  await workbook.write([
    { sheet: "Sheet1", row: 0, column: 0, cells: [[{ formula: "=VIV.LAPSE({20;10},500,1500)" }]] },
  ]);
  const before = await everything();
  const asked = await perform(freeze, workbook, undefined);
  if (asked.kind !== "ask") throw new Error(asked.kind);
  expect((await perform(freeze, workbook, undefined, {}, asked.words)).kind).toBe("done");
  const frozen = await workbook.read();
  expect(await workbook.sheetNames()).toEqual(["Sheet1", "Worked formulas"]);
  book().undo();
  expect(await everything()).toBe(before);
  book().redo();
  expect(await workbook.read()).toEqual(frozen);
});
