import { sheets } from "../../taskpane/sheets/catalogue";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { cleared, clearing } from "../../taskpane/sheets/clear";
import { addressOf, areaOf, beside, columnLetters } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { day } from "../../taskpane/sheets/shared/scenario";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { CellContent, Change } from "../../taskpane/workbook";
import { drawn, openWorkbook, readSheet, type Reading } from "../preview/engine";
import { addressFor, rows, typedInto as typed } from "./fill";

// Five of a large sheet in one workbook take seconds to work out.
jest.setTimeout(60_000);

/** Every sheet as it is worked out in the spreadsheet engine: with its example, cleared, three times over, and with slips. */

/** One content for every cell of an address, as the Workbook port takes it. */
const write = (sheet: string, address: string, content: CellContent): Change => {
  const { top, left, bottom, right } = areaOf(address);
  const cells = Array.from({ length: bottom - top + 1 }, () => Array<CellContent>(right - left + 1).fill(content));
  return { sheet, row: top - 1, column: left - 1, cells };
};

/** Cells that show 0, by address. */
const zeros = (reading: Reading): readonly string[] =>
  reading.cells.flatMap((row, i) =>
    row.flatMap(({ value }, j) => (value === 0 ? [`${columnLetters(j + 1)}${i + 1}`] : [])),
  );

/** What formulas answer, a line a cell that shows something. */
const answers = (reading: Reading, sheet: Sheet): readonly string[] =>
  sheet.blocks
    .filter(({ rows }) =>
      rows.some((row) => row.some((content) => typeof content === "string" && content.startsWith("="))),
    )
    .flatMap((block) => {
      const { top, left } = areaOfBlock(block);
      return reading
        .block(addressOf(areaOfBlock(block)))
        .flatMap((row, i) => row.map((value, j) => `${columnLetters(left + j)}${top + i} ${String(value)}`));
    });

/** Formulas that rightly show nothing in the example, by sheet. */
const quiet: Readonly<Record<string, readonly string[]>> = {
  // One winter plan of four, no meal that came up, and nothing that has to be asked first.
  animals: [
    "atEach.from2[1]",
    "atEach.from3[1]",
    "atEach.from4[1]",
    "list.broughtUp[1]",
    "fed.broughtUp[1]",
    "list.asked[1]",
  ],
  // No meal before the first, and nothing has to be said of its plan.
  feedingLog: ["log.atLeast[1]", "log.unclear[1]"],
  // Words that stand in a row only when something is out of the ordinary, and changes since a weighing before the first.
  weights: ["log.change[1]", "log.share[1]", "log.daily[1]", "log.standsOut[1]"],
  // The example has five animals, and room for three more.
  breedingSeason: ["animals.gravid[1]", "pairings.standsOut[1]", "pairings.earliest[1]"],
  incubation: ["log.standsOut[1]"],
  preyStock: ["eaters.standsOut[1]", "log.sign[1]"],
  // Of the example's limits nothing has to be said.
  yearPlan: ["warning.said"],
  // The town's station has no rain.
  nativeClimate: ["glance.town[6]", "glance.town[7]", "glance.town[8]", "records.townRain[1]"],
};

/** A slip of the keyboard, by sheet: the cell by its name, what is typed, and the cell that must show an error. */
const slips: Readonly<Record<string, readonly [cell: string, typed: string | number, shows: string]>> = {
  animals: ["list.born[2]", "June 2021", "list.age[2]"],
  stationShortlist: ["own.elevation[2]", "1005 m", "ranked.station[1]"],
  nativeClimate: ["place.elevation", "high up", "here.highLeast[1]"],
  yearPlan: ["home.high[7]", "26.5 °C", "weeks.high[1]"],
  coolingPlan: ["plan.cool", "six weeks", "dates.words[1]"],
  feedingLog: ["log.body[2]", "269 grams", "log.share[2]"],
  weights: ["log.mass[4]", "303g", "log.change[4]"],
  breedingSeason: ["animals.mass[1]", "312 g", "animals.check[1]"],
  incubation: ["clutches.held[2]", "warm", "clutches.days[2]"],
  hatchlings: ["log.then[1]", "8,4", "log.gain[1]"],
  preyStock: ["eaters.days[1]", "weekly", "eaters.meals[1]"],
  readings: ["limits.low", "cool", "outside.cold"],
  winterLog: ["log.mass[1]", "306g", "log.lost[1]"],
  aboutThisWorkbook: ["asked1.function[1]", "LAPS", "sources1.said"],
};

/** A change of mind, by sheet: inputs typed anew into a sheet that is already worked out. */
const edits: Readonly<Record<string, Readonly<Record<string, string | number>>>> = {
  animals: { "reminders.today": day("2026-11-20"), "list.fed[2]": day("2026-11-15"), "list.winters[2]": "no" },
  stationShortlist: { "home.bandHigh": 2000, "own.mean[3]": 8.6 },
  nativeClimate: { "place.elevation": 1400, "choices.cold": 5, "stations.name[2]": "08210" },
  yearPlan: { "year.start": day("2026-08-03"), "year.coldSet": 6, "home.high[7]": 21.5 },
  coolingPlan: { "plan.way": "backwards", "plan.when": day("2027-04-05"), "plan.cold": 70, "air.litres": 30 },
  winterLog: { "animal.start": 310, "log.box[5]": 11.5, "log.mass[11]": 295 },
  feedingLog: {
    "who.every[1]": 10,
    "log.outcome[17]": "refused",
    "log.body[19]": 300,
    "log.animal[19]": "Juniper",
    "log.date[19]": day("2027-03-29"),
  },
  weights: {
    "animal.window": 60,
    "log.mass[13]": 296,
    "log.length[13]": 105,
    "log.date[18]": day("2027-03-29"),
    "log.animal[18]": "Juniper",
    "log.mass[18]": 290,
  },
  breedingSeason: {
    "limits.femaleMass": 230,
    "animals.mass[3]": 260,
    "animals.mass[1]": 290,
    "pairings.on[1]": day("2022-05-03"),
  },
  incubation: {
    "own.temperature": 27,
    "clutches.held[2]": 24.5,
    "log.high[16]": 30,
    ...rows("log", 17, [{ on: day("2026-08-08"), high: 26.4, low: 25.6 }]),
  },
  hatchlings: { "looked.lateFrom": 40, "log.now[4]": 9.1, "log.fourth[4]": "yes", "log.then[1]": 11 },
  preyStock: {
    "time.until": day("2027-01-31"),
    "sizes.grams[1]": 2,
    "eaters.winters[2]": "no",
    "log.out[1]": 7,
  },
  readings: { "limits.high": 24.5, "pasted.celsius[1]": 30, "setPoints.warmSet": 22 },
  aboutThisWorkbook: { "asked1.function[1]": "RAMP" },
};

describe.each(sheets.map((sheet) => [sheet.name, sheet] as const))("%s", (_, sheet) => {
  const slip = slips[sheet.key];
  let first: Reading;
  let others: readonly Reading[];
  let empty: Reading;
  let slipped: Reading | undefined;
  beforeAll(async () => {
    const [one, two, three, four, five] = await drawn(
      ...[sheet, sheet, sheet, cleared(sheet), ...(slip ? [typed(sheet, slip[0], slip[1])] : [])],
    );
    if (!one || !two || !three || !four) throw new Error("a sheet was not drawn");
    [first, others, empty, slipped] = [one, [two, three], four, five];
  });

  test("shows its example without an error, and every formula shows something", () => {
    expect(first.errors()).toEqual([]);
    // Where each row spills by itself, the first row of the column speaks for it.
    const spillingRows = new Set(sheet.blocks.flatMap(({ at, spills }) => (spills?.[0] === 1 ? [at] : [])));
    const isFirst = ({ at, spills }: Sheet["blocks"][number]) =>
      spills?.[0] !== 1 || areaOf(at).top === 1 || !spillingRows.has(beside(at, -1, 0));
    const silent = sheet.blocks
      .filter(isFirst)
      .filter(({ rows, at }) => String(rows[0]?.[0] ?? "").startsWith("=") && [null, ""].includes(first.at(at) as null))
      // The line of what is still needed is silent where nothing is.
      .filter(({ rows }) => !String(rows[0]?.[0]).includes("Still needed"))
      .map(({ at }) => at);
    expect(silent.filter((at) => !(quiet[sheet.key] ?? []).some((name) => addressFor(sheet, name) === at))).toEqual([]);
  });

  test("what a formula spills stays inside the area kept free for it", () => {
    for (const block of sheet.blocks.filter(({ spills }) => spills)) {
      const area = areaOfBlock(block);
      const spilled = first.cells.flatMap((row, i) =>
        row.flatMap(({ spilledFrom }, j) =>
          spilledFrom?.row === area.top - 1 && spilledFrom.column === area.left - 1
            ? [{ row: i + 1, column: j + 1 }]
            : [],
        ),
      );
      expect([block.at, spilled.filter(({ row, column }) => row > area.bottom || column > area.right)]).toEqual([
        block.at,
        [],
      ]);
    }
  });

  test("names each cell that is still needed, once cleared, and is silent while the example stands", () => {
    const asks = sheet.blocks.find(({ rows }) => String(rows[0]?.[0]).includes('"Still needed: "&TEXTJOIN'));
    if (!asks) {
      expect(["aboutThisWorkbook", "selfCheck"]).toContain(sheet.key);
      return;
    }
    expect(first.at(asks.at)).toBe("");
    const named = [...String(empty.at(asks.at)).matchAll(/\(([A-Z]+\d+)\)/g)].map(([, at]) => at);
    const blank = sheet.needed
      .map(({ at }) => at.replace(/:.*/, ""))
      .filter((at) => [null, ""].includes(empty.at(at) as null));
    expect([named.length > 0, named]).toEqual([true, blank]);
  });

  test("cleared, shows no error and no 0, and keeps its cautions", () => {
    expect(empty.errors()).toEqual([]);
    expect(zeros(empty)).toEqual([]);
    for (const { at, rows, role } of sheet.blocks) {
      if (role === "caution" || role === "source") expect(empty.at(at)).toBe(rows[0]?.[0]);
    }
    for (const address of clearing(sheet)) {
      expect(
        empty
          .block(address)
          .flat()
          .filter((value) => value !== null && value !== ""),
      ).toEqual([]);
    }
  });

  test("drawn three times in one workbook, gives the same answers each time", () => {
    expect(new Set([first, ...others].map(({ name }) => name)).size).toBe(3);
    for (const other of others) expect(answers(other, sheet)).toEqual(answers(first, sheet));
    expect(answers(first, sheet).length).toBeGreaterThan(0);
  });

  if (slip) {
    test("shows a slip of the keyboard as an error", () => {
      const shows = addressFor(sheet, slip[2]);
      expect(String(first.at(shows))).not.toMatch(/^#/);
      expect(slipped?.at(shows)).toMatch(/^#(VALUE!|N\/A)$/);
    });
  }

  const changes = Object.entries(edits[sheet.key] ?? {});
  if (changes.length > 0)
    test("typed into, and then cleared, is worked out anew", async () => {
      const [wanted] = (await drawn(changes.reduce((made, [cell, value]) => typed(made, cell, value), sheet))) as [
        Reading,
      ];
      const { workbook, close } = openWorkbook();
      try {
        const [name] = (await workbook.insert([sheet])) as [string];
        await workbook.write(changes.map(([cell, value]) => write(name, addressFor(sheet, cell), value)));
        const edited = await readSheet(workbook, name);
        expect(answers(edited, sheet)).toEqual(answers(wanted, sheet));
        expect(answers(edited, sheet)).not.toEqual(answers(first, sheet));
        await workbook.write(clearing(sheet).map((address) => write(name, address, null)));
        const after = await readSheet(workbook, name);
        expect(after.errors()).toEqual([]);
        expect(zeros(after)).toEqual([]);
      } finally {
        close();
      }
    });
});

test("Cooling plan shows every word of a warning at the top, the gravest first", async () => {
  const [plan] = (await drawn(typed(typed(coolingPlan, "plan.clear", 3), "plan.coldSet", 1))) as [Reading];
  const words = String(plan.of("check.said"));
  expect(words).toMatch(/^stop: /);
  const told = plan.column("lines.told");
  const lines = plan
    .column("lines.level")
    .map((level, i) => [level, told[i]])
    .filter(([level]) => level !== null && level !== "");
  expect(lines.length).toBeGreaterThan(1);
  expect(words.split("\n")).toEqual(lines.map(([level, told]) => `${String(level)}: ${String(told)}`));
});

test("every sheet that works something out from inputs has its slip and its change of mind", () =>
  expect(
    sheets
      .filter((sheet) => clearing(sheet).length > 0 && !(slips[sheet.key] && edits[sheet.key]))
      .map(({ key }) => key),
  ).toEqual([]));
