import { evaluate } from "../../addin/boundary/evaluate";
import { planOf } from "../../taskpane/actions/clearExample";
import { importReadings } from "../../taskpane/actions/importReadings";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { insertPlace, sheetsFor, type PlaceChoice } from "../../taskpane/actions/insertPlace";
import { linkedCells, tabsOf } from "../../taskpane/actions/links";
import { linkLines, linkSheets } from "../../taskpane/actions/linkSheets";
import { areaOf } from "../../taskpane/actions/place";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { startYear, usualSheets, type YearForm } from "../../taskpane/actions/startYear";
import { recognise } from "../../taskpane/actions/template";
import { sheets } from "../../taskpane/sheets/catalogue";
import { markOf } from "../../taskpane/sheets/mark";
import { markedBy } from "../../taskpane/sheets/markedBy";
import { paste } from "../../taskpane/sheets/readings";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { changesOf } from "../sheets/fill";
import { openWorkbook, readSheet } from "../preview/engine";
import { MemoryWorkbook } from "./memoryWorkbook";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(120_000);

const template = (key: string): Sheet => {
  const found = sheets.find((sheet) => sheet.key === key);
  if (!found) throw new Error(`no sheet ${key}`);
  return found;
};
const [plan, year, animals] = ["coolingPlan", "yearPlan", "animals"].map(template) as [Sheet, Sheet, Sheet];
const ours = (sheet: Sheet): Sheet => inSystem(sheet, "imperial");

test("a sheet is known by its words, in its own system, and by its mark", async () => {
  for (const sheet of sheets) {
    for (const one of new Set([sheet, ours(sheet)])) {
      const workbook = new MemoryWorkbook(() => [[1]]);
      const [name = ""] = await workbook.insert([one]);
      const [contents] = await workbook.read([name]);
      expect(contents && recognise(contents, sheets)).toEqual({ template: one, inPlace: true });
      // Nothing of the example passes for the keeper's own.
      const clearing = contents && planOf(contents);
      expect([one.name, one.system, typeof clearing === "object" ? clearing.own : clearing]).toEqual([
        one.name,
        one.system,
        0,
      ]);
      expect(markedBy(markOf(one))).toBe(one);
    }
  }
  expect([markedBy(undefined), markedBy("nothing"), markedBy("yearPlan:cubits")]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});

test("a chart of an imperial sheet is told in its units", async () => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  await workbook.insert([ours(plan)]);
  const [contents] = await workbook.read();
  expect(contents && recognise(contents, sheets)?.template.charts.map(({ axis }) => axis)).toEqual(["°F"]);
});

test("what is linked across the systems is converted, and a figure that is not follows nothing", async () => {
  const { workbook, close } = openWorkbook();
  try {
    await insertLinked(workbook, [ours(plan)]);
    const [name = ""] = (await insertLinked(workbook, [year])).names;
    const read = async (sheet: Sheet) => readSheet(workbook, sheet.name, sheet);
    expect((await read(year)).of("year.warmSet")).toBeCloseTo(24, 9);
    expect((await read(year)).of("year.coldSet")).toBeCloseTo(8, 9);
    const lineOf = async (words: string) =>
      (await linkLines(workbook)).lines.find((line) => line.sheet === name && line.words === words);
    expect(await lineOf("Warm set-point, °C (converted)")).toMatchObject({ standing: "linked" });
    expect(await lineOf("Last meal")).toMatchObject({ standing: "linked" });

    // A blank stays blank, and the other system's figure is not taken for one of its own.
    await workbook.write(changesOf(plan.name, ours(plan), { "plan.coldSet": null }));
    expect((await read(year)).of("year.coldSet")).toBe("");
    await workbook.write(
      changesOf(name, year, { "year.warmSet": { formula: `='${plan.name}'!${cellOf(plan, "plan.warmSet")}` } }),
    );
    const raw = await lineOf("Warm set-point, °C (converted)");
    expect(raw).toMatchObject({ standing: "different", here: "75.2", there: "24" });
    await linkSheets.run(workbook, { ticked: [raw?.place ?? ""] });
    expect((await read(year)).of("year.warmSet")).toBeCloseTo(24, 9);
  } finally {
    close();
  }
});

test("by an animal's name too, and feet in metres", async () => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  await workbook.insert([ours(animals), ours(plan), template("breedingSeason"), template("winterLog")]);
  const { tabs } = tabsOf(await workbook.read());
  const called = (words: string) => linkedCells(tabs, tabs).find((cell) => cell.words.startsWith(words));
  const first = called("Mass, g");
  expect(called("Elevation of the house, m")?.there?.value).toBeCloseTo(597 * 0.3048, 9);
  // 11.005 oz in the list.
  expect(first?.there?.value).toBeCloseTo(11.005 * 28.349523125, 9);
  expect((first?.follows as { formula: string }).formula).toMatch(/IF\(ISNUMBER\((INDEX.*)\),\1\*28\.349523125,\1\)/);
});

test("a sheet follows one of its own system where there is one", async () => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  await workbook.insert([plan, ours(plan)]);
  const { linked } = await insertLinked(workbook, [ours(year)]);
  expect([...new Set(linked.map(({ source }) => source.template.system))]).toEqual(["imperial"]);
  expect(linked.filter(({ words }) => words.includes("converted"))).toEqual([]);
});

const form: YearForm = {
  label: "Thistle",
  sex: "female",
  born: "2022-06-01",
  mass: "8.8",
  age: "adult",
  latitude: "40.9",
  longitude: "-4",
  elevation: "4921.5",
  way: "forwards",
  when: "2026-09-21",
  units: "imperial",
  sheets: usualSheets("adult"),
};

test("Start my year in °F, ounces and feet: what is given stands as it was given", async () => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  expect(await startYear.describe(workbook, { ...form, mass: "800" })).toMatchObject({
    text: expect.stringContaining('Mass is "800": give a number from 0.0036 to 705') as string,
  });
  await startYear.run(workbook, form);
  const of = async (key: string) => readSheet(workbook, template(key).name, ours(template(key)));
  expect((await of("animals")).of("list.mass[1]")).toBe(8.8);
  expect((await of("nativeClimate")).of("place.elevation")).toBe(4921.5);
  // What is no one's figure but practice stays, and stands in the keeper's units: 4 °C.
  expect((await of("winterLog")).of("animal.tooCold")).toBe(39.2);
  for (const contents of await workbook.read()) {
    const known = recognise(contents, sheets);
    if (known) expect([contents.name, known.template.system, known.inPlace]).toEqual([contents.name, "imperial", true]);
  }
});

test("Places inserts its two sheets in the units chosen, with the place's elevations in them", async () => {
  const choice: PlaceChoice = {
    latitude: 46.5,
    longitude: 9.8,
    bandLow: 1300,
    bandHigh: 1600,
    elevation: 1500,
    words: "46.50° N, 9.80° E at 1500 m",
    stations: [],
    system: "imperial",
  };
  expect(sheetsFor(choice).map(({ system }) => system)).toEqual(["imperial", "imperial"]);
  const workbook = new MemoryWorkbook(() => [[1]]);
  await insertPlace.run(workbook, choice);
  const climate = template("nativeClimate");
  const read = await readSheet(workbook, climate.name, climate);
  expect(read.of("place.elevation")).toBe(4921);
  const shortlist = template("stationShortlist");
  expect((await readSheet(workbook, shortlist.name, shortlist)).of("home.bandLow")).toBe(4265);
});

test.each([
  ["Time;Temp °C\n2026-01-10 00:00;5.5\n2026-01-10 12:00;-40\n", [41.9, -40]],
  ["Time;Temp °F\n2026-01-10 00:00;41.9\n2026-01-10 12:00;-40\n", [41.9, -40]],
])("readings land in the units of the sheet: %j", async (text, wanted) => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  const { layout, titles } = guessLayout(text, {});
  await importReadings.run(workbook, { name: "box.csv", text, layout, titles, evaluate, system: "imperial" });
  const [contents] = await workbook.read(["Readings"]);
  expect(contents && recognise(contents, sheets)?.template.system).toBe("imperial");
  const { row, column } = areaOf(paste.at) as { row: number; column: number };
  expect([0, 1].map((i) => contents?.cells[row + i]?.[column + 1]?.value)).toEqual(wanted);
});

test("on a plain sheet too, and its functions are told", async () => {
  const workbook = new MemoryWorkbook(() => [[1]]);
  const text = "Time;Temp °C;Note\n2026-01-10 00:00;5;a\n";
  const { layout, titles } = guessLayout(text, { others: [2] });
  await importReadings.run(workbook, { name: "box.csv", text, layout, titles, evaluate, system: "imperial" });
  const cells = (await workbook.read(["Readings"]))[0]?.cells.flat() ?? [];
  expect(cells.map(({ value }) => value)).toEqual(expect.arrayContaining(["°F", "Lowest °F", 41]));
  expect(cells.flatMap(({ formula = [] }) => formula)).toEqual([
    expect.stringMatching(/DAYTABLE\(.*"imperial"\)/),
    expect.stringMatching(/TIMEOUTSIDE\(.*"imperial"\)/),
  ]);
});
