import { evaluate } from "../../addin/boundary/evaluate";
import { serialOfIso } from "../../functions/dates";
import { Problem } from "../../functions/problem";
import { addColumn, columnFor, type ColumnChoice } from "../../taskpane/actions/addColumn";
import { guesses } from "../../taskpane/columns/guess";
import { planIn } from "../../taskpane/columns/planIn";
import { tableAt, type OwnTable } from "../../taskpane/columns/table";
import { wishes } from "../../taskpane/columns/wishes";
import type { Wish } from "../../taskpane/columns/wish";
import { formats } from "../../taskpane/sheets/sheet";
import type { CellContent } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";

/** A log of two animals as a keeper writes it, invented: mixed, some cells blank, one name in another spelling. */
const day = (iso: string): number => serialOfIso(iso) as number;
const LOG: readonly (readonly CellContent[])[] = [
  ["My snakes, all years"],
  ["Date", "Name", "Weight (g)", "Mouse (g)", "Taken?", "Max °C", "Min °C", "RH %", "Hatched", "Altitude m"],
  [day("2026-09-01"), "Ash", 140, 12, "yes", 24, 17, 60, day("2024-08-01"), 300],
  [day("2026-09-01"), "Birch", 310, 28, "no", 24, 17, 60, day("2021-08-09"), 300],
  [day("2026-09-08"), "ash ", 143, null, "refused", 22, 15, 71, day("2024-08-01"), 1500],
  [day("2026-09-08"), "Birch", null, 28, "no", 22, 15, 71, day("2021-08-09"), 1500],
  [day("2026-09-15"), "Ash", 145, 14, "eaten", 20, 11, null, day("2024-08-01"), 2100],
  [null, "Birch", 305, 25, "taken", 20, 11, 80, day("2021-08-09"), 2100],
  [day("2026-12-06"), "Birch", 300, 25, "left", 9, 7, 82, day("2021-08-09"), 2100],
  [day("2026-12-06"), "Ash", 141, 0.5, null, 9, 7, 82, day("2024-08-01"), 2100],
];
const PLAN: readonly (readonly CellContent[])[] = [
  ["Last meal", day("2026-09-21")],
  ["Cooling starts", day("2026-10-05")],
  ["Into the cold", day("2026-11-16")],
  ["Warming starts", day("2027-02-08")],
  ["Warm again", day("2027-03-22")],
  ["First meal", day("2027-03-29")],
];
/** What a keeper would type for what stands once; the plan is found in the workbook. */
const TYPED: Readonly<Record<string, string>> = {
  interval: "7",
  since: "2026-09-10",
  ratio: "0,1",
  warm: "24",
  cold: "Cold!$D$1",
  homeElevation: "1400",
  stationElevation: "300",
  bandLow: "1200",
  bandHigh: "1800",
  latitude: "46",
  earliest: "40",
  latest: "55",
};
const COLUMNS: Readonly<Record<string, string>> = {
  clutch: "Mouse (g)",
  range: "Weight (g)",
  female: "Weight (g)",
  laid: "Date",
  paired: "Date",
  last: "Date",
};

const { engine, workbook, close } = openWorkbook();
afterAll(close);

const SHEET = "Log";
const at = { sheet: SHEET, row: 4, column: 2 };

const choiceFor = async (wish: Wish): Promise<ColumnChoice> => {
  const sheets = await workbook.read();
  const table = tableAt(sheets.find(({ name }) => name === at.sheet) as never, at) as OwnTable;
  const wanted = new Map(
    wish.wants.filter(({ from }) => from === "column").map(({ name, concept }) => [name, concept]),
  );
  const columns = new Map([...guesses(table.columns, wanted)].map(([name, { column }]) => [name, column]));
  for (const name of wanted.keys()) {
    const own = COLUMNS[name] && table.columns.find(({ heading }) => heading === COLUMNS[name]);
    if (own) columns.set(name, own.column);
  }
  const plan = planIn(sheets) ?? "";
  const once = new Map(
    wish.wants
      .filter(({ from }) => from !== "column")
      .map(({ name, from }) => [name, from === "cells" ? plan : (TYPED[name] ?? "")]),
  );
  return { wish, at, columns, once };
};

beforeAll(async () => {
  await workbook.add("Cold", PLAN);
  await workbook.add(SHEET, LOG);
  const dated = (column: number) => ({
    sheet: SHEET,
    row: 2,
    column,
    format: formats.date,
    cells: LOG.slice(2).map((row) => [row[column] ?? null]),
  });
  await workbook.write([dated(0), dated(8), { sheet: "Cold", row: 0, column: 3, cells: [[8]] }]);
}, 60_000);

test("wishes have keys and words of their own, and headings that tell them apart", () => {
  expect(wishes.length).toBeGreaterThanOrEqual(20);
  for (const own of [(one: Wish) => one.key, (one: Wish) => one.words, (one: Wish) => one.heading]) {
    expect(new Set(wishes.map(own)).size).toBe(wishes.length);
  }
});

test("the column looks like the one beside it, and undo takes that back too", async () => {
  const sheet = engine.api.getActiveWorkbook()?.getSheetByName(SHEET);
  if (!sheet) throw new Error("no log");
  const [heading, first] = [sheet.getRange(1, 9), sheet.getRange(2, 9)];
  heading.setBackgroundColor("#1f4e78").setFontWeight("bold").setFontColor("#ffffff");
  first.setFontStyle("italic").setNumberFormat("0.000");
  const lookOf = (row: number, column: number) => {
    const { n: _, ...look } = sheet.getRange(row, column).getCellStyleData() ?? {};
    return look;
  };
  const width = sheet.getColumnWidth(10);
  const wish = wishes.find(({ key }) => key === "PREYRATIO") as Wish;
  await workbook.asOne(async () => addColumn.run(workbook, await choiceFor(wish)));
  expect(lookOf(1, 9)).toMatchObject({ bg: { rgb: "#1f4e78" }, bl: 1, cl: { rgb: "#ffffff" } });
  for (const row of [1, 2, 3]) expect(lookOf(row, 10)).toEqual(lookOf(row, 9));
  expect(sheet.getRange(2, 10).getNumberFormat()).toBe(formats.percent);
  expect(sheet.getColumnWidth(10)).toBeGreaterThan(Math.max(width, 150));
  expect(await engine.api.undo()).toBe(true);
  await engine.settle();
  expect([lookOf(1, 10), lookOf(2, 10), sheet.getColumnWidth(10)]).toEqual([{}, {}, width]);
}, 30_000);

test.each(wishes.map((wish) => [wish.key, wish] as const))(
  "%s: what is shown before is what the sheet answers, row by row, and undo takes all of it back",
  async (_, wish) => {
    const choice = await choiceFor(wish);
    const column = columnFor(choice, await workbook.read());
    if (typeof column === "string") throw new Error(column);
    expect(column.at).toEqual({ sheet: SHEET, row: 1, column: 10 });
    const before = await workbook.read([SHEET]);
    await workbook.asOne(() => addColumn.run(workbook, choice));
    const [after] = await workbook.read([SHEET]);
    expect(after?.cells[1]?.[10]?.value).toBe(column.heading);
    // They go on: dressing a cell has not taken its formula.
    expect(after?.cells.slice(2, 10).map((line) => line[10]?.formula)).toEqual(column.formulas);
    let answered = 0;
    for (let i = 0; i < 8; i++) {
      const value = after?.cells[2 + i]?.[10]?.value;
      const shown = column.answer(i, evaluate);
      if (shown instanceof Problem) expect(value).toEqual({ error: shown.code });
      else if (typeof shown === "number") expect(value).toBeCloseTo(shown, 9);
      else expect(value ?? "").toBe(shown);
      expect(column.empty.includes(3 + i)).toBe(shown === "");
      if (shown !== "" && !(shown instanceof Problem)) answered += 1;
    }
    expect(answered).toBeGreaterThan(1);
    expect(await engine.api.undo()).toBe(true);
    await engine.settle();
    expect(
      (await workbook.read([SHEET])).map(({ cells }) => cells.map((row) => row.map(({ value }) => value))),
    ).toEqual(before.map(({ cells }) => cells.map((row) => row.map(({ value }) => value))));
  },
  30_000,
);

test("without a whole winter plan the next meal comes with a warning, and of several plans none is guessed", async () => {
  const wish = wishes.find(({ key }) => key === "NEXTMEAL") as Wish;
  const choice = await choiceFor(wish);
  const sheets = await workbook.read();
  const notes = (once: ReadonlyMap<string, string>) => {
    const column = columnFor({ ...choice, once }, sheets);
    if (typeof column === "string") throw new Error(column);
    return column.notes.join(" ");
  };
  const warning = /meals are told in the middle of the winter too/;
  expect(notes(choice.once)).not.toMatch(warning);
  expect(notes(new Map([...choice.once].filter(([name]) => name !== "plan")))).toMatch(warning);
  // Cells that are there, but hold no date yet.
  expect(notes(new Map([...choice.once, ["plan", "Cold!F1:F6"]]))).toMatch(warning);

  const cold = sheets.filter(({ name }) => name === "Cold");
  const copy = cold.map((one) => ({ ...one, name: "Copy" }));
  const other = cold.map((one) => ({
    ...one,
    name: "Other",
    cells: one.cells.map((line) =>
      line.map((cell) => (typeof cell.value === "number" ? { value: cell.value + 7 } : cell)),
    ),
  }));
  expect(planIn([...cold, ...copy])).toBe("Cold!B1:B6");
  expect(planIn([...cold, ...other])).toBeUndefined();
});
