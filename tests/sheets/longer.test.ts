import { addRows } from "../../taskpane/actions/addRows";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { areaOf, cellName } from "../../taskpane/actions/place";
import { isEqual, linkedCells, tabsOf } from "../../taskpane/actions/links";
import { recognise } from "../../taskpane/actions/template";
import { sheets } from "../../taskpane/sheets/catalogue";
import { cleared } from "../../taskpane/sheets/clear";
import { areaOfLog, formulaMoved } from "../../taskpane/sheets/grown";
import { asItStands, growing, longer, type GrowingLog } from "../../taskpane/sheets/growing";
import { addressOf, areaOf as cornersOf, inside } from "../../taskpane/sheets/shared/address";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { SheetContents } from "../../taskpane/workbook";
import { changesOf, freeRow, rows, type Typed } from "./fill";
import { openWorkbook, Reading } from "../preview/engine";

const MORE = 5;
const templateOf = (key: string): Sheet => sheets.find((sheet) => sheet.key === key) as Sheet;
const logs = Object.entries(growing).flatMap(([key, all]) => all.map((own) => [key, own[0], own] as const));

const { engine, workbook, close } = openWorkbook();
afterAll(close);

interface Ranged {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}
const areaText = ({ startRow, endRow, startColumn, endColumn }: Ranged): string =>
  addressOf({ top: startRow + 1, left: startColumn + 1, bottom: endRow + 1, right: endColumn + 1 });
const bare = (formula: string): string => formula.replace(/^=|[\s$]/g, "");

/** What a log brings with it, as the preview holds it: formulas and settings, merged cells, lists, colour rules. */
const held = async (name: string) => {
  const [contents] = await workbook.read([name]);
  const sheet = engine.api.getActiveWorkbook()?.getSheetByName(name);
  if (!contents || !sheet) throw new Error(`no ${name}`);
  return {
    formulas: contents.cells.flatMap((row, i) =>
      row.flatMap(({ formula }, j) => (formula === undefined ? [] : [`${cellName(i, j)} ${bare(formula)}`])),
    ),
    merges: sheet
      .getMergeData()
      .map((one) => one.getA1Notation())
      .sort(),
    rules: sheet
      .getConditionalFormattingRules()
      .map(({ ranges, rule }) => `${ranges.map(areaText).join()} ${"value" in rule ? bare(String(rule.value)) : ""}`)
      .sort(),
    lists: [
      ...new Set(
        sheet
          .getDataValidations()
          .flatMap((one) => (one.rule as { readonly ranges: readonly Ranged[] }).ranges.map(areaText)),
      ),
    ].sort(),
  };
};

/** The same of a template. */
const told = ({ blocks, merges, rules, validation }: Sheet): Awaited<ReturnType<typeof held>> => ({
  formulas: blocks
    .flatMap(({ at, rows }) => {
      const { row, column } = areaOf(at) ?? { row: 0, column: 0 };
      return rows.flatMap((line, i) =>
        line.flatMap((content, j) =>
          typeof content === "string" && content.startsWith("=") ? [{ row: row + i, column: column + j, content }] : [],
        ),
      );
    })
    .sort((one, other) => one.row - other.row || one.column - other.column)
    .map(({ row, column, content }) => `${cellName(row, column)} ${bare(content)}`),
  merges: [...merges].sort(),
  rules: rules.map(({ range, when }) => `${range} ${bare(when)}`).sort(),
  lists: [...new Set(validation.map(({ range }) => range))].sort(),
});

test.each(Object.entries(growing))(
  "%s: rows added to a log are as if it had been drawn so long",
  async (key, all) => {
    const filled = templateOf(key);
    // One keeps its example, and so its entries; the others are as keepers begin.
    const template = key === "weights" ? filled : cleared(filled);
    const [name = ""] = await workbook.insert([template]);
    expect(await held(name)).toEqual(told(template));
    let long = template;
    for (const own of all) {
      const before = long;
      const log = areaOfLog(before, own[0]);
      long = longer(before, own, MORE);
      // The line under it says: select this cell.
      await workbook.show(name, log.bottom, log.left - 1);
      const said = await workbook.asOne(() => addRows.run(workbook, MORE));
      expect(said.text).toContain(`row ${log.bottom + MORE}.`);
      expect(await workbook.selection()).toMatchObject({ row: log.bottom + MORE, column: log.left - 1 });
      const [after, wanted] = [await held(name), told(long)];
      for (const part of ["formulas", "merges", "rules", "lists"] as const) expect(after[part]).toEqual(wanted[part]);

      // The new rows look like the one above them.
      const sheet = engine.api.getActiveWorkbook()?.getSheetByName(name);
      const looks = (row: number) =>
        Array.from({ length: log.right }, (_, column) => {
          const range = sheet?.getRange(row - 1, column);
          return [range?.getBackground(), range?.getCellStyleData()?.bd ?? null, range?.getNumberFormat()];
        });
      for (let row = log.bottom; row < log.bottom + MORE; row++) expect(looks(row)).toEqual(looks(log.bottom - 1));

      if (own !== all.at(-1)) continue;
      // It is still known for what it is, its pictures over the longer log.
      const [contents] = (await workbook.read([name])) as [SheetContents];
      const known = all.reduce((sheet, one) => longer(sheet, one, MORE), filled);
      expect(recognise(contents, sheets)).toMatchObject({ inPlace: true, template: known });

      expect(await engine.api.undo()).toBe(true);
      await engine.settle();
      expect(await held(name)).toEqual(told(before));
    }
    await workbook.remove([name]);
  },
  60_000,
);

/** Sheets that name one another's animals, and where an animal that is new to all of them is written. */
const KNOWN = [
  ["animals", "list"],
  ["feedingLog", "who"],
  ["weights", "side"],
  ["breedingSeason", "animals"],
  ["preyStock", "eaters"],
] as const;

test("an animal and a meal in rows that were added are known on every sheet, in ounces and feet as well", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const before = KNOWN.map(([key]) => inSystem(templateOf(key), "imperial"));
    const { names } = await insertLinked(workbook, before);
    for (const [i, [, log]] of KNOWN.entries()) {
      const { top, left } = areaOfLog(before[i] as Sheet, log);
      await workbook.show(names[i] as string, top - 1, left - 1);
      await workbook.asOne(() => addRows.run(workbook, 2));
    }
    const [today, feeding] = names as [string, string];
    const ownOf = (key: string, log: string): GrowingLog => growing[key]?.find(([one]) => one === log) as GrowingLog;
    const drawn = before.map((sheet, i) => longer(sheet, ownOf(sheet.key, KNOWN[i]?.[1] ?? ""), 2));
    // The log of meals, which Today repeats row by row.
    const { top, bottom } = areaOfLog(drawn[1] as Sheet, "log");
    await workbook.show(feeding, top, 0);
    const said = await workbook.asOne(() => addRows.run(workbook, MORE));
    expect(said).toMatchObject({ text: expect.stringContaining(`"${today}" reads them too.`) as unknown, left: [] });
    expect(await workbook.selection()).toMatchObject({ sheet: feeding, row: top });
    drawn[0] = longer(drawn[0] as Sheet, ownOf("animals", "fed"), MORE);
    drawn[1] = longer(drawn[1] as Sheet, ownOf("feedingLog", "log"), MORE);
    const [meal, last] = [bottom - top + 1, bottom - top + 1 + MORE];
    /** A cell of the first new row, which stands where the last one did. */
    const at = (key: string, column: string): string => {
      const i = KNOWN.findIndex(([one]) => one === key);
      const [, log] = KNOWN[i] as (typeof KNOWN)[number];
      const { top, bottom } = areaOfLog(before[i] as Sheet, log);
      return `${log}.${column}[${bottom - top + 1}]`;
    };
    const facts = { born: "2020-06-01", sex: "female", mass: 333, length: 99, winters: "no" };
    const pairing = freeRow(templateOf("breedingSeason"), "pairings");
    const typed: Readonly<Record<string, Typed>> = {
      animals: {
        ...Object.fromEntries(Object.entries(facts).map(([column, fact]) => [at("animals", column), fact])),
        "reminders.today": "2026-11-20",
      },
      feedingLog: {
        ...rows("log", meal, [{ date: "2026-09-19", animal: "Bramble", outcome: "taken", body: 340 }]),
        ...rows("log", last, [{ date: "2026-11-16", animal: "Juniper", outcome: "taken" }]),
      },
      breedingSeason: rows("pairings", pairing, [
        { female: "Bramble", male: "Rowan", on: "2026-09-18", seen: "mated" },
      ]),
    };
    await workbook.write(
      KNOWN.flatMap(([key], i) => {
        const name = at(key, key === "preyStock" ? "who" : "label");
        return changesOf(names[i] as string, drawn[i] as Sheet, { [name]: "Bramble", ...typed[key] });
      }),
    );
    const contents = await workbook.read(names);
    const shown = (key: string, ...columns: readonly string[]): readonly unknown[] => {
      const i = KNOWN.findIndex(([one]) => one === key);
      const reading = new Reading(names[i] as string, contents[i]?.cells ?? [], drawn[i]?.places);
      expect(reading.errors()).toEqual([]);
      return columns.map((column) => reading.of(column.includes(".") ? column : at(key, column)));
    };
    expect(shown("animals", "ate", "weighedLast", "gravid", "every")).toEqual(["2026-09-19", "2026-09-19", "yes", 7]);
    expect(shown("animals", "list.ate[1]", "list.toDo[1]")).toEqual([
      "2026-11-16",
      expect.stringMatching(/Fed in the fast, on 2026-11-16: call your vet/),
    ]);
    expect(shown("feedingLog", "every", "winters", `log.next[${meal}]`)).toEqual([7, "no", "2026-09-26"]);
    expect(shown("weights", "mass", "length", "beside")).toEqual([333, 99, expect.stringMatching(/\w/)]);
    expect(shown("breedingSeason", "sex", "born", "mass", "check")).toEqual([
      "female",
      "2020-06-01",
      333,
      expect.stringMatching(/^(note|care)/),
    ]);
    // Her row at the foot was added with hers in the list.
    const row = /\[\d+\]/.exec(at("breedingSeason", "label"))?.[0] ?? "";
    expect(shown("breedingSeason", `lines.label${row}`)).toEqual(["Bramble"]);
    expect(shown("preyStock", "body", "days", "winters")).toEqual([333, 7, "no"]);
    // All of it follows, as what was inserted did; one of the example's eaters is on no other sheet.
    const { tabs } = tabsOf(contents);
    expect(tabs).toHaveLength(KNOWN.length);
    const apart = linkedCells(tabs, tabs).filter(({ there }) => there !== undefined);
    expect(apart.filter((cell) => !cell.isLinked || !isEqual(cell)).map(({ words }) => words)).toEqual([]);

    // A protected sheet is told, with what to do.
    await workbook.show(feeding, top, 0);
    const read = workbook.read.bind(workbook);
    jest
      .spyOn(workbook, "read")
      .mockImplementation(async (wanted) =>
        (await read(wanted)).map((one) => (one.name === today ? { ...one, locked: true } : one)),
      );
    const { left } = await workbook.asOne(() => addRows.run(workbook, MORE));
    expect(left).toEqual([
      expect.stringMatching(
        /^"Today" does not read the new rows of "Feeding log": add 5 rows to its log too.* protected\./,
      ),
    ]);
  } finally {
    close();
  }
}, 120_000);

const refused = async (count: number, words: RegExp): Promise<void> => {
  const { possible, text } = await addRows.describe(workbook, count);
  expect(possible).toBe(false);
  expect(text).toMatch(words);
};

test("rows that are put in move what a formula names on its own sheet, and nothing of another", () =>
  expect(formulaMoved("=SUM(A5:B9)+A$9+Today!$A$5:$A$9+'My log'!A9&\"A9\"", 6, 2)).toBe(
    "=SUM(A5:B11)+A$11+Today!$A$5:$A$9+'My log'!A9&\"A9\"",
  ));

test("a sheet without a log, one whose cells were moved, and rows that are no number are told", async () => {
  const [plan = "", log = ""] = [
    ...(await workbook.insert([cleared(sheets.find(({ key }) => key === "coolingPlan") as Sheet)])),
    ...(await workbook.insert([cleared(sheets.find(({ key }) => key === "weights") as Sheet)])),
  ];
  await workbook.show(plan);
  await refused(5, /has no log/);
  await workbook.show(log);
  for (const count of [0, 2.5, 501, NaN]) {
    await refused(count, /whole number of rows/);
  }
  const { top } = areaOfLog(sheets.find(({ key }) => key === "weights") as Sheet, "log");
  await workbook.write([{ sheet: log, row: top - 2, column: 0, cells: [["mine"]] }]);
  await refused(5, /have been moved/);
}, 60_000);

/** Lists that a keeper fills and that are as long as what they list. */
const WHOLE: Readonly<Record<string, string>> = {
  "nativeClimate.stations": "two stations are drawn beside the estimate",
  "nativeClimate.own": "twelve months",
  "yearPlan.home": "twelve months",
  "coolingPlan.checks": "only marks are put before the sheet's own words",
  "breedingSeason.checks": "only marks are put before the sheet's own words",
  "readings.pasted": "room for a winter of quarter hours; what to do with more stands on its title",
};

test("every list that a keeper fills can be made longer, and says so under its last row", () => {
  const filledIn = sheets.flatMap(({ key, places, blocks }) =>
    Object.entries(places).flatMap(([name, at]) => {
      const area = cornersOf(at);
      const isFilled = blocks.some(({ role, at: first }) => role === "input" && inside(cornersOf(first), area));
      return isFilled && area.bottom > area.top ? [`${key}.${name.split(".")[0]}`] : [];
    }),
  );
  const grows = Object.entries(growing).flatMap(([key, all]) => all.map(([log]) => `${key}.${log}`));
  expect([...grows, ...Object.keys(WHOLE)].sort()).toEqual([...new Set(filledIn)].sort());
  const hints = sheets.flatMap(({ key, blocks }) =>
    blocks.filter(({ role }) => role === "hint").map(({ at }) => `${key} ${at}`),
  );
  const below = Object.entries(growing).flatMap(([key, all]) =>
    all.map(([log]) => {
      const { left, bottom } = areaOfLog(templateOf(key), log);
      return `${key} ${addressOf({ top: bottom + 1, left, bottom: bottom + 1, right: left })}`;
    }),
  );
  expect(hints.sort()).toEqual(below.sort());
  expect(JSON.stringify(templateOf("readings").notes)).toMatch(/Rows below that are not read: begin another sheet/);
});

describe("a longer sheet", () => {
  test.each(logs)(
    "%s: nothing beside its %s is cut by the new rows, in either system, and twice is once",
    (key, log, own) => {
      for (const system of ["metric", "imperial"] as const) {
        const sheet = inSystem(templateOf(key), system);
        expect(longer(longer(sheet, own, 2), own, 3)).toEqual(longer(sheet, own, 5));
        const { bottom } = areaOfLog(sheet, log);
        // What belongs to the sheet stands there once, as before; in the lines of a form too.
        const words = ({ blocks }: Sheet) =>
          blocks
            .filter(({ role }) => !["input", "setting", "computed"].includes(role))
            .map(({ role, rows }) => [role, rows]);
        const unmoved = (all: unknown): unknown =>
          JSON.parse(JSON.stringify(all).replace(/\$?[A-Z]{1,2}\$?\d+/g, "cell"));
        expect(unmoved(words(longer(sheet, own, 4)))).toEqual(unmoved(words(sheet)));
        expect(
          Object.values(longer(sheet, own, 4).places).filter((at) =>
            at.endsWith(`:${at.replace(/.*:([A-Z]+).*/, "$1")}${bottom + 4}`),
          ).length,
        ).toBeGreaterThan(0);
      }
    },
  );

  test.each(Object.entries(growing).filter(([, all]) => all.length > 1))(
    "%s: it is known with each of its logs longer by rows of its own",
    (key, all) => {
      const template = templateOf(key);
      const grown = all.reduce((one, own, i) => longer(one, own, 2 + i), template);
      const words = new Map(
        grown.blocks.flatMap(({ at, rows }) => {
          const { row, column } = areaOf(at) ?? { row: 0, column: 0 };
          return rows.flatMap((line, i) => line.map((content, j) => [cellName(row + i, column + j), content] as const));
        }),
      );
      expect(asItStands(template, (row, column) => words.get(cellName(row, column)), 500)).toEqual(grown);
    },
  );
});
