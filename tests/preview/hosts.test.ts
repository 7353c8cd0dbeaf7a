import { excelWorkbook } from "../../addin/excel/workbook";
import { asText } from "../../addin/excel/entry";
import { readXlsx } from "../../addin/file/read";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction, onOtherSheets } from "../../taskpane/actions/formulas";
import { insertSheet } from "../../taskpane/actions/insertSheet";
import { linkLines } from "../../taskpane/actions/linkSheets";
import { saveFile } from "../../taskpane/actions/saveFile";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy } from "../../taskpane/actions/workingCopy";
import { sheets as templates } from "../../taskpane/sheets/catalogue";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { winterLog } from "../../taskpane/sheets/winterLog";
import type { SheetContents, Workbook } from "../../taskpane/workbook";
import { FakeExcel } from "../excel/fake";
import { changesOf } from "../sheets/fill";
import { openWorkbook } from "./engine";
import { formatsOf, held, shownIn } from "./hosts";
import { SameAnswers } from "./hostsAnswers";
import { playPlain } from "./hostsPlain";
import { playSheets, type Size } from "./hostsSheets";

/** A few at each run of the suite, always the same, on sheets that are quickly drawn; `npm run stories` plays others. */
const { STORIES, SHEET_STORIES, SEED = "5" } = process.env;
const [count, ofSheets, seed] = [Number(STORIES ?? 8), Number(SHEET_STORIES ?? 2), Number(SEED)];
/** Sheets that take as long as all others, or follow none. */
const LONG = ["readings", "selfCheck", "stationShortlist"];
const size: Size =
  SHEET_STORIES === undefined
    ? { keys: ["coolingPlan", "winterLog", "aboutThisWorkbook"], most: 5, tall: [6] }
    : {
        keys: templates.map(({ key }) => key).filter((key) => !LONG.includes(key)),
        most: 7,
        tall: [4, 12, 60, 60, 1_000],
      };

jest.setTimeout(Math.max(count, 1) * 60_000);
/** A story of many sheets takes seconds, and one that has failed is played again and again to make it shorter. */
const SECONDS = 120;

test(`${count} stories of seed ${seed}: the preview, Excel and their files hold the same`, () =>
  playPlain(count, seed));

test(
  `${ofSheets} stories of seed ${seed} with the sheets of the pane: linked, grown, copied, frozen, undone, filed, they are the same everywhere`,
  () => playSheets(ofSheets, seed, size, ofSheets * SECONDS),
  (ofSheets + 1) * SECONDS * 1000,
);

const functionsIn = (sheets: readonly Pick<SheetContents, "cells">[]): number =>
  sheets.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => hasFunction(formula ?? "")).length;
const contentsOf = (sheets: readonly SheetContents[]) =>
  sheets.map(({ name, cells }) => [name, held(cells), formatsOf(cells)]);
const without = (sheets: readonly SheetContents[], names: readonly string[]) =>
  sheets.filter(({ name }) => !names.includes(name));

/** A file in an Excel that has the figures that are kept in it, and no function of ours. */
const openedInExcel = async (bytes: Uint8Array): Promise<FakeExcel> => {
  const { sheets } = await readXlsx(bytes);
  const excel = new FakeExcel((formula, { sheet, row, column }) => {
    if (hasFunction(formula)) return [["#NAME?"]];
    const value = sheets.find(({ name }) => name === sheet)?.cells[row]?.[column]?.value;
    return [[typeof value === "object" && value !== null ? value.error : (value ?? "")]];
  });
  excel.tabs = sheets.map(({ name }) => excel.newTab(name));
  for (const { name, cells } of sheets)
    cells.forEach((line, row) =>
      line.forEach(({ formula, value, format }, column) => {
        if (typeof value === "object" && value !== null && formula === undefined) throw new Error("a bare error");
        const entry = formula ?? (typeof value === "string" ? asText(value) : value);
        if (entry !== null) excel.enter(excel.tab(name), row, column, entry);
        if (format !== undefined) excel.cell(excel.tab(name), row, column).format = format;
      }),
    );
  return excel;
};

test("linked, filled, copied for the club, saved, opened without the add-in, turned back, frozen and thawed: in Excel nothing is lost", async () => {
  const { workbook, close } = openWorkbook();
  const answers = new SameAnswers();
  const excel = new FakeExcel(answers.answer);
  Object.assign(globalThis, excel.globals());
  try {
    const ours = answers.asked(workbook);
    const office = answers.answering(excelWorkbook, excel);
    /** Done in the preview, which works it out, and in Excel. */
    const inBoth = async <T>(does: (host: Workbook) => Promise<T>): Promise<T> => {
      await does(ours);
      return does(office);
    };
    const [empty = ""] = await excelWorkbook.sheetNames();
    await inBoth((host) => insertSheet.run(host, [coolingPlan, winterLog]));
    const names = [coolingPlan.name, winterLog.name];
    const typed = [
      ...changesOf(coolingPlan.name, coolingPlan, { "plan.cold": 70, "plan.coldSet": 8.5, "air.litres": 30 }),
      ...changesOf(winterLog.name, winterLog, { "log.mass[1]": 311.5, "log.opened[1]": "no" }),
    ];
    await inBoth((host) => host.write(typed));
    const readAll = () => inBoth((host) => host.read(names));
    const before = await readAll();
    const linesBefore = await inBoth((host) => linkLines(host));
    expect(linesBefore.lines.filter(({ standing }) => standing === "linked").length).toBeGreaterThan(3);
    expect(functionsIn(before)).toBeGreaterThan(20);

    await inBoth((host) => workingCopy.run(host, names));
    expect(contentsOf(await readAll())).toEqual(contentsOf(before));
    const added = (await excelWorkbook.sheetNames()).filter((name) => name !== empty && !names.includes(name));
    const [plan = "", log = "", worked = ""] = added;
    expect(added).toEqual([`${coolingPlan.name} (2)`, `${winterLog.name} (2)`, worked]);
    const copies = await inBoth((host) => host.read([plan, log]));
    expect(functionsIn(copies)).toBe(0);
    // They show what the sheets show.
    expect(copies.map(({ cells }) => shownIn(cells))).toEqual(before.map(({ cells }) => shownIn(cells)));

    let bytes = new Uint8Array();
    await inBoth((host) =>
      saveFile.run(host, {
        names: added,
        save: (file) => {
          if (typeof file.bytes !== "string") bytes = new Uint8Array(file.bytes);
        },
      }),
    );
    const club = await openedInExcel(bytes);
    Object.assign(globalThis, club.globals());
    const received = await excelWorkbook.read();
    expect(received.map(({ name }) => name)).toEqual(added);
    expect(functionsIn(received)).toBe(0);
    expect(without(received, [worked]).map(({ cells }) => shownIn(cells))).toEqual(
      copies.map(({ cells }) => shownIn(cells)),
    );
    expect(contentsOf(without(received, [worked]))).toEqual(contentsOf(copies));

    // A member who has the add-in turns them back.
    const others = new Map(names.map((name, i) => [name.toLowerCase(), added[i] as string]));
    const { left } = await thaw.run(excelWorkbook, undefined);
    expect(left).toEqual([]);
    const turned = (await excelWorkbook.read()).map(({ cells }) => held(cells));
    expect(turned).toEqual(
      before.map(({ cells }) =>
        Object.fromEntries(
          Object.entries(held(cells)).map(([at, content]) => [
            at,
            typeof content === "string" && content.startsWith("=") ? onOtherSheets(content, others) : content,
          ]),
        ),
      ),
    );

    // The keeper's own workbook, frozen and thawed.
    Object.assign(globalThis, excel.globals());
    await inBoth((host) => freeze.run(host, names));
    expect(functionsIn(await readAll())).toBe(0);
    await inBoth((host) => thaw.run(host, names));
    expect(contentsOf(await readAll())).toEqual(contentsOf(before));
    expect(await inBoth((host) => linkLines(host))).toEqual(linesBefore);
  } finally {
    close();
  }
});
