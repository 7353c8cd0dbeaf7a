import { Workbook } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import type { FileSheet } from "../../addin/file/book";
import { partsOf } from "../../addin/file/parts";
import { plainFileSheet } from "../../addin/file/plain";
import { readXlsx } from "../../addin/file/read";
import { writeXlsx } from "../../addin/file/write";
import { plottedOf } from "../../taskpane/pictures/plotted";
import { sheets } from "../../taskpane/sheets/catalogue";
import { areaOf, overlap } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { LibreOffice } from "./libreOffice";

jest.setTimeout(60_000);

const readings = [20, "", "shed", null, 0];
const sheet: FileSheet = {
  ...plainFileSheet({ name: "Log", cells: [] }),
  cells: readings.map((value, i) => [{ value: 46_300 + i, format: "yyyy-mm-dd" }, { value }]),
  widths: [12, 10],
  charts: [
    {
      title: "Nights",
      area: "D2:H12",
      along: "A1:A5",
      axis: "°C",
      series: [{ draw: "line", name: "Night", values: "B1:B5" }],
      summary: "A1",
    },
  ],
};

const load = async (bytes: Uint8Array): Promise<Workbook> => {
  installChartSupport();
  const book = new Workbook();
  await book.xlsx.load(bytes);
  return book;
};

test("a chart of a file is drawn from what LibreOffice works out as #N/A where there is no figure, not as 0", async () => {
  const bytes = await writeXlsx([sheet]);
  const office = new LibreOffice();
  try {
    const log = (await load(await office.convert(bytes, "xlsx", "xlsx"))).worksheets[0];
    // Two columns to the right of the chart, which ends in H.
    const plotted = readings.map((_, i) => log?.getCell(`K${i + 1}`).value as { result?: unknown });
    expect(plotted.map(({ result }) => result)).toEqual([
      20,
      { error: "#N/A" },
      { error: "#N/A" },
      { error: "#N/A" },
      expect.anything(),
    ]);
    expect(plotted[4]?.result).toBe(0);
    expect(log?.getColumn(11).hidden).toBe(true);
    const parts = await partsOf("log.xlsx", bytes);
    const charts = Object.keys(parts).filter((path) => /charts\/chart\d+\.xml$/.test(path));
    expect(charts).toHaveLength(1);
    const drawn = new TextDecoder().decode(parts[charts[0] as string]);
    // Hidden cells are drawn too.
    expect(drawn).toMatch(/<c:plotVisOnly val="(0|false)"\/>/);
    expect(drawn).toMatch(/<c:val>.*!\$K\$1:\$K\$5/s);
    expect(drawn).not.toContain("$B$1");
    // LibreOffice draws a gap at 0.
    expect(drawn).toMatch(/<c:dispBlanksAs val="span"\/>/);
  } finally {
    office.close();
  }
});

test("days without a date stand at the last one, not in 1899, as LibreOffice works them out", async () => {
  const dates = [46_300, 46_303, "", null, 46_301];
  const log = { ...sheet, cells: dates.map((value, i) => [{ value, format: "yyyy-mm-dd" }, { value: i }]) };
  const bytes = await writeXlsx([log]);
  const office = new LibreOffice();
  try {
    const made = (await load(await office.convert(bytes, "xlsx", "xlsx"))).worksheets[0];
    const along = dates.map((_, i) => made?.getCell(`L${i + 1}`));
    const days = along.map((cell) => (cell?.value as { result?: Date }).result?.toISOString().slice(0, 10));
    expect(days).toEqual(["2026-10-05", "2026-10-08", "2026-10-08", "2026-10-08", "2026-10-06"]);
    expect(made?.getColumn(12).hidden).toBe(true);
    const parts = await partsOf("log.xlsx", bytes);
    const drawn = new TextDecoder().decode(
      parts[Object.keys(parts).find((path) => /chart\d+\.xml$/.test(path)) as string],
    );
    expect(drawn).toMatch(/<c:cat>.*!\$L\$1:\$L\$5/s);
    const [back] = (await readXlsx(bytes)).sheets;
    expect(back?.cells.map((line) => line.length)).toEqual([2, 2, 2, 2, 2]);
  } finally {
    office.close();
  }
});

test("it is no part of the sheet: what is read back is what was written", async () => {
  const [back] = (await readXlsx(await writeXlsx([sheet]))).sheets;
  expect(back?.cells.map((line) => line.map(({ value }) => value))).toEqual(
    sheet.cells.map((line) => line.map(({ value }) => value).filter((value, i) => i === 0 || value !== null)),
  );
  expect(back?.hiddenColumns).toEqual([]);
  expect(back?.widths.slice(0, 2)).toEqual([12, 10]);
});

test("on every templated sheet it stands apart from all that is there", () => {
  let ranges = 0;
  for (const template of sheets) {
    const plotted = [...plottedOf(template).values()].map(({ at }) => areaOf(at));
    ranges += plotted.length;
    for (const [i, area] of plotted.entries()) {
      expect(template.blocks.filter((block) => overlap(areaOfBlock(block), area))).toEqual([]);
      expect(plotted.filter((other, j) => j !== i && overlap(other, area))).toEqual([]);
    }
  }
  expect(ranges).toBeGreaterThan(10);
});
