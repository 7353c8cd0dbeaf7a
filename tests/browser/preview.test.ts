import { spawn, type ChildProcess } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import type { CellState, Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";

// The grid is a drawing, so cells are read through the page's own workbook.
declare global {
  interface Window {
    workbook: Workbook;
  }
}

jest.setTimeout(120_000);

const root = join(__dirname, "..", "..");
const built = process.env.PREVIEW ?? join(root, "dist", "preview");
let server: ChildProcess;
let address: string;
let browser: Browser;

beforeAll(async () => {
  if (!existsSync(join(built, "index.html"))) throw new Error("there is no built preview: npm run build");
  server = spawn(process.execPath, ["addin/preview/serve.mjs", built], {
    cwd: root,
    stdio: ["ignore", "pipe", "inherit"],
  });
  address = await new Promise<string>((resolve, reject) => {
    server.stdout?.on("data", (words: Buffer) => {
      const found = /http:\/\/\S+/.exec(words.toString());
      if (found) resolve(found[0]);
    });
    server.once("exit", () => reject(new Error("the server ended before it said its address")));
  });
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
});
afterAll(async () => {
  await browser.close();
  server.kill();
});

interface Opened {
  readonly page: Page;
  readonly errors: string[];
  /** Addresses asked for that are not the page's own server. */
  readonly elsewhere: string[];
}

const open = async (width: number, height: number, scheme: "light" | "dark" = "light"): Promise<Opened> => {
  const page = await browser.newPage({ viewport: { width, height }, colorScheme: scheme });
  const errors: string[] = [];
  const elsewhere: string[] = [];
  page.on("console", (line) => line.type() === "error" && errors.push(line.text()));
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url())) elsewhere.push(request.url());
  });
  await page.goto(address);
  await page.waitForSelector("body.ready", { timeout: 60_000 });
  return { page, errors, elsewhere };
};
const cells = (page: Page, name: string): Promise<readonly (readonly CellState[])[]> =>
  page.evaluate(async (wanted) => (await window.workbook.read([wanted]))[0]?.cells ?? [], name);
/** Selects a cell, and gives the grid the keyboard as a click into it would. */
const select = async (page: Page, sheet: string, row: number, column: number): Promise<void> => {
  await page.evaluate(([name, i, j]) => window.workbook.show(name, i, j), [sheet, row, column] as const);
  await page.waitForTimeout(300);
  await page.mouse.click(600, 500);
  await page.evaluate(([name, i, j]) => window.workbook.show(name, i, j), [sheet, row, column] as const);
  await page.waitForTimeout(300);
};

describe("on a wide screen", () => {
  let opened: Opened;
  let page: Page;
  beforeAll(async () => {
    opened = await open(1366, 768);
    ({ page } = opened);
  });
  afterAll(() => page.close());

  test("opens on the filled Native climate sheet with its chart, and the pane beside it", async () => {
    expect(await page.title()).toBe("Vivarium Almanac: preview");
    const names = await page.evaluate(() => window.workbook.sheetNames());
    expect(names[0]).toBe(nativeClimate.name);
    const shown = await page.evaluate(() => window.workbook.selection());
    expect(shown.sheet).toBe(nativeClimate.name);
    const all = (await cells(page, nativeClimate.name)).flat();
    expect(all.filter(({ value }) => typeof value === "number").length).toBeGreaterThan(100);
    expect(all.filter(({ value }) => typeof value === "object" && value !== null)).toEqual([]);
    await page.waitForSelector(".picture svg");
    expect(await page.locator("#pane").boundingBox()).toMatchObject({ width: 360 });
  });

  test("offers names and arguments while a formula is typed, and spills it with dates as dates", async () => {
    await select(page, "Sheet1", 0, 0);
    await page.keyboard.type("=VIV.RA", { delay: 40 });
    await page.getByText("Dates and set-points of a slow, even change").first().waitFor();
    await page.keyboard.type("MP(", { delay: 40 });
    await page.getByText("[step]").first().waitFor();
    await page.keyboard.type("DATE(2026,10,5),24,8,42)", { delay: 20 });
    // The engine looks for suggestions after each letter, and an Enter in that moment is theirs.
    await page.waitForTimeout(600);
    await page.keyboard.press("Enter");
    await page.waitForTimeout(600);
    const rows = await cells(page, "Sheet1");
    expect(rows.map((row) => row[0]?.value)).toEqual([0, 7, 14, 21, 28, 35, 42].map((days) => 46_300 + days));
    expect(rows.map((row) => row[0]?.format)).toEqual(Array(7).fill("yyyy-mm-dd"));
    expect(rows[6]?.[1]?.value).toBe(8);
  });

  test("says beside the title what is wrong in the selected cell", async () => {
    await page.evaluate(() =>
      window.workbook.write([{ sheet: "Sheet1", row: 0, column: 5, cells: [[{ formula: '=VIV.LAPSE("x",1,2)' }]] }]),
    );
    await select(page, "Sheet1", 0, 5);
    await page.getByText("F1 #VALUE!: temperature holds 'x': give a number from -90 to 60 °C").waitFor();
  });

  test("a station's elevation that is typed changes the adjusted months, and the picture", async () => {
    const place = (await cells(page, nativeClimate.name))
      .flatMap((line, row) => line.map((cell, column) => ({ row, column, cell })))
      .find(({ cell }) => cell.value === "Elevation, m");
    if (!place) throw new Error("the sheet has no elevation");
    const before = await cells(page, nativeClimate.name);
    await page.evaluate((name) => window.workbook.show(name), nativeClimate.name);
    const picture = () => page.locator(".picture svg").first().innerHTML();
    const drawn = await picture();
    await select(page, nativeClimate.name, place.row, place.column + 1);
    await page.keyboard.type("1200", { delay: 30 });
    await page.keyboard.press("Enter");
    await page.waitForTimeout(500);
    const after = await cells(page, nativeClimate.name);
    expect(after[place.row]?.[place.column + 1]?.value).toBe(1200);
    const changed = after.flatMap((line, row) =>
      line.filter(({ value }, column) => typeof value === "number" && value !== before[row]?.[column]?.value),
    );
    // Twelve highs and twelve lows at the least.
    expect(changed.length).toBeGreaterThanOrEqual(24);
    await page.waitForFunction((old) => document.querySelector(".picture svg")?.innerHTML !== old, drawn);
  });

  test("inserts a sheet from the pane, and takes it back by its own undo", async () => {
    const before = await page.evaluate(() => window.workbook.sheetNames());
    const part = page
      .locator("#pane")
      .locator("section, li, article, div")
      .filter({ hasText: coolingPlan.sentence })
      .last();
    await part.scrollIntoViewIfNeeded();
    const inserts = page.locator("#pane").getByRole("button", { name: /^Insert/ });
    const count = await inserts.count();
    const below = (await part.boundingBox())?.y ?? 0;
    for (let i = 0; i < count; i++) {
      const box = await inserts.nth(i).boundingBox();
      if (!box || box.y < below) continue;
      await inserts.nth(i).click();
      break;
    }
    await page.waitForFunction(
      (name) => window.workbook.sheetNames().then((names) => names.includes(name)),
      coolingPlan.name,
    );
    await page.waitForTimeout(1500);
    const inserted = await cells(page, coolingPlan.name);
    expect(inserted.flat().filter(({ value }) => typeof value === "object" && value !== null)).toEqual([]);

    // The same figures as without a page, before and after a date is typed: what hangs on it follows to the last row.
    const values = (rows: readonly (readonly CellState[])[]) => rows.map((row) => row.map(({ value }) => value));
    const row = inserted.findIndex((line) => line[0]?.value === "Day of last or first meal");
    const { workbook, close } = openWorkbook();
    await workbook.insert([coolingPlan]);
    const without = async () => values((await workbook.read([coolingPlan.name]))[0]?.cells ?? []);
    const first = await without();
    expect(values(inserted)).toEqual(first);
    await select(page, coolingPlan.name, row, 1);
    await page.keyboard.type("2026-10-19", { delay: 30 });
    await page.keyboard.press("Enter");
    await page.waitForTimeout(500);
    await workbook.write([{ sheet: coolingPlan.name, row, column: 1, cells: [[46_314]] }]);
    const typed = await without();
    expect(typed).not.toEqual(first);
    expect(values(await cells(page, coolingPlan.name))).toEqual(typed);
    close();
    await page.keyboard.press("Control+z");
    await page.waitForTimeout(500);
    expect(values(await cells(page, coolingPlan.name))).toEqual(first);

    await page.mouse.click(600, 500);
    await page.keyboard.press("Control+z");
    await page.waitForFunction(
      (wanted) => window.workbook.sheetNames().then((names) => names.join() === wanted),
      before.join(),
    );
  });

  test("asked nobody but its own server, and met no error", () => {
    expect(opened.elsewhere).toEqual([]);
    expect(opened.errors).toEqual([]);
  });
});

test("on a narrow screen the pane is folded away, and comes by its button", async () => {
  const { page, errors } = await open(400, 700);
  const pane = page.locator("#pane");
  const button = page.getByRole("button", { name: "Show pane" });
  expect(await pane.isVisible()).toBe(false);
  expect(await button.getAttribute("aria-expanded")).toBe("false");
  await button.focus();
  await page.keyboard.press("Enter");
  expect(await pane.isVisible()).toBe(true);
  expect(await page.getByRole("button", { name: "Hide pane" }).getAttribute("aria-expanded")).toBe("true");
  expect(errors).toEqual([]);
  await page.close();
});
