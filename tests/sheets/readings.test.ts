import { serialOfIso } from "../../functions/dates";
import { clearing } from "../../taskpane/sheets/clear";
import { block } from "../../taskpane/sheets/shared/address";
import { paste, readings } from "../../taskpane/sheets/readings";
import { openWorkbook, readSheet, type Reading } from "../preview/engine";
import { down, filled } from "./fill";

jest.setTimeout(60_000);

const day = (iso: string): number => serialOfIso(iso) as number;

/** The sheet after its example has been cleared and so many rows have landed where the pane puts them. */
const landed = async (rows: readonly (readonly (number | string | null)[])[]): Promise<Reading> => {
  const { workbook, close } = openWorkbook();
  try {
    const [name] = (await workbook.insert([readings])) as [string];
    const cells = Array.from({ length: paste.rows }, (_, i) => rows[i] ?? [null, null]);
    await workbook.write([
      { sheet: name, row: 6, column: 0, cells },
      { sheet: name, row: 6, column: 6, cells: [[18]] },
      { sheet: name, row: 7, column: 6, cells: [[23]] },
    ]);
    return await readSheet(workbook, name);
  } finally {
    close();
  }
};

test("the place where readings land is cleared whole with the example", () => {
  expect(clearing(readings)).toContain(block(paste.at, paste.rows, paste.columns));
});

test("the example: days, gap, a blank that is no 0, hours too warm", async () => {
  const reading = await filled(readings, {});
  expect(reading.block("D60:D65").flat()).toEqual([
    "2026-10-12",
    "2026-10-13",
    "2026-10-14",
    "2026-10-15",
    "2026-10-16",
    "2026-10-17",
  ]);
  // Twelve readings a day; the third day lost four, the fourth day's blank is skipped.
  expect(reading.block("J60:K65")).toEqual([
    [12, 0],
    [12, 0],
    [8, 0],
    [11, 1],
    [12, 0],
    [12, 0],
  ]);
  expect(reading.at("P18")).toBeGreaterThan(18);
  expect(reading.at("G21")).toBe(1);
  expect(reading.at("G22")).toBeCloseTo(10, 6);
  // The gap of ten hours, and the four hours around the blank.
  expect(reading.at("P21")).toBeCloseTo(14, 6);
  expect(reading.at("L64")).toBe("warm");
  expect(reading.at("L65")).toBe("ok");
  // Set-points by definition: 24 °C less 16/42 K a day from 2026-10-05 on.
  expect(reading.at("N60")).toBeCloseTo(24 - (16 / 42) * 7, 9);
  expect(reading.at("P60")).toBeCloseTo((reading.at("I60") as number) - (24 - (16 / 42) * 7), 9);
});

test("time outside the limits is that of straight lines between readings", async () => {
  const noon = day("2026-10-20") + 0.5;
  // 18 to 24 °C in two hours and back: above 23 for a sixth of each leg, 20 minutes; then 20 to 16: below 18 for an hour.
  const times = [0, 2, 4, 5, 7].map((hours) => noon + hours / 24);
  const reading = await landed(times.map((time, i) => [time, [18, 24, 18, 20, 16][i] as number]));
  expect(reading.at("P16")).toBeCloseTo(2 / 3, 6);
  expect(reading.at("P15")).toBeCloseTo(1, 6);
  expect(reading.at("G20")).toBe(5);
  expect(reading.at("R7")).toBe("no gap");
  expect(reading.at("G21")).toBe(0);
  expect(reading.at("L60")).toBe("both");
});

test("a winter of quarter hours, 19 200 rows, fills the day table; a day more is answered in words", async () => {
  const start = day("2026-10-01");
  const quarter = (i: number): readonly [number, number] => [start + i / 96, 10 + Math.sin((2 * Math.PI * i) / 96)];
  const full = await landed(Array.from({ length: 19_200 }, (_, i) => quarter(i)));
  expect(full.errors()).toEqual([]);
  expect(full.at("G20")).toBe(19_200);
  expect(full.at("D259")).toBe("2027-04-18");
  // A whole period of the sine, 96 readings a day: high 11, low 9, mean 10.
  expect(full.at("E100")).toBeCloseTo(11, 9);
  expect(full.at("F100")).toBeCloseTo(9, 9);
  expect(full.at("I100")).toBeCloseTo(10, 3);
  expect(full.at("P15")).toBeCloseTo(19_199 / 4, 3);

  const over = await landed(Array.from({ length: 19_297 }, (_, i) => quarter(i)));
  expect(over.errors()).toEqual([]);
  expect(over.at("D60")).toBe("More than 200 days: one winter a sheet");
});

test("works without a plan: nothing to track, no error", async () => {
  const reading = await filled(readings, down("G11", [null, null, null]));
  expect(reading.errors()).toEqual([]);
  expect(reading.at("M60")).toBe("");
  expect(reading.at("D60")).toBe("2026-10-12");
});
