import { serialOfIso } from "../../functions/dates";
import { clearing } from "../../taskpane/sheets/clear";
import { areaOf, block } from "../../taskpane/sheets/shared/address";
import { paste, readings } from "../../taskpane/sheets/readings";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { openWorkbook, readSheet, type Reading } from "../preview/engine";
import { changesOf, filled } from "./fill";

jest.setTimeout(60_000);

const day = (iso: string): number => serialOfIso(iso) as number;

/** The sheet after its example has been cleared and so many rows have landed where the pane puts them. */
const landed = async (rows: readonly (readonly (number | string | null)[])[]): Promise<Reading> => {
  const { workbook, close } = openWorkbook();
  try {
    const [name] = (await workbook.insert([readings])) as [string];
    const cells = Array.from({ length: paste.rows }, (_, i) => rows[i] ?? [null, null]);
    const { top, left } = areaOf(paste.at);
    await workbook.write([
      { sheet: name, row: top - 1, column: left - 1, cells },
      ...changesOf(name, readings, { "limits.low": 18, "limits.high": 23 }),
    ]);
    return await readSheet(workbook, name, readings);
  } finally {
    close();
  }
};

test("the place where readings land is cleared whole with the example", () => {
  expect(clearing(readings)).toEqual(
    expect.arrayContaining([cellOf(readings, "pasted.time"), cellOf(readings, "pasted.celsius")]),
  );
  expect(cellOf(readings, "pasted.time")).toBe(block(paste.at, paste.rows));
});

test("the example: days, gap, a blank that is no 0, hours too warm", async () => {
  const reading = await filled(readings, {});
  expect(reading.column("days.date").slice(0, 6)).toEqual([
    "2026-10-12",
    "2026-10-13",
    "2026-10-14",
    "2026-10-15",
    "2026-10-16",
    "2026-10-17",
  ]);
  // Twelve readings a day; the third day lost four, the fourth day's blank is skipped.
  expect(
    reading
      .column("days.read")
      .slice(0, 6)
      .map((read, i) => [read, reading.of(`days.skip[${i + 1}]`)]),
  ).toEqual([
    [12, 0],
    [12, 0],
    [8, 0],
    [11, 1],
    [12, 0],
    [12, 0],
  ]);
  expect(reading.of("outside.lowest")).toBeGreaterThan(18);
  expect(reading.of("read.gaps")).toBe(1);
  expect(reading.of("read.longestGap")).toBeCloseTo(10, 6);
  // The gap of ten hours, and the four hours around the blank.
  expect(reading.of("outside.notCovered")).toBeCloseTo(14, 6);
  expect(reading.of("days.sign[5]")).toBe("warm");
  expect(reading.of("days.sign[6]")).toBe("ok");
  expect(reading.of("planWords.said")).toMatch(/^Against the plan that is cold from 2026-11-16 to 2027-02-08, by/);
  // Set-points by definition: 24 °C less 16/42 K a day from 2026-10-05 on.
  expect(reading.of("days.setPoint[1]")).toBeCloseTo(24 - (16 / 42) * 7, 9);
  expect(reading.of("days.off[1]")).toBeCloseTo((reading.of("days.mean[1]") as number) - (24 - (16 / 42) * 7), 9);
});

test("the limits are drawn along the days that were read, and not past them", async () => {
  const reading = await filled(readings, { "limits.low": 18.5, "limits.high": null });
  expect(reading.column("bounds.low").slice(4, 8)).toEqual([18.5, 18.5, "", ""]);
  expect(new Set(reading.column("bounds.high"))).toEqual(new Set([""]));
});

test("time outside the limits is that of straight lines between readings", async () => {
  const noon = day("2026-10-20") + 0.5;
  // 18 to 24 °C in two hours and back: above 23 for a sixth of each leg, 20 minutes; then 20 to 16: below 18 for an hour.
  const times = [0, 2, 4, 5, 7].map((hours) => noon + hours / 24);
  const reading = await landed(times.map((time, i) => [time, [18, 24, 18, 20, 16][i] as number]));
  expect(reading.of("outside.warm")).toBeCloseTo(2 / 3, 6);
  expect(reading.of("outside.cold")).toBeCloseTo(1, 6);
  expect(reading.of("read.rows")).toBe(5);
  expect(reading.of("gaps.from[1]")).toBe("no gap");
  expect(reading.of("read.gaps")).toBe(0);
  expect(reading.of("days.sign[1]")).toBe("both");
});

test("a winter of quarter hours, 19 200 rows, fills the day table; a day more is answered in words", async () => {
  const start = day("2026-10-01");
  const quarter = (i: number): readonly [number, number] => [start + i / 96, 10 + Math.sin((2 * Math.PI * i) / 96)];
  const full = await landed(Array.from({ length: 19_200 }, (_, i) => quarter(i)));
  expect(full.errors()).toEqual([]);
  expect(full.of("read.rows")).toBe(19_200);
  expect(full.of("days.date[200]")).toBe("2027-04-18");
  // A whole period of the sine, 96 readings a day: high 11, low 9, mean 10.
  expect(full.of("days.high[41]")).toBeCloseTo(11, 9);
  expect(full.of("days.low[41]")).toBeCloseTo(9, 9);
  expect(full.of("days.mean[41]")).toBeCloseTo(10, 3);
  expect(full.of("outside.cold")).toBeCloseTo(19_199 / 4, 3);

  const over = await landed(Array.from({ length: 19_297 }, (_, i) => quarter(i)));
  expect(over.errors()).toEqual([]);
  expect(over.of("days.date[1]")).toBe("More than 200 days: one winter a sheet");
});

test("works without a plan: nothing to track, no error", async () => {
  const reading = await filled(
    readings,
    Object.fromEntries(PLAN_DATES.slice(0, 3).map((date) => [`plan.${date}`, null])),
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.of("days.tracked[1]")).toBe("");
  expect(reading.of("planWords.said")).toMatch(/^No whole winter plan stands here/);
  expect(reading.of("days.date[1]")).toBe("2026-10-12");
});
