import { isoOf } from "../../functions/dates";
import { cleared } from "../../taskpane/sheets/clear";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { filled } from "../../taskpane/sheets/filled";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { home, lower, town, upper, winter } from "../../taskpane/sheets/shared/scenario";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { winterLog } from "../../taskpane/sheets/winterLog";
import { yearPlan } from "../../taskpane/sheets/yearPlan";
import pairs from "../tables/stationPairs.json";
import dryMonths from "../tables/dryMonths.json";
import { lebanonMonths } from "../normals";
import { changesOf } from "./fill";
import { drawn, openWorkbook, readSheet, type Reading } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(60_000);

/** The sheets tell one story, and one may point to another's figures. */

test("the winter of the example is the one that Cooling plan works out", async () => {
  const [plan] = (await drawn(coolingPlan)) as [Reading];
  expect(plan.of("dates.date")).toEqual(winter.dates.map(isoOf));
});

test("the home curve of Year plan is what Native climate works out, to its tenth", async () => {
  const [climate, year] = (await drawn(nativeClimate, yearPlan)) as [Reading, Reading];
  for (const [from, to] of [
    ["year.high", "home.high"],
    ["year.low", "home.low"],
  ] as const) {
    const worked = climate.column(from) as number[];
    const typed = year.column(to) as number[];
    worked.forEach((value, i) => expect(Math.abs(value - (typed[i] ?? NaN))).toBeLessThan(0.051));
  }
});

test("Native climate of a place without stations has no error: the rows of stations stay empty", async () => {
  const { latitude, longitude, bandLow, bandHigh } = home;
  const named = Object.fromEntries(
    Object.entries({ latitude, longitude, bandLow, bandHigh }).map(([name, value]) => [`place.${name}`, value]),
  );
  const [climate] = (await drawn(filled(cleared(nativeClimate), named))) as [Reading];
  expect(climate.errors()).toEqual([]);
  expect(climate.column("stations.km")).toEqual(["", ""]);
});

test("a cell may point to another sheet, and follows it", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const [plan, year, log] = (await workbook.insert([coolingPlan, yearPlan, winterLog])) as [string, string, string];
    const point = (name: string) => ({ formula: `='${plan}'!${cellOf(coolingPlan, name)}` });
    const dates = Object.fromEntries(PLAN_DATES.map((date) => [`year.${date}`, point(`dates.${date}`)]));
    await workbook.write([
      ...changesOf(year, yearPlan, dates),
      ...changesOf(log, winterLog, { "animal.warming": point("dates.warmingStarts") }),
      ...changesOf(plan, coolingPlan, { "plan.cold": 70 }),
    ]);
    const [yearRead, logRead] = [await readSheet(workbook, year, yearPlan), await readSheet(workbook, log, winterLog)];
    expect(yearRead.of("year.warmingStarts")).toBe("2027-01-25");
    expect(logRead.of("animal.warming")).toBe("2027-01-25");
    expect([...logRead.errors(), ...yearRead.errors()]).toEqual([]);
  } finally {
    close();
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
