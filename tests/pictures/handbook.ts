import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { folderOf, takenIn, type Taken } from "../../addin/handbook/pictures";
import { fingerprint, SHOWN } from "../../addin/handbook/shown";
import { sheets } from "../../taskpane/sheets/catalogue";
import { PLACE } from "./address";
import { DRAWN, root, served } from "./served";

/** Small enough that a page with ten of them stays light, large enough that its words can be read. */
const QUALITY = 30;
const SHEET = { width: 1060, height: 1040 };
const PART = { width: 1000, height: 700 };
const PAGE = { width: 940, height: 560 };
/** Of the pane a page that is taller shows more. */
const TALL = { width: 940, height: 700 };

interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const open = async (browser: Browser, address: string, query: string, viewport: typeof PAGE): Promise<Page> => {
  // Dates as in no one country.
  const page = await browser.newPage({ viewport, colorScheme: "light", locale: "en-CA" });
  await page.goto(`${address}?${query}`);
  await page.waitForSelector("body.ready", { timeout: 60_000 });
  await page.waitForTimeout(DRAWN);
  return page;
};

const boxOf = async (page: Page, selector: string): Promise<Clip> => {
  const box = await page.locator(selector).boundingBox();
  if (!box) throw new Error(`the page shows no ${selector}`);
  return { x: Math.round(box.x), y: Math.round(box.y), width: Math.round(box.width), height: Math.round(box.height) };
};

/** The browser writes WebP itself, when it is asked past its driver. */
const shoot = async (page: Page, name: string, clip: Clip): Promise<Taken> => {
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send("Page.captureScreenshot", {
    format: "webp",
    quality: QUALITY,
    clip: { ...clip, scale: 1 },
  });
  await session.detach();
  writeFileSync(join(folderOf(root), `${name}.webp`), Buffer.from(data, "base64"));
  return { width: clip.width, height: clip.height, of: fingerprint(root, SHOWN[name] ?? { sheets: [], files: [] }) };
};

/** The cells of a sheet without the menus above them: of the page's canvases the largest. */
const cells = (page: Page): Promise<Clip> =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("#grid canvas")].map((canvas) => canvas.getBoundingClientRect());
    const [{ x, y, width, height }] = boxes.sort(
      (one, other) => other.width * other.height - one.width * one.height,
    ) as [DOMRect];
    return { x: Math.round(x), y: Math.round(y), width: Math.round(width), height: Math.round(height) };
  });

type Take = (browser: Browser, address: string) => Promise<Taken>;

const ofSheet =
  (key: string, name = key, viewport = SHEET): Take =>
  async (browser, address) => {
    const page = await open(browser, address, `sheet=${key}`, viewport);
    await page.click("#fold");
    await page.waitForTimeout(DRAWN);
    const taken = await shoot(page, name, await cells(page));
    await page.close();
    return taken;
  };

const section = async (page: Page, name: string): Promise<void> => {
  await page.click(`[role=tab]:text-is('${name}')`);
  await page.waitForSelector("[role=tabpanel] :is(h2, label)");
};

const atPlace = async (browser: Browser, address: string, viewport = TALL): Promise<Page> => {
  const page = await open(browser, address, "sheet=nativeClimate", viewport);
  await section(page, "Places");
  for (const [label, value] of PLACE) await page.getByLabel(label).fill(value);
  await page.waitForSelector("h2:text-is('The year at 1500 m')");
  await page.waitForTimeout(DRAWN);
  return page;
};

/** The pane with a part of it at its top, and nothing in focus. */
const scrolledTo = async (page: Page, selector: string): Promise<void> => {
  await page
    .locator(selector)
    .first()
    .evaluate((element) => {
      const panel = element.closest(".panel");
      if (panel) panel.scrollTop += element.getBoundingClientRect().top - panel.getBoundingClientRect().top - 12;
    });
};

const ofPane = async (page: Page, name: string): Promise<Taken> => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.waitForTimeout(300);
  const taken = await shoot(page, name, await boxOf(page, "#pane"));
  await page.close();
  return taken;
};

const whole: Clip = { x: 0, y: 0, ...PAGE };

/** Each step of the first hour, as a keeper comes to it. */
const steps: Readonly<Record<string, Take>> = {
  "step-open": async (browser, address) => {
    const page = await open(browser, address, "sheet=nativeClimate", PAGE);
    const taken = await shoot(page, "step-open", whole);
    await page.close();
    return taken;
  },
  "step-place": async (browser, address) => ofPane(await atPlace(browser, address), "step-place"),
  "step-year": async (browser, address) => {
    const page = await atPlace(browser, address);
    await scrolledTo(page, "h2:text-is('Stations that could speak for it, best first')");
    return ofPane(page, "step-year");
  },
  "step-climate": async (browser, address) => {
    const page = await atPlace(browser, address, PAGE);
    await page.click("button:text-is('Insert both sheets')");
    await page.waitForSelector("text=/Native climate \\(2\\)|is new|are new|added/i", { timeout: 30_000 });
    await page.waitForTimeout(4 * DRAWN);
    const taken = await shoot(page, "step-climate", whole);
    await page.close();
    return taken;
  },
  "step-glance": async (browser, address) => {
    const page = await open(browser, address, "sheet=nativeClimate", SHEET);
    await page.click("#fold");
    await page.waitForTimeout(DRAWN);
    const all = await cells(page);
    const taken = await shoot(page, "step-glance", { ...all, height: Math.min(all.height, 380) });
    await page.close();
    return taken;
  },
  "step-form": async (browser, address) => {
    const page = await open(browser, address, "sheet=animals", TALL);
    await page.getByLabel("Animal", { exact: true }).fill("Juniper");
    await page.getByLabel("Mass, g").fill("310");
    await page.getByLabel(/^Latitude of its home/).fill("46.5");
    await page.getByLabel(/^Longitude/).fill("9.8");
    await page.getByLabel("Elevation there, m").fill("1500");
    await page.getByLabel("Day of the last meal").fill("2026-09-20");
    await scrolledTo(page, "h2:text-is('Start my year')");
    return ofPane(page, "step-form");
  },
  "step-plan": ofSheet("coolingPlan", "step-plan", PART),
  "step-log": ofSheet("winterLog", "step-log", PART),
  "step-picture": async (browser, address) => {
    const page = await open(browser, address, "sheet=nativeClimate", TALL);
    await section(page, "Share");
    await page.click("summary:text-is('A picture or a page, for a post')");
    await scrolledTo(page, "summary:text-is('A picture or a page, for a post')");
    return ofPane(page, "step-picture");
  },
  "step-share": async (browser, address) => {
    const page = await open(browser, address, "sheet=nativeClimate", TALL);
    await section(page, "Share");
    await page.click("summary:text-is('Save for others')");
    await scrolledTo(page, "h2:text-is('Hand it on')");
    return ofPane(page, "step-share");
  },
};

const takes: Readonly<Record<string, Take>> = {
  ...Object.fromEntries(sheets.map(({ key }) => [key, ofSheet(key)])),
  ...steps,
};

/** Takes the handbook's pictures that are stale or missing, or all of them, and says so of each as soon as it is taken. */
export const takeHandbook = async (all: boolean): Promise<void> => {
  const folder = folderOf(root);
  mkdirSync(folder, { recursive: true });
  const taken = new Map(Object.entries(takenIn(root)).filter(([name]) => name in SHOWN));
  const write = (): void =>
    writeFileSync(join(folder, "taken.json"), `${JSON.stringify(Object.fromEntries([...taken].sort()), null, 2)}\n`);
  write();
  const stale = Object.entries(SHOWN).filter(
    ([name, shown]) => all || taken.get(name)?.of !== fingerprint(root, shown),
  );
  if (stale.length > 0) {
    await served(async (browser, address) => {
      for (const [name] of stale) {
        const take = takes[name];
        if (!take) throw new Error(`nobody takes the picture ${name}`);
        taken.set(name, await take(browser, address));
        write();
        console.log(name);
      }
    });
  }
  console.log(`${stale.length} of ${Object.keys(SHOWN).length} pictures taken.`);
};
