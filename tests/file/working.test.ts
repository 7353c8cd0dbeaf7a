import { readXlsx } from "../../addin/file/read";
import { writeXlsx } from "../../addin/file/write";
import { withChanges } from "../../addin/file/instead";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction, onOtherSheets, sheetReferences } from "../../taskpane/actions/formulas";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy, workingFile } from "../../taskpane/actions/workingCopy";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { incubation } from "../../taskpane/sheets/incubation";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { weights } from "../../taskpane/sheets/weights";
import type { CellState, Change, SheetContents, Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";
import { changesOf } from "../sheets/fill";
import { differences } from "./differences";
import { LibreOffice } from "./libreOffice";

jest.setTimeout(240_000);

const templates = [coolingPlan, weights, incubation];

/** Three inputs, and what a keeper turns them to. */
const turned = (names: readonly string[]) => [
  ...changesOf(names[0] as string, coolingPlan, { "plan.cold": 91 }),
  ...changesOf(names[1] as string, weights, { "log.mass[1]": 161 }),
  ...changesOf(names[2] as string, incubation, { "clutches.held[1]": 28 }),
];

const fileOf = async (workbook: Workbook, names: readonly string[]) => {
  let bytes = new Uint8Array();
  const save = (file: { readonly bytes: Uint8Array | string }): void => {
    if (typeof file.bytes !== "string") bytes = new Uint8Array(file.bytes);
  };
  const { left = [] } = await workingFile.run(workbook, { names, save });
  return { bytes, left };
};

/** The cells that stay as figures, by "sheet!B5", with those that their answers fill. */
const isDead =
  ({ name, cells }: SheetContents, left: readonly string[]) =>
  (row: number, column: number): boolean => {
    const { spilledFrom } = cells[row]?.[column] ?? {};
    const at = spilledFrom ?? { row, column };
    const cell = `${String.fromCharCode(65 + at.column)}${at.row + 1}`;
    return left.some((line) => line.startsWith(`${name}!${cell} `) || line.startsWith(`'${name}'!${cell} `));
  };

test("a working copy goes on calculating in LibreOffice as the add-in does, after three inputs have changed", async () => {
  const { workbook, close } = openWorkbook();
  const office = new LibreOffice();
  try {
    const names = await workbook.insert(templates);
    const { bytes, left } = await fileOf(workbook, names);
    const { sheets } = await readXlsx(bytes);
    expect(sheets.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => hasFunction(formula ?? ""))).toEqual([]);
    const typed = turned(names);
    const given = await writeXlsx(withChanges(sheets, typed));
    const { sheets: opened } = await readXlsx(await office.convert(given, "xlsx", "xlsx"));
    const before = await workbook.read(names);
    await workbook.write(typed);
    const after = await workbook.read(names);
    let moved = 0;
    for (const sheet of after) {
      const other = opened.find(({ name }) => name === sheet.name);
      const old = before.find(({ name }) => name === sheet.name);
      if (!other || !old) throw new Error(`no sheet ${sheet.name}`);
      const dead = isDead(sheet, left);
      const alive = sheet.cells.map((line, row) =>
        line.map((cell, column): CellState => {
          if (!dead(row, column)) return cell;
          return { value: other.cells[row]?.[column]?.value ?? null };
        }),
      );
      expect(differences(alive, other)).toEqual([]);
      moved += differences(old.cells, other).length;
    }
    // What was changed moves what follows from it.
    expect(moved).toBeGreaterThan(20);
  } finally {
    office.close();
    close();
  }
});

const contentsOf = (sheets: readonly SheetContents[]) =>
  sheets.map(({ name, cells }) => [name, cells.map((line) => line.map(({ value, formula }) => [value, formula]))]);

test("frozen, copied, thawed, saved and opened again, the keeper's own sheets are as they were", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const names = await workbook.insert(templates);
    // One that follows another of the sheets.
    const { row, column, sheet } = changesOf(names[1] as string, weights, { "log.mass[3]": 0 })[0] as Change;
    const formula = `=VIV.MASSLOSS(200,'${names[0]}'!${cellOf(coolingPlan, "plan.cold")}+100)`;
    await workbook.write([{ sheet, row, column, cells: [[{ formula }]] }]);
    const before = contentsOf(await workbook.read(names));
    const { left = [] } = await workingCopy.run(workbook, names);
    const worked = "Worked formulas";
    const copies = (await workbook.sheetNames()).slice(-names.length - 1, -1);
    expect(await workbook.sheetNames()).toContain(worked);
    expect(copies).toHaveLength(names.length);
    expect(contentsOf(await workbook.read(names))).toEqual(before);
    const others = new Map(names.map((name, i) => [name.toLowerCase(), copies[i] as string]));
    const followed = (await workbook.read(copies.slice(1, 2))).flatMap(
      ({ cells }) => cells[row]?.[column]?.formula ?? [],
    );
    expect(followed).toHaveLength(1);
    expect(sheetReferences(followed[0] as string)[0]?.sheet).toBe(copies[0]);
    // The copies show what the sheets show, with no function of ours.
    const [own, other] = [await workbook.read(names), await workbook.read(copies)];
    expect(other.map(({ cells }) => cells.flat().filter(({ formula }) => hasFunction(formula ?? "")).length)).toEqual(
      copies.map(() => 0),
    );
    own.forEach((sheet, i) => {
      const copy = other[i]?.cells ?? [];
      expect(differences(sheet.cells, { cells: copy } as never)).toEqual([]);
    });
    expect(left.length).toBeGreaterThan(0);
    // A member who has the add-in turns the copies back into VIV formulas.
    await thaw.run(workbook, copies);
    const thawed = await workbook.read(copies);
    const formulas = (sheets: readonly SheetContents[]) =>
      sheets.map(({ cells }) => cells.map((line) => line.map(({ formula }) => formula)));
    const asCopies = formulas(own).map((rows) =>
      rows.map((line) => line.map((one) => one && onOtherSheets(one, others))),
    );
    expect(formulas(thawed)).toEqual(asCopies);
    expect(await workbook.sheetNames()).not.toContain(worked);
    await freeze.run(workbook, copies);
    await thaw.run(workbook, copies);
    expect(formulas(await workbook.read(copies))).toEqual(asCopies);
    expect(contentsOf(await workbook.read(names))).toEqual(before);

    const bytes = await (workbook.save as NonNullable<Workbook["save"]>)();
    const again = openWorkbook();
    try {
      await (again.workbook.open as NonNullable<Workbook["open"]>)("again.xlsx", bytes);
      expect(formulas(await again.workbook.read(names))).toEqual(formulas(own));
    } finally {
      again.close();
    }
  } finally {
    close();
  }
});
