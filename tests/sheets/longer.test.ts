import { serialOfIso } from "../../functions/dates";
import { addRows } from "../../taskpane/actions/addRows";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { areaOf, cellName } from "../../taskpane/actions/place";
import { recognise } from "../../taskpane/actions/template";
import { sheets } from "../../taskpane/sheets/catalogue";
import { cleared } from "../../taskpane/sheets/clear";
import { areaOfLog } from "../../taskpane/sheets/grown";
import { asItStands, growing, longer } from "../../taskpane/sheets/growing";
import { addressOf } from "../../taskpane/sheets/shared/address";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { SheetContents } from "../../taskpane/workbook";
import { changesOf } from "./fill";
import { openWorkbook, readSheet } from "../preview/engine";

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
    const before = await held(name);
    expect(before).toEqual(told(template));
    for (const own of all) {
      const log = areaOfLog(template, own[0]);
      await workbook.show(name, log.top, 0);
      const said = await workbook.asOne(() => addRows.run(workbook, MORE));
      expect(said.text).toContain(`row ${log.bottom + MORE}.`);
      const [after, wanted] = [await held(name), told(longer(template, own, MORE))];
      for (const part of ["formulas", "merges", "rules", "lists"] as const) expect(after[part]).toEqual(wanted[part]);

      // The new rows look like the one above them.
      const sheet = engine.api.getActiveWorkbook()?.getSheetByName(name);
      const looks = (row: number) =>
        Array.from({ length: log.right }, (_, column) => {
          const range = sheet?.getRange(row - 1, column);
          return [range?.getBackground(), range?.getCellStyleData()?.bd ?? null, range?.getNumberFormat()];
        });
      for (let row = log.bottom; row < log.bottom + MORE; row++) expect(looks(row)).toEqual(looks(log.bottom - 1));

      // It is still known for what it is, its pictures over the longer log.
      const [contents] = (await workbook.read([name])) as [SheetContents];
      expect(recognise(contents, sheets)).toMatchObject({ inPlace: true, template: longer(filled, own, MORE) });

      expect(await engine.api.undo()).toBe(true);
      await engine.settle();
      expect(await held(name)).toEqual(before);
    }
    await workbook.remove([name]);
  },
  60_000,
);

test("meals in rows that were added to the Feeding log reach Today, which reads it row by row", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const [feeding, today] = [templateOf("feedingLog"), templateOf("animals")];
    const { names } = await insertLinked(workbook, [cleared(feeding), today]);
    const [log, day] = names as [string, string];
    const { top, bottom } = areaOfLog(feeding, "log");
    // The example's own animals stay; its meals are now those of the empty log.
    await workbook.show(log, top, 0);
    const said = await workbook.asOne(() => addRows.run(workbook, MORE));
    expect(said.text).toContain(`"${day}" reads them too.`);
    expect(said.left).toEqual([]);
    expect(await workbook.selection()).toMatchObject({ sheet: log, row: top });
    // In the first of the new rows, between two that are read, and in the last.
    for (const [row, date] of [
      [bottom, "2026-11-15"],
      [bottom + MORE, "2026-11-16"],
    ] as const) {
      const place = { sheet: log, row: row - 1 };
      const column = (name: string): number => areaOf(feeding.places[`log.${name}`] as string)?.column ?? -1;
      await workbook.write([
        { ...place, column: column("date"), cells: [[serialOfIso(date) as number]] },
        { ...place, column: column("animal"), cells: [[row === bottom ? "Juniper" : "Rowan"]] },
        { ...place, column: column("outcome"), cells: [["taken"]] },
      ]);
    }
    await workbook.write(changesOf(day, today, { "reminders.today": "2026-11-20" }));
    const reading = await readSheet(workbook, day, longer(today, ["fed"], MORE));
    expect(reading.errors()).toEqual([]);
    expect(reading.of("list.ate[1]")).toBe("2026-11-15");
    expect(reading.of("list.ate[2]")).toBe("2026-11-16");
    expect(reading.of("list.toDo[1]")).toMatch(/It was fed inside the fast, on 2026-11-15: call your vet/);

    // A protected sheet is told, with what to do.
    await workbook.show(log, top, 0);
    const read = workbook.read.bind(workbook);
    jest
      .spyOn(workbook, "read")
      .mockImplementation(async (wanted) =>
        (await read(wanted)).map((one) => (one.name === day ? { ...one, locked: true } : one)),
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

test("a sheet without a log, one whose cells were moved, and rows that are no number are told", async () => {
  const [plan = "", log = ""] = [
    ...(await workbook.insert([cleared(sheets.find(({ key }) => key === "aboutThisWorkbook") as Sheet)])),
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

describe("a longer sheet", () => {
  test.each(logs)(
    "%s: nothing beside its %s is cut by the new rows, in either system, and twice is once",
    (key, log, own) => {
      for (const system of ["metric", "imperial"] as const) {
        const sheet = inSystem(templateOf(key), system);
        expect(longer(longer(sheet, own, 2), own, 3)).toEqual(longer(sheet, own, 5));
        const { bottom } = areaOfLog(sheet, log);
        const texts = longer(sheet, own, 4)
          .blocks.flatMap(({ rows }) => rows.flat())
          .filter((one) => typeof one === "string");
        expect(texts.length).toBeGreaterThan(
          sheet.blocks.flatMap(({ rows }) => rows.flat()).filter((one) => typeof one === "string").length - 1,
        );
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
