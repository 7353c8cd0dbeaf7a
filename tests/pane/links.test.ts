import { readXlsx } from "../../addin/file/read";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import fc from "fast-check";
import { perform } from "../../taskpane/actions/action";
import { clearAll } from "../../taskpane/actions/clearAll";
import { clearExample } from "../../taskpane/actions/clearExample";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { insertSheet } from "../../taskpane/actions/insertSheet";
import { sharedCopy } from "../../taskpane/actions/sharedCopy";
import { linkLines, linkSheets } from "../../taskpane/actions/linkSheets";
import { startYear, usualSheets, yearSheets, type YearForm } from "../../taskpane/actions/startYear";
import { isEqual, linkedCells, tabsOf } from "../../taskpane/actions/links";
import { sheets } from "../../taskpane/sheets/catalogue";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { CellState, Workbook } from "../../taskpane/workbook";
import { changesOf, type Typed } from "../sheets/fill";
import { MemoryWorkbook } from "./memoryWorkbook";
import { openWorkbook, readSheet } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(120_000);

/** What a cell shows, as text. */
const shownIn = (value: CellState["value"] | undefined): string =>
  typeof value === "object" && value !== null ? value.error : String(value);

const template = (key: string): Sheet => {
  const found = sheets.find((sheet) => sheet.key === key);
  if (!found) throw new Error(`no sheet ${key}`);
  return found;
};
const plan = template("coolingPlan");
const log = template("winterLog");
const year = template("yearPlan");
/** The sheets that follow another, and those that are followed, but for two that are long in working out and follow as others do. */
const joinedOnes = sheets.filter(
  ({ key, links }) =>
    !["readings", "stationShortlist"].includes(key) &&
    (links.length > 0 || sheets.some((one) => one.links.some(({ from }) => from.startsWith(`${key}.`)))),
);
const animals = template("animals");

const inEngine = async (
  story: (workbook: Workbook, undo: () => Promise<void>, opensAt: (name: string) => string) => Promise<void>,
): Promise<void> => {
  const { engine, workbook, close } = openWorkbook();
  try {
    const undo = async (): Promise<void> => {
      await engine.api.undo();
      await engine.settle();
    };
    await story(workbook, undo, (name) => {
      const book = engine.api.getActiveWorkbook();
      book?.setActiveSheet(book.getSheetByName(name) as NonNullable<ReturnType<typeof book.getSheetByName>>);
      return book?.getActiveCell()?.getA1Notation() ?? "";
    });
  } finally {
    close();
  }
};

const found = async (workbook: Workbook) => {
  const { tabs } = tabsOf(await workbook.read());
  return linkedCells(tabs, tabs);
};

/** Linked cells that show something else than their source. */
const apart = async (workbook: Workbook): Promise<readonly string[]> =>
  (await found(workbook))
    .filter((cell) => cell.isLinked && !isEqual(cell))
    .map(({ tab, words, here, there }) => `${tab.name} ${words}: ${shownIn(here.value)}, not ${shownIn(there?.value)}`);

test("a sheet without its source holds the example as typed; beside it, it follows", async () =>
  inEngine(async (workbook) => {
    const alone = await insertLinked(workbook, [log]);
    expect(alone.linked).toEqual([]);
    const [first = ""] = alone.names;
    expect((await readSheet(workbook, first, log)).state("B9").formula).toBeUndefined();
    await insertLinked(workbook, [plan]);
    // What stood there stays as it is.
    expect((await found(workbook)).filter(({ isLinked }) => isLinked)).toEqual([]);
    const beside = await insertLinked(workbook, [log]);
    expect(beside.linked.map(({ words }) => words)).toEqual([
      "Animal",
      "Warming starts on",
      "Animals in the box",
      "Box is shut or vented",
      "Inside of the box, litres",
      "Elevation of the house, m",
    ]);
    expect(beside.linked.every(isEqual)).toBe(true);
  }));

test("all sheets inserted at once follow one another, show the same example, and nothing goes in a circle", async () =>
  inEngine(async (workbook) => {
    const { names, linked } = await insertLinked(workbook, joinedOnes);
    // Whatever may follow does, but for the rows of animals that the list does not have.
    const all = await found(workbook);
    expect(all.length).toBeGreaterThan(60);
    expect(all.filter(({ isLinked }) => !isLinked).map(({ there }) => there)).not.toContainEqual(expect.anything());
    expect(linked.length).toBe(all.filter(({ isLinked }) => isLinked).length);
    expect(
      all.filter((cell) => cell.there !== undefined && !isEqual(cell)).map(({ tab, words }) => [tab.name, words]),
    ).toEqual([]);
    const read = await Promise.all(names.map((name) => readSheet(workbook, name)));
    expect(read.flatMap((one) => one.errors())).toEqual([]);
    expect(read.flatMap(({ cells }) => cells.flat()).filter(({ value }) => shownIn(value).startsWith("Still"))).toEqual(
      [],
    );
  }));

/** All sheets are cleared in one step, settings stay, each asks for what it needs; and the step is taken back. */
const clearedAtOnce = async (
  workbook: Workbook,
  undo: () => Promise<void>,
  names: readonly string[],
  some: readonly Sheet[],
): Promise<void> => {
  const before = JSON.stringify(await workbook.read());
  const asked = await perform(clearAll, workbook, undefined);
  if (asked.kind !== "ask") throw new Error(asked.kind);
  expect(asked.words.text).not.toContain("your own");
  await perform(clearAll, workbook, undefined, {}, asked.words);
  const read = await Promise.all(names.map((name, i) => readSheet(workbook, name, some[i])));
  expect(read.flatMap((one) => one.errors())).toEqual([]);
  for (const [i, sheet] of some.entries()) {
    const settings = sheet.blocks.filter(({ role }) => role === "setting");
    for (const { at, rows } of settings)
      expect([sheet.key, at, read[i]?.at(at)]).toEqual([sheet.key, at, rows[0]?.[0]]);
  }
  // Every sheet says in its line what is still needed, by name and cell, and nothing once it is there.
  const asks = read.map((one, i) =>
    shownIn(one.cells.flat().find(({ value }) => shownIn(value).startsWith("Still"))?.value ?? some[i]?.name),
  );
  for (const [i, sheet] of some.entries()) {
    expect(asks[i]).toMatch(/^Still needed: .*\.$/);
    for (const { at, words } of sheet.needed)
      if (!sheet.blocks.some((block) => block.at === at && block.role === "setting"))
        expect(asks[i]).toContain(`${words} (${at.replace(/:.*/, "")})`);
  }
  expect(await perform(clearAll, workbook, undefined)).toMatchObject({ kind: "refused" });
  await undo();
  expect(JSON.stringify(await workbook.read())).toBe(before);
};

test("sheets are cleared at once, settings stay, and it is undone whole; no linked cell differs from its source, whatever is done to the source", async () =>
  inEngine(async (workbook, undo) => {
    const some = [animals, plan, year, log, template("feedingLog"), template("weights")];
    const { names } = await insertLinked(workbook, some);
    await clearedAtOnce(workbook, undo, names, some);
    const [list = "", cooling = ""] = names;
    const follow = (await found(workbook)).filter(({ isLinked }) => isLinked).length;
    expect(follow).toBeGreaterThan(20);
    const edit = fc.oneof(
      fc.record({
        sheet: fc.constant("plan" as const),
        name: fc.constant("plan.cold"),
        value: fc.option(fc.integer({ min: 0, max: 200 })),
      }),
      fc.record({
        sheet: fc.constant("plan" as const),
        name: fc.constant("plan.when"),
        value: fc.option(fc.integer({ min: 46000, max: 46400 })),
      }),
      fc.record({
        sheet: fc.constant("plan" as const),
        name: fc.constantFrom("plan.coldSet", "plan.warmSet", "air.litres", "air.elevation"),
        value: fc.option(fc.integer({ min: 6, max: 25 })),
      }),
      fc.record({
        sheet: fc.constant("plan" as const),
        name: fc.constant("plan.label"),
        value: fc.constantFrom("Rowan", "nobody", "SORREL", null),
      }),
      fc.record({
        sheet: fc.constant("animals" as const),
        name: fc.constantFrom("list.mass[1]", "list.mass[2]", "settings.adultEvery", "list.born[1]"),
        value: fc.option(fc.integer({ min: 5, max: 60 })),
      }),
      fc.record({
        sheet: fc.constant("animals" as const),
        name: fc.constantFrom("list.label[1]", "list.label[3]"),
        value: fc.constantFrom("Rowan", "Juniper", null),
      }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 3 }), async (edits) => {
        for (const { sheet, name, value } of edits) {
          const typed: Typed = { [name]: value };
          await workbook.write(sheet === "plan" ? changesOf(cooling, plan, typed) : changesOf(list, animals, typed));
        }
        expect(await apart(workbook)).toEqual([]);
        expect((await found(workbook)).filter(({ isLinked }) => isLinked)).toHaveLength(follow);
      }),
      { numRuns: 6, seed: 17 },
    );
  }));

test("a new sheet follows the plan inserted last, and a sheet that follows one goes on with it", async () =>
  inEngine(async (workbook) => {
    const [[first = ""], [second = ""]] = [
      (await insertLinked(workbook, [plan])).names,
      (await insertLinked(workbook, [plan])).names,
    ];
    await workbook.write(changesOf(second, plan, { "plan.cold": 70 }));
    const { names, linked } = await insertLinked(workbook, [log, year]);
    expect(new Set(linked.map(({ source }) => source.name))).toEqual(new Set([second]));
    expect((await readSheet(workbook, names[0] as string, log)).of("animal.warming")).toBe("2027-01-25");
    expect(first).not.toBe(second);
    // One cell of it typed anew: its source is still the plan that the others follow.
    await workbook.write(changesOf(names[0] as string, log, { "animal.litres": 30 }));
    await insertLinked(workbook, [plan]);
    const litres = (await found(workbook)).find(
      ({ tab, words }) => tab.name === names[0] && words.startsWith("Inside"),
    );
    expect([litres?.isLinked, litres?.source.name]).toEqual([false, second]);
  }));

test("several winter plans: each is entered once, an animal names its own, and all sheets agree; of a plan that is gone it is asked", async () =>
  inEngine(async (workbook, undo) => {
    const [first = "", today = "", fed = ""] = (await insertLinked(workbook, [plan, animals, template("feedingLog")]))
      .names;
    const before = JSON.stringify(await workbook.read());
    const outcome = await perform(insertSheet, workbook, [plan]);
    if (outcome.kind !== "done") throw new Error(outcome.kind);
    const second = (await workbook.sheetNames()).at(-1) as string;
    expect(outcome.done.text).toContain(`entered on "${today}", "${fed}": name there which animal follows which`);
    await undo();
    expect(JSON.stringify(await workbook.read())).toBe(before);
    await perform(insertSheet, workbook, [plan]);

    await workbook.write([
      ...changesOf(second, plan, { "plan.when": "2027-03-01" }),
      ...changesOf(today, animals, {
        "reminders.today": "2026-12-15",
        "list.plan[2]": second.toUpperCase(),
        "list.plan[3]": null,
        "list.plan[4]": "Cellar",
      }),
    ]);
    const shown = async () => {
      const [here, log] = [
        await readSheet(workbook, today, animals),
        await readSheet(workbook, fed, template("feedingLog")),
      ];
      expect([...here.errors(), ...log.errors()]).toEqual([]);
      return { here, log };
    };
    const { here, log: meals } = await shown();
    expect([here.of("plan.name"), here.of("plan.name2"), here.of("plan.name3")]).toEqual([first, second, null]);
    expect([here.of("plan.lastMeal2"), meals.of("plan.lastMeal2")]).toEqual(["2027-03-01", "2027-03-01"]);
    expect(here.column("list.stage").slice(0, 4)).toEqual(["Cold", "Feeding", "", ""]);
    expect(here.of("list.toDo[3]")).toMatch(/^Which winter plan does it follow\?/);
    expect(here.of("list.toDo[4]")).toMatch(/^No winter plan is called Cellar:/);
    expect(here.column("list.never").slice(2, 4)).toEqual(Array(2).fill("No food and no cooling until that is known."));
    expect(here.column("list.next").slice(0, 4)).toEqual(["2027-03-29", "2026-09-28", "", ""]);
    // The printed page has a column of days for each plan, under its name.
    expect([here.of("atEach.from1[4]"), here.of("atEach.from2[1]")]).toEqual(["2026-11-16", "2027-03-01"]);
    expect(meals.column("who.follows").slice(0, 4)).toEqual(here.column("list.follows").slice(0, 4));

    // A name that stands twice would be the first's: it is said.
    await workbook.write(changesOf(today, animals, { "plan.name3": first }));
    expect((await shown()).here.of("list.toDo[1]")).toMatch(/^Two winter plans are called/);
    await workbook.write(changesOf(today, animals, { "plan.name3": null }));
    await workbook.remove([second]);
    // Its dates show that they are gone; the animal's row says it in words.
    const gone = await readSheet(workbook, today, animals);
    expect(gone.of("plan.lastMeal2")).toBe("#REF!");
    expect(gone.of("list.toDo[2]")).toMatch(/^It winters, but has no plan/);
    expect(gone.of("list.next[2]")).toBe("");
  }));

test("the lists of winter plans take four: of a fifth it is said that no animal can follow it", async () => {
  const workbook = new MemoryWorkbook();
  await insertLinked(workbook, [plan, animals, template("feedingLog")]);
  const text = async (sheet: Sheet): Promise<string> => {
    const inserted = await perform(insertSheet, workbook, [sheet]);
    if (inserted.kind !== "done") throw new Error(inserted.kind);
    return inserted.done.text;
  };
  for (const nth of [2, 3, 4]) expect([nth, await text(plan)]).toEqual([nth, expect.not.stringContaining("no place")]);
  const said = (lists: string) =>
    `There is no place left for "Cooling plan (5)" on ${lists}: no animal there can follow it.`;
  expect(await text(plan)).toContain(said('"Today", "Feeding log"'));
  // A list that comes after the plans cannot hold all of them either.
  expect(await text(animals)).toContain(said('"Today (2)"'));
});

test("Link sheets offers which of several plans a sheet follows, and moves it whole", async () =>
  inEngine(async (workbook) => {
    const [first = "", second = "", own = ""] = (await insertLinked(workbook, [plan, plan, year])).names;
    await workbook.write(changesOf(first, plan, { "plan.cold": 70 }));
    const [choice, ...others] = (await linkLines(workbook)).choices;
    expect(others).toEqual([]);
    expect(choice).toMatchObject({ sheet: own, kind: plan.name, names: [first, second], source: second });
    const sources = new Map([[choice?.key ?? "", first]]);
    const { lines } = await linkLines(workbook, sources);
    expect(new Set(lines.map(({ standing, source }) => `${standing} ${source}`))).toEqual(
      new Set([`elsewhere ${first}`]),
    );
    const wish = { ticked: lines.map(({ place }) => place), sources };
    const asked = await perform(linkSheets, workbook, wish);
    if (asked.kind !== "ask") throw new Error(asked.kind);
    await perform(linkSheets, workbook, wish, {}, asked.words);
    expect((await readSheet(workbook, own, year)).of("year.warmingStarts")).toBe("2027-01-25");
    const after = await linkLines(workbook);
    expect(after.choices.map(({ source }) => source)).toEqual([first]);
    expect(new Set(after.lines.map(({ standing }) => standing))).toEqual(new Set(["linked"]));
  }));

test("clearing leaves what follows another sheet, and a blank source shows blank", async () =>
  inEngine(async (workbook) => {
    const { names } = await insertLinked(workbook, [plan, year, log]);
    for (const name of names) {
      await workbook.show(name);
      await clearExample.run(workbook);
    }
    const cells = await found(workbook);
    expect(cells.every(({ isLinked }) => isLinked)).toBe(true);
    expect(new Set(cells.map(({ here }) => here.value))).toEqual(new Set([""]));
    const read = await Promise.all(names.map((name) => readSheet(workbook, name)));
    expect(read.flatMap((one) => one.errors())).toEqual([]);
  }));

test("inserting linked sheets is one step of undo", async () =>
  inEngine(async (workbook, undo) => {
    await insertLinked(workbook, [plan]);
    const before = JSON.stringify(await workbook.read());
    const outcome = await perform(insertSheet, workbook, [log, year]);
    expect(outcome.kind === "done" && outcome.done.text).toMatch(/follow "Cooling plan"/);
    await undo();
    expect(JSON.stringify(await workbook.read())).toBe(before);
  }));

test("a shared copy holds the figures of the day, and stands still when the plan goes on", async () =>
  inEngine(async (workbook) => {
    const { names } = await insertLinked(workbook, [plan, log]);
    await sharedCopy.run(workbook, [names[1] as string]);
    const copy = (await workbook.sheetNames()).find((name) => name.startsWith("Winter log (")) as string;
    await workbook.write(changesOf(names[0] as string, plan, { "plan.cold": 70 }));
    expect((await readSheet(workbook, names[1] as string, log)).of("animal.warming")).toBe("2027-01-25");
    expect((await readSheet(workbook, copy, log)).of("animal.warming")).toBe("2027-02-08");
    // Nothing follows a record, and it follows nothing.
    expect((await found(workbook)).map(({ tab }) => tab.name)).not.toContain(copy);
  }));

test("a file of some sheets holds the figure where the sheet that it follows stays behind", async () =>
  inEngine(async (workbook) => {
    const { names } = await insertLinked(workbook, [plan, log]);
    const warming = async (chosen: readonly string[]) => {
      const { sheets: written } = await readXlsx(await workbook.toFile(chosen));
      const { top, left } = areaOf(cellOf(log, "animal.warming"));
      return written.find(({ name }) => name === names[1])?.cells[top - 1]?.[left - 1];
    };
    const alone = await warming([names[1] as string]);
    expect([alone?.formula, alone?.value]).toEqual([undefined, 46_426]);
    expect((await warming(names))?.formula).toContain("'Cooling plan'!");
  }));

test("Link sheets shows linked, equal, blank and different, links what is ticked, and is undone whole", async () =>
  inEngine(async (workbook, undo) => {
    // The log comes before its plan, so that nothing of it follows.
    const [own = ""] = (await insertLinked(workbook, [log])).names;
    await workbook.write(changesOf(own, log, { "animal.litres": 30, "animal.elevation": null }));
    await insertLinked(workbook, [plan]);
    const { names, linked } = await insertLinked(workbook, [year]);
    const { lines } = await linkLines(workbook);
    const standing = (sheet: string) =>
      Object.fromEntries(lines.filter((line) => line.sheet === sheet).map((line) => [line.words, line.standing]));
    expect(standing(own)).toEqual({
      Animal: "equal",
      "Warming starts on": "equal",
      "Animals in the box": "equal",
      "Box is shut or vented": "equal",
      "Inside of the box, litres": "different",
      "Elevation of the house, m": "blank",
    });
    expect(Object.values(standing(names[0] as string)).every((one) => one === "linked")).toBe(true);
    expect(linked.length).toBe(8);
    const litres = lines.find(({ standing: one }) => one === "different");
    expect([litres?.here, litres?.there]).toEqual(["30", "24"]);
    expect(lines.find(({ words }) => words === "Warming starts on")?.here).toBe("2027-02-08");

    const ticked = lines.filter(({ standing: one }) => one !== "linked").map(({ place }) => place);
    const before = JSON.stringify(await workbook.read());
    const asked = await perform(linkSheets, workbook, { ticked });
    if (asked.kind !== "ask") throw new Error(asked.kind);
    expect(asked.words.text).toContain("1 figure that is typed will go");
    expect(asked.words.list?.join()).toContain("30 becomes 24");
    expect(JSON.stringify(await workbook.read())).toBe(before);
    expect((await perform(linkSheets, workbook, { ticked }, {}, asked.words)).kind).toBe("done");
    expect((await linkLines(workbook)).lines.map((line) => line.standing)).not.toContain("different");
    expect((await readSheet(workbook, own, log)).of("animal.litres")).toBe(24);
    await undo();
    expect(JSON.stringify(await workbook.read())).toBe(before);
  }));

describe("Start my year", () => {
  const form: YearForm = {
    label: "Thistle",
    sex: "female",
    born: "2022-06-01",
    mass: "250,5",
    age: "adult",
    latitude: "40.9",
    longitude: "",
    elevation: "1500",
    way: "backwards",
    when: "2027-04-01",
    sheets: usualSheets("adult"),
  };

  test("a blank, linked set in which what was given stands once, and the rest is asked for", async () =>
    inEngine(async (workbook, undo, opensAt) => {
      const before = JSON.stringify(await workbook.read());
      const outcome = await perform(startYear, workbook, form);
      if (outcome.kind !== "done") throw new Error(JSON.stringify(outcome));
      // Each opens at the first blank that it asks for, or at its first input.
      expect((await workbook.selection()).sheet).toBe(template("animals").name);
      for (const [key, name] of [
        ["animals", "reminders.today"],
        ["nativeClimate", "place.longitude"],
        ["winterLog", "animal.start"],
      ] as const) {
        expect([key, opensAt(template(key).name)]).toEqual([key, cellOf(template(key), name)]);
      }
      const { tabs } = tabsOf(await workbook.read());
      expect(tabs.map(({ template: { key } }) => key)).toEqual(yearSheets.map(({ key }) => key));
      const of = async (key: string) => readSheet(workbook, template(key).name, template(key));
      expect((await of("coolingPlan")).of("dates.firstMeal")).toBe("2027-04-01");
      expect((await of("coolingPlan")).of("air.mass")).toBe(250.5);
      expect((await of("yearPlan")).of("year.firstMeal")).toBe("2027-04-01");
      expect((await of("yearPlan")).of("year.latitude")).toBe(40.9);
      expect((await of("winterLog")).of("animal.label")).toBe("Thistle");
      expect((await of("feedingLog")).of("who.every[1]")).toBe(7);
      const cells = linkedCells(tabs, tabs);
      expect(cells.length).toBeGreaterThan(20);
      expect(cells.filter((cell) => !cell.isLinked || !isEqual(cell)).map(({ words }) => words)).toEqual([]);
      const asks = (await of("coolingPlan")).cells
        .flat()
        .find(({ value }) => shownIn(value).startsWith("Still"))?.value;
      expect(asks).toMatch(/^Still needed: Warm set-point \(\w+\), .*Elevation \(\w+\)\.$/);
      // Nothing of the example is left, and nothing shows an error.
      const all = (await workbook.read()).flatMap(({ cells: lines }) => lines.flat());
      expect(all.filter(({ value }) => /Juniper|Rowan|Example:/.test(shownIn(value)))).toEqual([]);
      expect(all.filter(({ value }) => typeof value === "object" && value !== null)).toEqual([]);
      await undo();
      expect(JSON.stringify(await workbook.read())).toBe(before);
    }));

  test("says what cannot be read, and asks before a sheet stands twice", async () => {
    const workbook = new MemoryWorkbook(() => [[1]]).put("Sheet1", []);
    expect(await startYear.describe(workbook, { ...form, label: " ", mass: "heavy", latitude: "97" })).toMatchObject({
      possible: false,
      text: /animal's name.*Mass is "heavy".*Latitude is "97": give a number from -90 to 90/,
    });
    expect(await startYear.describe(workbook, { ...form, mass: "1,250", elevation: "1.500" })).toMatchObject({
      possible: false,
      text: /Mass is "1,250", which can be read in two ways: write 1250 or 1\.25\. Elevation is "1\.500".* write 1500 or 1\.5\./,
    });
    expect((await startYear.describe(workbook, form)).text).toBe("Adds 8 sheets after your last one.");
    await insertLinked(workbook, [plan]);
    expect(await startYear.describe(workbook, form)).toMatchObject({
      possible: true,
      ask: true,
      text: /"Cooling plan" is in/,
    });
    expect(usualSheets("young")).not.toContain("coolingPlan");
  });
});
