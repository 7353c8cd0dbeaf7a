import { spawn, type ChildProcess } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { serialOfIso } from "../../functions/dates";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { weights } from "../../taskpane/sheets/weights";
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
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme });
  const page = await context.newPage();
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
    await page.getByRole("link", { name: "VIV.RAMP in the handbook" }).waitFor();
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
    const [help] = await Promise.all([
      page.waitForEvent("popup"),
      page.getByRole("link", { name: "VIV.LAPSE in the handbook" }).click(),
    ]);
    await help.waitForSelector("h1:text-is('VIV.LAPSE')");
    await help.close();
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

    // Two sheets of which one takes from the other go again as one step, the shown one first: the engine draws on no gone sheet.
    await page.evaluate(
      (sheets) =>
        window.workbook.asOne(async () => {
          const [first = "", second = ""] = await window.workbook.insert(sheets);
          const cells = [[{ formula: `='${second}'!A1` }]];
          await window.workbook.write([{ sheet: first, row: 60, column: 0, cells }]);
        }),
      [weights, coolingPlan],
    );
    await page.mouse.click(600, 500);
    await page.keyboard.press("Control+z");
    await page.waitForFunction(
      (wanted) => window.workbook.sheetNames().then((names) => names.join() === wanted),
      before.join(),
    );
    expect(opened.errors).toEqual([]);
  });

  test("asked nobody but its own server, and met no error", () => {
    expect(opened.elsewhere).toEqual([]);
    expect(opened.errors).toEqual([]);
  });
});

describe("what a keeper does in the grid", () => {
  let opened: Opened;
  let page: Page;
  const rowHeading = 46; // px
  const [gridTop, width, height] = [124, 88, 24]; // px: the first cell's corner, and a cell of a sheet as it begins
  /** The middle of a cell of a sheet as it begins, on the page. */
  const middle = (row: number, column: number) =>
    [rowHeading + width * (column + 0.5), gridTop + height * (row + 0.5)] as const;
  const at = async (row: number, column: number) => (await cells(page, "Sheet1"))[row]?.[column];
  const type = async (row: number, column: number, text: string, delay = 20): Promise<void> => {
    await select(page, "Sheet1", row, column);
    await page.keyboard.type(text, { delay });
    await page.keyboard.press("Enter");
    await page.waitForTimeout(400);
  };
  beforeAll(async () => {
    opened = await open(1366, 768);
    ({ page } = opened);
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  });
  afterAll(() => page.context().close());

  test("a typed date is read as the menu says, and what it cannot mean stays text, with words", async () => {
    const dates = page.getByLabel("Dates");
    await dates.selectOption("dmy");
    await type(0, 0, "05/10/2026");
    expect((await at(0, 0))?.value).toBe(serialOfIso("2026-10-05"));
    await dates.selectOption("mdy");
    await type(1, 0, "05/10/2026");
    expect((await at(1, 0))?.value).toBe(serialOfIso("2026-05-10"));
    await type(2, 0, "25/10/2026");
    expect((await at(2, 0))?.value).toBe("25/10/2026");
    await select(page, "Sheet1", 2, 0);
    expect(await page.locator("#problem").textContent()).toMatch(/^A3 .*25\/10\/2026/);
  });

  test("over an error the pointer meets the sentence that the bar has", async () => {
    await type(3, 0, '=VIV.LAPSE("x",1,2)');
    await select(page, "Sheet1", 9, 7);
    expect(await page.locator("#problem").textContent()).toBe("");
    await page.mouse.move(...middle(6, 3));
    await page.mouse.move(...middle(3, 0), { steps: 4 });
    await page.getByText("temperature holds 'x': give a number from -90 to 60 °C").waitFor();
  });

  test("Enter ends a formula as it is typed, whatever is suggested", async () => {
    await select(page, "Sheet1", 4, 0);
    await page.keyboard.type("=MI", { delay: 40 });
    await page.getByText("MINUTE").first().waitFor();
    await page.keyboard.type("N(4,5)+MA");
    await page.keyboard.type("X(1,2)");
    await page.keyboard.press("Enter");
    await page.waitForTimeout(400);
    expect(await at(4, 0)).toMatchObject({ formula: "=MIN(4,5)+MAX(1,2)", value: 6 });
  });

  test("a spill that is copied is plain text whole, as it is shown", async () => {
    await type(6, 0, "=VIV.RAMP(DATE(2026,10,5),24,8,14)");
    await select(page, "Sheet1", 6, 0);
    for (const key of ["ArrowRight", "ArrowDown", "ArrowDown"]) await page.keyboard.press(`Shift+${key}`);
    await page.keyboard.press("Control+c");
    await page.waitForTimeout(400);
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(
      "2026-10-05\t24\n2026-10-12\t16\n2026-10-19\t8",
    );
  });

  test("a range is sorted by its first column from the menu, its rows kept together", async () => {
    await page.evaluate(() =>
      window.workbook.write([
        {
          sheet: "Sheet1",
          row: 0,
          column: 4,
          cells: [
            [3, "c", { formula: "=E1*2" }],
            [1, "a", { formula: "=E2*2" }],
            [2, "b", { formula: "=E3*2" }],
          ],
        },
      ]),
    );
    await select(page, "Sheet1", 0, 4);
    for (const key of ["ArrowRight", "ArrowRight", "ArrowDown", "ArrowDown"]) await page.keyboard.press(`Shift+${key}`);
    await page.mouse.click(...middle(0, 5), { button: "right" });
    await page.getByText("Sort", { exact: true }).last().hover();
    await page.getByText("Ascending", { exact: true }).first().click();
    await page.waitForTimeout(600);
    const sorted = (await cells(page, "Sheet1")).slice(0, 3).map((row) => row.slice(4, 7));
    expect(sorted.map((row) => row.map(({ value }) => value))).toEqual([
      [1, "a", 2],
      [2, "b", 4],
      [3, "c", 6],
    ]);
    expect(sorted.map(([, , cell]) => cell?.formula)).toEqual(["=E1*2", "=E2*2", "=E3*2"]);
  });

  test("a page with unsaved work asks before it goes; what was in it is offered again, and comes back", async () => {
    await page.waitForTimeout(2_500);
    const before = await cells(page, "Sheet1");
    const asked: string[] = [];
    page.on("dialog", (dialog) => {
      asked.push(dialog.type());
      void dialog.accept();
    });
    await page.reload();
    await page.waitForSelector("body.ready", { timeout: 60_000 });
    expect(asked).toEqual(["beforeunload"]);
    expect(await cells(page, "Sheet1")).toEqual([]);
    await page.getByRole("button", { name: /^Go on with it/ }).click();
    await page.getByRole("button", { name: "Go ahead" }).click();
    await page.getByText("is open again").waitFor();
    expect(await cells(page, "Sheet1")).toEqual(before);
    expect(await page.getByLabel("Dates").inputValue()).toBe("mdy");
    // Nobody else is offered what is open here.
    const other = await page.context().newPage();
    await other.goto(address);
    await other.waitForSelector("body.ready", { timeout: 60_000 });
    expect(await other.getByText("Kept from an earlier visit").count()).toBe(0);
    expect(opened.errors).toEqual([]);
  });
});

test("on a narrow screen the pane is folded away, and comes by its button", async () => {
  const { page, errors } = await open(320, 700);
  const pane = page.locator("#pane");
  const button = page.getByRole("button", { name: "Show pane" });
  // Nothing of the title bar is cut off, its button least of all: the page itself does not scroll.
  for (const part of ["#help", "#manner", "#fold"]) {
    const { x = 0, width = Infinity } = (await page.locator(part).boundingBox()) ?? {};
    expect([part, x >= 0, x + width <= 320]).toEqual([part, true, true]);
  }
  expect(await pane.isVisible()).toBe(false);
  expect(await button.getAttribute("aria-expanded")).toBe("false");
  await button.focus();
  await page.keyboard.press("Enter");
  expect(await pane.isVisible()).toBe(true);
  expect(await page.getByRole("button", { name: "Hide pane" }).getAttribute("aria-expanded")).toBe("true");
  expect(errors).toEqual([]);
  await page.close();
});
