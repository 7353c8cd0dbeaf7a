import { Workbook } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import type { FileSheet } from "../../addin/file/book";
import { readXlsx } from "../../addin/file/read";
import { sheets } from "../../taskpane/sheets/catalogue";
import { printOf } from "../../taskpane/sheets/print";
import { plainSeries } from "../../taskpane/pictures/plainSeries";
import type { SheetContents } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";
import { differences, isBlank } from "./differences";
import { LibreOffice } from "./libreOffice";

jest.setTimeout(240_000);

/** Every templated sheet, in one file, as LibreOffice opens it, works it out anew and saves it again. */
let before: readonly SheetContents[];
let written: readonly FileSheet[];
let opened: readonly FileSheet[];
/** How many charts stand on each sheet of the file that LibreOffice saved. */
let charts: ReadonlyMap<string, number>;
beforeAll(async () => {
  const { workbook, close } = openWorkbook();
  const office = new LibreOffice();
  try {
    const names = await workbook.insert(sheets);
    before = await workbook.read(names);
    const bytes = await workbook.toFile(names);
    written = (await readXlsx(bytes)).sheets;
    const saved = await office.convert(bytes, "xlsx", "xlsx");
    opened = (await readXlsx(saved)).sheets;
    installChartSupport();
    const book = new Workbook();
    await book.xlsx.load(saved);
    charts = new Map(book.worksheets.map((sheet) => [sheet.name, sheet.getCharts().length]));
  } finally {
    office.close();
    close();
  }
});

const named = <T extends { readonly name: string }>(list: readonly T[], name: string): T => {
  const found = list.find((one) => one.name === name);
  if (!found) throw new Error(`no sheet ${name}`);
  return found;
};
describe.each(sheets.map((sheet) => [sheet.name, sheet] as const))("%s in LibreOffice", (name, sheet) => {
  test("shows the same values", () => {
    const { cells } = named(before, name);
    expect(cells.flat().filter(({ value }) => !isBlank(value)).length).toBeGreaterThan(20);
    expect(differences(cells, named(opened, name))).toEqual([]);
  });

  test("is printed as wide as the paper, with its titles on each page and the caution at its foot", () => {
    const { area, portrait, titleRows, footer } = printOf(sheet);
    for (const { page } of [named(written, name), named(opened, name)]) {
      expect(page?.setup).toMatchObject({
        orientation: portrait ? "portrait" : "landscape",
        fitToWidth: 1,
        fitToHeight: 0,
        printTitlesRow: `1:${titleRows}`,
      });
      const printed = page?.setup.printArea as string | undefined;
      // LibreOffice writes whole columns with their rows.
      expect(printed?.replace(/\d+/g, "")).toBe(area);
      expect(page?.headerFooter?.oddFooter).toContain(footer.centre);
      expect(page?.headerFooter?.oddFooter).toContain("&A");
    }
  });

  test("has no VIV formula, and its native ones are alive", () => {
    const formulas = named(opened, name)
      .cells.flat()
      .flatMap(({ formula }) => formula ?? []);
    expect(formulas.filter((formula) => /VIV/i.test(formula))).toEqual([]);
    const kept = named(written, name)
      .cells.flat()
      .filter(({ formula }) => formula !== undefined);
    expect(formulas).toHaveLength(kept.length);
  });

  test("shows dates as dates", () => {
    const dates = named(before, name).cells.flatMap((line, row) =>
      line.flatMap(({ value, format }, column) =>
        typeof value === "number" && format?.startsWith("yyyy-mm-dd") ? [[row, column] as const] : [],
      ),
    );
    const other = named(opened, name);
    expect(dates.filter(([row, column]) => !/^yyyy-mm-dd/i.test(other.cells[row]?.[column]?.format ?? ""))).toEqual([]);
  });

  test("keeps widths, merges, what stays in view, notes, colours and what inputs take", () => {
    const other = named(opened, name);
    sheet.widths.forEach((width, i) => {
      // Each program counts a width in letters of its own font, and rounds to pixels.
      expect(Math.abs((other.widths[i] ?? 0) - width)).toBeLessThanOrEqual(0.15 * width + 1);
    });
    expect([...other.merges].sort()).toEqual([...sheet.merges].sort());
    // LibreOffice without a window keeps nothing of how a sheet is viewed: what stays in view is looked for in the file.
    expect(named(written, name).freeze).toEqual(sheet.freeze);
    expect(other.notes.map(({ at }) => at).sort()).toEqual(sheet.notes.map(({ at }) => at).sort());
    expect(other.rules).toHaveLength(sheet.rules.length);
    expect(new Set(other.validation.map(({ kind }) => kind))).toEqual(
      new Set(sheet.validation.map(({ kind }) => kind)),
    );
    const filled = other.cells.flat().filter(({ look }) => look?.fill !== undefined).length;
    expect(filled).toBeGreaterThanOrEqual(sheet.cautions.length);
  });

  test("has its charts", () => {
    const drawable = sheet.charts.filter((chart) => plainSeries(chart).length > 0).length;
    expect(charts.get(name)).toBe(drawable);
  });
});
