import { readdirSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import sirv from "sirv";
import { chromium, type Browser, type Page } from "playwright-core";
import { commands } from "../../addin/excel/commands";
import { catalogue } from "../../functions/catalogue";

/** The page of the add-in as it is built, in a browser that reaches nothing but the page's own server. */
jest.setTimeout(60_000);
const DIST = join(__dirname, "..", "..", "dist");
let server: Server;
let address: string;
let browser: Browser;

beforeAll(async () => {
  server = createServer(sirv(DIST));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/taskpane.html`;
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
}, 120_000);
afterAll(async () => {
  await browser.close();
  server.close();
});

const OFFICE = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** What of office.js the page touches before anything is done, writing down what it is told. */
const stand = (host: string | null, background: string) => `
  window.told = { functions: [], commands: [] };
  window.CustomFunctions = {
    associate: (id, code) => { if (typeof code === "function") { told.functions.push(id); told[id] = code; } },
    Error: class extends Error {}, ErrorCode: { notAvailable: "#N/A", invalidValue: "#VALUE!" },
  };
  window.Office = {
    HostType: { Excel: "Excel" },
    onReady: (call) => Promise.resolve({ host: ${JSON.stringify(host)} }).then((info) => { call?.(info); return info; }),
    actions: { associate: (name, code) => { told.commands.push(name); told[name] = code; } },
    addin: { showAsTaskpane: () => { told.shown = true; return Promise.resolve(); } },
    context: { officeTheme: { bodyBackgroundColor: ${JSON.stringify(background)} }, requirements: { isSetSupported: () => true } },
  };
`;

/** Asks until it is so: the browser's own way of waiting is a script that the policy refuses. */
const until = async (page: Page, expression: string): Promise<void> => {
  for (let turn = 0; turn < 200; turn++) {
    if (await page.evaluate<boolean>(expression)) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`never came true: ${expression}`);
};

interface Opened {
  readonly page: Page;
  readonly refused: readonly string[];
  readonly asked: readonly string[];
}

/** Opens the page; office.js is what is given, or cannot be reached. */
const openPage = async (office: string | undefined): Promise<Opened> => {
  const page = await browser.newPage({ viewport: { width: 320, height: 700 } });
  page.setDefaultTimeout(15_000);
  const refused: string[] = [];
  const asked: string[] = [];
  page.on("pageerror", (error) => refused.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && !message.text().includes("ERR_FAILED")) refused.push(message.text());
  });
  page.on("request", (request) => asked.push(request.url()));
  await page.route(/.*/, (route) => {
    const url = route.request().url();
    if (url === OFFICE && office !== undefined) return route.fulfill({ contentType: "text/javascript", body: office });
    return url.startsWith(new URL(address).origin) ? route.continue() : route.abort();
  });
  await page.goto(address);
  await page.getByRole("tab", { name: "Sheets" }).waitFor();
  return { page, refused, asked };
};
const elsewhere = (asked: readonly string[]): readonly string[] =>
  [...new Set(asked)].filter((url) => !url.startsWith(new URL(address).origin) && !/^(data|blob):/.test(url));

test("without a network all but office.js is there, and the page says so; the policy refuses nothing", async () => {
  const { page, refused, asked } = await openPage(undefined);
  expect(await page.locator("#notice").textContent()).toContain("could not be loaded");
  for (const section of ["Functions", "Readings", "Share", "Care"]) {
    await page.getByRole("tab", { name: section }).click();
    await page.getByRole("tabpanel").waitFor();
  }
  await page.getByRole("tab", { name: "Functions" }).click();
  // The script that calculates carries no examples: the reference has them from a file of its own.
  await page.getByRole("button", { name: /^VIV\.LAPSE / }).click();
  await page.getByText("=VIV.LAPSE(24,300,1400)").waitFor();
  await page.getByText("Its figures are held against: ICAO Doc 7488/3").waitFor();
  expect(refused).toEqual([]);
  expect(elsewhere(asked)).toEqual([OFFICE]);
  await page.close();
});

test("only a reporting build reports: no script of this one can", () => {
  const scripts = readdirSync(DIST).filter((name) => name.endsWith(".js"));
  expect(scripts.length).toBeGreaterThan(2);
  expect(scripts.filter((name) => readFileSync(join(DIST, name), "utf8").includes("report-on-excel"))).toEqual([]);
});

test("what the page asks for is named by its content, and so is what that asks for", () => {
  const html = readFileSync(join(DIST, "taskpane.html"), "utf8");
  const own = [...html.matchAll(/(?:src|href)="([^":]+)"/g)].map(([, file]) => file as string);
  expect(own.map((file) => file.replace(/\.[0-9a-f]{8}\./, ".#."))).toEqual([
    "functions.#.js",
    "taskpane.#.css",
    "taskpane.#.js",
  ]);
  const listed = JSON.parse(readFileSync(join(DIST, "scripts.json"), "utf8")) as readonly string[];
  const unhashed = readdirSync(DIST).filter((name) => /\.(js|css)$/.test(name) && !listed.includes(name));
  // The manifest's own address, for which the page has no use.
  expect(unhashed).toEqual(["functions.js"]);
});

test("the policy is strict: no script but the page's own and the vendor's, nothing sent anywhere", async () => {
  const html = readFileSync(join(DIST, "taskpane.html"), "utf8");
  const policy = /Content-Security-Policy"\s+content="([^"]*)"/.exec(html)?.[1] ?? "";
  expect(policy).toContain("default-src 'none'");
  expect(/script-src ([^;]*)/.exec(policy)?.[1]).toBe("'self' https://appsforoffice.microsoft.com");
  expect(/connect-src ([^;]*)/.exec(policy)?.[1]).toBe("'self'");
  expect(html).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/); // no inline script
  const { page } = await openPage(undefined);
  expect(await page.evaluate(`fetch("https://elsewhere.example/").then(() => "sent", () => "refused")`)).toBe(
    "refused",
  );
  expect(
    await page.evaluate(
      `new Promise((done) => setTimeout(() => { try { Function("return 1")(); done("ran"); } catch { done("refused"); } }))`,
    ),
  ).toBe("refused");
  await page.close();
});

test("inside Excel every function and every ribbon command is told, in the one runtime of the pane", async () => {
  const { page, refused } = await openPage(stand("Excel", "#ffffff"));
  await until(page, "told.commands.length > 0");
  const told = await page.evaluate<{ functions: string[]; commands: string[] }>(
    "({ functions: told.functions, commands: told.commands })",
  );
  expect([...new Set(told.functions)].sort()).toEqual(catalogue.map(({ name }) => name as string).sort());
  expect(told.commands.sort()).toEqual(Object.keys(commands).sort());
  expect(await page.locator("#notice").textContent()).toBe("");
  // It works under the policy: from a timer, because what a test runs at once is let through.
  const answer = await page.evaluate(
    `new Promise((done) => setTimeout(() => done(told.LAPSE([[24], [null]], [[300]], [[1400]]))))`,
  );
  expect(answer).toEqual([[expect.closeTo(16.85, 9)], [expect.anything()]]);
  expect(refused).toEqual([]);

  // There is no Excel object here: a command fails, says so in the pane, opens it, and lets the ribbon go on.
  const completed = await page.evaluate(
    `new Promise((done) => told.insertNativeClimate({ completed: () => done(told.shown === true) }))`,
  );
  expect(completed).toBe(true);
  expect(await page.locator("#notice").textContent()).toMatch(
    /^Excel could not insert the sheet: .*Nothing was changed/,
  );
  await page.close();
});

test("the pane follows Office's dark theme", async () => {
  const light = await openPage(stand("Excel", "#FFFFFF"));
  const dark = await openPage(stand("Excel", "#262626"));
  const backgroundOf = ({ page }: Opened) =>
    page.evaluate<string>(`getComputedStyle(document.querySelector("#pane > *")).backgroundColor`);
  expect(await backgroundOf(light)).toBe("rgb(255, 255, 255)");
  expect(await backgroundOf(dark)).not.toBe("rgb(255, 255, 255)");
  await light.page.close();
  await dark.page.close();
});

test("outside of Excel the page says where it belongs", async () => {
  const { page } = await openPage(stand(null, "#ffffff"));
  await until(page, `document.getElementById("notice").textContent !== ""`);
  expect(await page.locator("#notice").textContent()).toBe(
    "This pane works inside Excel: open it there from the Home tab.",
  );
  await page.close();
});
