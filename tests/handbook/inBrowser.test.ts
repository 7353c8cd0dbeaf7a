import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { handbookFiles } from "../../addin/handbook/make";

/** The pages as a reader sees them, in a browser that reaches nothing but the handbook's own files. */
jest.setTimeout(60_000);

const SITE = "http://handbook.test/";
const TYPES = { html: "text/html", css: "text/css", js: "text/javascript", webp: "image/webp", txt: "text/plain" };
const files = handbookFiles(join(__dirname, "..", ".."));
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
let browser: Browser;
let page: Page;
const problems: string[] = [];

beforeAll(async () => {
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  page = await browser.newPage();
  await page.route("**/*", (route) => {
    const { href, pathname } = new URL(route.request().url());
    const body = href.startsWith(SITE) ? files.get(pathname.slice(1)) : undefined;
    if (body === undefined) {
      problems.push(`asked for ${href}`);
      return route.abort();
    }
    const ending = pathname.slice(pathname.lastIndexOf(".") + 1) as keyof typeof TYPES;
    return route.fulfill({ body: typeof body === "string" ? body : Buffer.from(body), contentType: TYPES[ending] });
  });
  page.on("console", (message) => message.type() === "error" && problems.push(message.text()));
  page.on("pageerror", (error) => problems.push(error.message));
});
afterAll(() => browser.close());
beforeEach(() => void problems.splice(0));
afterEach(() => expect(problems).toEqual([]));

/** What axe finds, and how far the page is wider than its window. The page's own policy lets no script in but by the driver. */
const faults = async (): Promise<readonly string[]> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof import("axe-core") }).axe.run(document);
    const wider = document.documentElement.scrollWidth - innerWidth;
    return [
      ...violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" ; ")}`),
      ...(wider > 0 ? [`wider than the window by ${wider} px`] : []),
    ];
  });
};

/** Pages with all that a page may hold. */
const kinds = ["first-hour", "functions/LOSSTREND", "sheets/coolingPlan", "how-sure"];

test.each(kinds)("axe finds nothing on %s, light on a phone and dark on a desk", async (path) => {
  for (const [width, colorScheme] of [
    [320, "light"],
    [1200, "dark"],
  ] as const) {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme });
    await page.goto(`${SITE}${path}.html`);
    expect(await faults()).toEqual([]);
  }
});

test("the search leads by keyboard from one page to another, and is as clean as the pages", async () => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.goto(`${SITE}sheets/coolingPlan.html`);
  await page.getByLabel("Search the handbook").fill("oxygen");
  await page.locator("#found").getByRole("link", { name: "VIV.BOXAIR", exact: true }).waitFor();
  expect(await faults()).toEqual([]);
  const [first] = await page.locator("#found a").allTextContents();
  await page.keyboard.press("Enter");
  await page.waitForURL(/functions/);
  expect(await page.locator("h1").textContent()).toBe(first);
  await page.getByLabel("Search the handbook").fill("zzz");
  await page.getByText('Nothing found for "zzz"').waitFor();
});

test("on paper there is no menu and no search, and the words are black on white", async () => {
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  await page.goto(`${SITE}functions/LAPSE.html`);
  expect(await page.locator("body > header").isVisible()).toBe(false);
  const colours = await page.evaluate(() => {
    const { color, backgroundColor } = getComputedStyle(document.body);
    return [color, backgroundColor];
  });
  expect(colours).toEqual(["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
  await page.emulateMedia({ media: "screen" });
});
