import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { home, lower, town, upper, winter } from "../../taskpane/sheets/shared/scenario";
import { sheets } from "../../taskpane/sheets/catalogue";
import { winterLog } from "../../taskpane/sheets/winterLog";
import { yearPlan } from "../../taskpane/sheets/yearPlan";
import pairs from "../tables/stationPairs.json";
import dryMonths from "../tables/dryMonths.json";
import { lebanonMonths } from "../normals";
import { drawn, openWorkbook, readSheet, type Reading } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(60_000);

/** The sheets tell one story, and one may point to another's figures. */

test("the winter of the example is the one that Cooling plan works out", async () => {
  const [plan] = (await drawn(coolingPlan)) as [Reading];
  const dates = plan.cells.slice(6, 12).map((row) => row[4]?.value);
  expect(dates).toEqual([...winter.dates]);
});

test("the home curve of Year plan is what Native climate works out, to its tenth", async () => {
  const [climate, year] = (await drawn(nativeClimate, yearPlan)) as [Reading, Reading];
  for (const [from, to] of [
    ["B85:B96", "B8:B19"],
    ["C85:C96", "C8:C19"],
  ] as const) {
    const worked = climate.block(from).flat() as number[];
    const typed = year.block(to).flat() as number[];
    worked.forEach((value, i) => expect(Math.abs(value - (typed[i] ?? NaN))).toBeLessThan(0.051));
  }
});

test("a cell may point to another sheet, and follows it", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const [plan, year, log] = (await workbook.insert([coolingPlan, yearPlan, winterLog])) as [string, string, string];
    const point = (cell: string, formula: string, sheet: string) => {
      const { top, left } = areaOf(cell);
      return { sheet, row: top - 1, column: left - 1, cells: [[{ formula }]] };
    };
    const column = [7, 8, 9, 10, 11, 12].map((row, i) => point(`J${8 + i}`, `='${plan}'!E${row}`, year));
    await workbook.write([...column, point(cellOf(winterLog, "animal.warming"), `='${plan}'!E10`, log)]);
    await workbook.write([{ sheet: plan, row: 11, column: 1, cells: [[70]] }]);
    expect((await readSheet(workbook, year)).at("J11")).toBe("2027-01-25");
    expect((await readSheet(workbook, log, winterLog)).of("animal.warming")).toBe("2027-01-25");
    expect((await readSheet(workbook, log)).errors()).toEqual([]);
    expect((await readSheet(workbook, year)).errors()).toEqual([]);
  } finally {
    close();
  }
});

test("every note that names a cell of another sheet names one that works something out", () => {
  const pointed = sheets.flatMap(({ notes }) =>
    notes.flatMap(({ text }) =>
      [...text.matchAll(/='([^']+)'!([A-Z]+\d+)/g)].map(([, name, cell]) => [name, cell] as const),
    ),
  );
  expect(pointed.length).toBeGreaterThan(2);
  for (const [name, cell] of pointed) {
    const sheet = sheets.find((one) => one.name === name);
    const { top, left } = areaOf(cell ?? "");
    const block = sheet?.blocks.find(({ at, rows, spills }) => {
      const corner = areaOf(at);
      const [down, across] = spills ?? [rows.length, rows[0]?.length ?? 0];
      return top >= corner.top && top < corner.top + down && left >= corner.left && left < corner.left + across;
    });
    expect([name, cell, block?.role]).toEqual([name, cell, "computed"]);
  }
});

describe("the station records are those of the tables that the functions are held against", () => {
  const pair = pairs.rows.find(({ low, high }) => low === "Segovia" && high === "Navacerrada");
  test("Segovia and Navacerrada", () => {
    expect([lower.high, lower.low, lower.elevation]).toEqual([pair?.lowHighs, pair?.lowLows, pair?.lowElevation]);
    expect([upper.high, upper.low, upper.elevation]).toEqual([pair?.highHighs, pair?.highLows, pair?.highElevation]);
    expect(upper.rain).toEqual(dryMonths.rows.find(({ station }) => station === "Navacerrada")?.rains);
    // The animals are said to live between the two.
    expect(home.elevation).toBeGreaterThan(lower.elevation);
    expect(home.elevation).toBeLessThan(upper.elevation);
  });
  test("Lebanon", () => {
    expect([town.high, town.low]).toEqual([lebanonMonths.high, lebanonMonths.low]);
  });
});
