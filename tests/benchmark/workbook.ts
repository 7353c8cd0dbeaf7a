import { CellValueType, type ICellData, type IWorkbookData } from "@univerjs/core";
import { evaluate } from "../../addin/boundary/evaluate";
import { startHeadless } from "../../addin/preview/headless";
import { catalogue } from "../../functions/catalogue";
import { massTrend } from "../../functions/condition/massTrend";
import { latest } from "../../functions/tables/latest";
import { rollCall } from "../../functions/tables/rollCall";
import { agree, race, type Table } from "./race";

/**
 * A workbook with a log of years in it: 1,000 animals, 100,000 rows, and three formulas that answer for every animal. What
 * the engine adds to the functions themselves: it hands over 300,000 cells a formula, and lays out what they answer.
 */
const ANIMALS = 1000;
const ROWS = 100_000;
const START = 45_000;

const animalOf = (row: number): string => `Animal ${(row * 7) % ANIMALS}`;
const dayOf = (row: number): number => START + Math.floor(row / ANIMALS) * 21 + (row % 3);
const massOf = (row: number): number => 100 + ((row * 7) % ANIMALS) / 10 + row / 1000 + ((row * 7919) % 11) / 10;
const rows = Array.from({ length: ROWS }, (_, row) => row);
const asked = Array.from({ length: ANIMALS }, (_, animal) => [`Animal ${animal}`]);

/** Columns of the sheet in which the three formulas stand; their answers fill those that follow. */
const AT = { latest: 6, rollCall: 16, massTrend: 26 } as const;
const formulas = {
  latest: `=VIV.LATEST(B1:B${ROWS},C1:C${ROWS},"",A1:A${ROWS},E1:E${ANIMALS})`,
  rollCall: `=VIV.ROLLCALL(A1:A${ROWS},B1:B${ROWS},C1:C${ROWS})`,
  massTrend: `=VIV.MASSTREND(B1:B${ROWS},C1:C${ROWS},7,A1:A${ROWS},E1:E${ANIMALS})`,
} as const;

const cellsIn = (row: number): Record<number, ICellData> => {
  const cells: Record<number, ICellData> = {
    0: { v: animalOf(row), t: CellValueType.STRING },
    1: { v: dayOf(row), t: CellValueType.NUMBER },
    2: { v: massOf(row), t: CellValueType.NUMBER },
  };
  if (row < ANIMALS) cells[4] = { v: `Animal ${row}`, t: CellValueType.STRING };
  if (row > 0) return cells;
  for (const name of ["latest", "rollCall", "massTrend"] as const) cells[AT[name]] = { f: formulas[name] };
  return cells;
};

const workbook = (): Partial<IWorkbookData> => ({
  id: "log",
  sheetOrder: ["log"],
  sheets: {
    log: {
      id: "log",
      name: "Log",
      rowCount: ROWS + 10,
      columnCount: 40,
      cellData: Object.fromEntries(rows.map((row) => [row, cellsIn(row)])),
    },
  },
});

/** What the engine may take beside the functions alone. */
const ALLOWED = 6;

export const tables = async (): Promise<Table[]> => {
  const columns = {
    animals: rows.map((row) => [animalOf(row)]),
    days: rows.map((row) => [dayOf(row)]),
    masses: rows.map((row) => [massOf(row)]),
  };
  const alone = (): unknown[] => [
    evaluate(latest, [columns.days, columns.masses, null, columns.animals, asked]).cells,
    evaluate(rollCall, [columns.animals, columns.days, columns.masses]).cells,
    evaluate(massTrend, [columns.days, columns.masses, 7, columns.animals, asked]).cells,
  ];
  const engine = startHeadless(catalogue, workbook());
  engine.api.getFormula().executeCalculation();
  await engine.settle();
  const sheet = engine.api.getActiveWorkbook()?.getSheetByName("Log");
  if (!sheet) throw new Error("no log");
  let mass = massOf(5);
  const inWorkbook = async (): Promise<void> => {
    mass += 0.5;
    sheet.getRange(5, 2).setValue({ v: mass, t: CellValueType.NUMBER });
    await engine.settle();
  };
  await inWorkbook();
  columns.masses[5] = [mass];
  const [latestOnes] = alone() as number[][][];
  agree("mass of LATEST", Number(sheet.getRange(0, AT.latest).getValue()), latestOnes?.[0]?.[0] as number, 1e-9);
  const against = "the three functions alone";
  const lines = await race(
    [
      { what: against, run: alone },
      { what: "one mass changed in the workbook", run: inWorkbook, against, allowed: ALLOWED },
    ],
    7,
    2,
  );
  engine.univer.dispose();
  return [
    { title: "A workbook with a log of 100,000 rows: LATEST, ROLLCALL and MASSTREND of each of 1,000 animals", lines },
  ];
};
