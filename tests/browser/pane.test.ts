import { readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { chromium, type Browser, type Page } from "playwright-core";

// A page answers in milliseconds, but for a machine that builds beside it.
jest.setTimeout(30_000);

const SITE = "http://pane.test/";
const PAGE = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Pane</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'">
<link rel="icon" href="data:,"><link rel="stylesheet" href="page.css"><link rel="stylesheet" href="panePage.css"></head>
<body><header><h1>Pane</h1></header><main id="pane"></main><script type="module" src="panePage.js"></script></body></html>`;
const STYLE =
  "html,body{margin:0;height:100%}h1{position:absolute;width:1px;height:1px;overflow:hidden;margin:0}#pane{height:100vh}";

const sections = ["sheets", "places", "functions", "readings", "share", "care"] as const;
const themes = ["light", "dark", "contrast"] as const;

let browser: Browser;
let page: Page;
const files = new Map<string, string | Buffer>();
const problems: string[] = [];
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

beforeAll(async () => {
  const { outputFiles } = await build({
    entryPoints: [join(__dirname, "panePage.ts")],
    outdir: "/",
    write: false,
    bundle: true,
    splitting: true,
    format: "esm",
    jsx: "automatic",
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "silent",
  });
  for (const { path, text } of outputFiles) files.set(path.slice(path.lastIndexOf("/") + 1), text);
  files.set("", PAGE).set("page.css", STYLE);
  const network = join(__dirname, "../../functions/network");
  for (const name of ["stations.json", "relief.i8", "coast.json"]) {
    files.set(`network/${name}`, readFileSync(join(network, name)));
  }
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  page = await browser.newPage({ viewport: { width: 320, height: 760 } });
  // Nothing is served but the page's own files: any other request is a fault.
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    const body = url.href.startsWith(SITE) ? files.get(url.pathname.slice(1)) : undefined;
    if (body === undefined) {
      problems.push(`asked for ${url.href}`);
      return route.abort();
    }
    const type = url.pathname.endsWith(".js")
      ? "text/javascript"
      : url.pathname.endsWith(".css")
        ? "text/css"
        : "text/html";
    return route.fulfill({ body, contentType: type });
  });
  page.on("console", (message) => {
    if (message.type() === "error") problems.push(message.text());
  });
  page.on("pageerror", (error) => problems.push(error.message));
}, 60_000);
afterAll(() => browser.close());
beforeEach(() => void problems.splice(0));
afterEach(() => expect(problems).toEqual([]));

/** Opens what is one line until it is asked for, by its title. */
const unfold = async (title: string): Promise<void> => {
  await reach(title);
  await page.keyboard.press("Enter");
};

const open = async (section: string, theme = "light"): Promise<void> => {
  await page.goto(`${SITE}?theme=${theme}&section=${section}`);
  await page.waitForSelector("[role=tabpanel] :is(h2, li, label)");
};

/** What the page holds of the workbook, told by the page itself. */
const state = <T>(tell: string): Promise<T> =>
  page.evaluate<T>(`(() => { const { workbook, saved } = window.state; return (${tell}); })()`);

/** The name of what has the focus, as a screen reader says it. */
const focused = (): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement | null;
    if (!element || element.getAttribute("role") === "tabpanel") return "";
    const labels =
      element instanceof HTMLInputElement ||
      element instanceof HTMLSelectElement ||
      element instanceof HTMLTextAreaElement
        ? element.labels
        : null;
    return (element.getAttribute("aria-label") ?? labels?.[0]?.textContent ?? element.textContent).trim();
  });

/** Goes on by the Tab key until something of that name has the focus, and shows that it has. */
const reach = async (name: string | RegExp): Promise<void> => {
  const seen: string[] = [];
  for (let i = 0; i < 250; i++) {
    await page.keyboard.press("Tab");
    const here = await focused();
    seen.push(here.slice(0, 30));
    if (typeof name === "string" ? here === name : name.test(here)) {
      expect(await page.evaluate(() => document.activeElement?.matches(":focus-visible"))).toBe(true);
      return;
    }
  }
  throw new Error(`the Tab key does not reach ${String(name)}: ${seen.slice(0, 60).join(" | ")}`);
};

/** The words of the last message in a status region that come to match. */
const told = async (words: RegExp): Promise<void> => {
  await page.waitForFunction(
    ([source, flags]) =>
      [...document.querySelectorAll("[role=status]")].some((one) => new RegExp(source, flags).test(one.textContent)),
    [words.source, words.flags] as const,
    { timeout: 15_000 },
  );
};

const violations = async (): Promise<readonly string[]> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof import("axe-core") }).axe.run(document);
    return violations.map(
      ({ id, impact, nodes }) => `${id} (${impact}): ${nodes.map(({ html }) => html.slice(0, 120)).join(" ; ")}`,
    );
  });
};

const overflow = (): Promise<number> =>
  page.evaluate(() => {
    const panel = document.querySelector("[role=tabpanel]");
    return panel
      ? Math.max(panel.scrollWidth - panel.clientWidth, document.documentElement.scrollWidth - innerWidth)
      : -1;
  });

const READINGS = "Date,Time,Temp (C),RH\n03/04/2026,10:00,21.5,55\n03/04/2026,11:00,=1+1,56\n04/04/2026,11:00,20.5,57";

/** A place in the Alps, and what the pane answers for it. */
const fillPlace = async (): Promise<void> => {
  for (const [label, value] of [
    ["Latitude", "46.5"],
    ["Longitude", "9.8"],
    ["Lives from", "1200"],
    ["to, m", "1800"],
  ] as const) {
    await page.getByLabel(label).fill(value);
  }
  await page.waitForSelector("h2:text-is('The year at 1500 m')");
};

describe.each(themes)("%s", (theme) => {
  test.each(sections)(
    "axe finds nothing in %s, at 320 px and at twice the text",
    async (section) => {
      for (const width of [320, 160]) {
        // A page zoomed to 200 % has half the room.
        await page.setViewportSize({ width, height: 760 });
        await open(section, theme);
        if (section === "places") {
          await fillPlace();
          await page.click("summary:has-text('Pictures of this year')");
          await page.waitForSelector("img.yearPicture");
        }
        if (section === "readings") {
          await page.fill("textarea", READINGS);
          await page.waitForSelector("table");
        }
        if (section === "share") {
          await page.evaluate(() =>
            document.querySelectorAll("details.part").forEach((part) => ((part as HTMLDetailsElement).open = true)),
          );
        }
        expect(await violations()).toEqual([]);
        expect(await overflow()).toBe(0);
      }
      await page.setViewportSize({ width: 320, height: 760 });
    },
    60_000,
  );

  test("axe finds nothing in a function's entry, nor in a question and its answer", async () => {
    await open("functions", theme);
    await page.click("text=VIV.LAPSE");
    await page.waitForSelector("article");
    expect(await violations()).toEqual([]);
    await open("share", theme);
    await page.click("summary:text-is('Freeze and thaw')");
    await page.click("button:text-is('Freeze')");
    await page.waitForSelector("text=Go ahead");
    expect(await violations()).toEqual([]);
    await page.click("text=Go ahead");
    await told(/now fixed figures/);
    expect(await violations()).toEqual([]);
    expect(await overflow()).toBe(0);
  }, 60_000);
});

describe("by keyboard alone", () => {
  test("sections: one stop, arrows within, and the ends meet", async () => {
    await open("sheets");
    await reach("Sheets");
    for (const name of ["Places", "Functions", "Readings", "Share", "Care", "Sheets"]) {
      await page.keyboard.press("ArrowRight");
      expect(await focused()).toBe(name);
      expect(await page.getAttribute("[role=tab][aria-selected=true]", "id")).toContain(name.toLowerCase());
    }
    await page.keyboard.press("End");
    expect(await focused()).toBe("Care");
    await page.keyboard.press("Home");
    expect(await focused()).toBe("Sheets");
  });

  test("insert a sheet, then clear its example", async () => {
    await open("sheets");
    await reach("Insert Cooling plan");
    await page.keyboard.press("Enter");
    await told(/"Cooling plan" is in the workbook/);
    expect(await focused()).toBe("Insert Cooling plan");
    expect(await state<string[]>("workbook.sheets.map(({ name }) => name)")).toContain("Cooling plan");
    await reach("Clear the example");
    await page.keyboard.press("Enter");
    // The question takes the focus, and nothing has been done yet.
    await page.waitForSelector("text=Go ahead");
    expect(await focused()).toBe("Go ahead");
    const before = await state<number>("workbook.sheets.at(-1).contents.size");
    await page.keyboard.press("Enter");
    await told(/emptied\. The framed cells are yours/);
    expect(await focused()).toBe("Clear the example");
    expect(await state<number>("workbook.sheets.at(-1).contents.size")).toBeLessThan(before);
  }, 30_000);

  test("a question can be left, and nothing is done", async () => {
    await open("share");
    await unfold("Freeze and thaw");
    await reach("Freeze");
    const before = await state<unknown>("workbook.snapshot()");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await reach("Leave it");
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("Freeze");
    expect(await state<unknown>("workbook.snapshot()")).toEqual(before);
  });

  test("find a function, read it, insert its example, go back to where one was", async () => {
    await open("functions");
    await reach(/^Find a function/);
    await page.keyboard.type("year plan");
    await told(/^Found: .*sheet/);
    await reach(/^Year plan, a sheet/);
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.textContent.startsWith("Year plan"));
    await open("functions");
    await reach(/^Find a function/);
    await page.keyboard.type("altitude");
    await told(/^Found: /);
    await reach(/^VIV\.LAPSE\s/);
    await page.keyboard.press("Enter");
    await page.waitForSelector("article");
    await page.evaluate("window.state.workbook.selected = { sheet: 'Sheet1', row: 5, column: 5 }");
    await reach(/^Insert at the selected cell/);
    await page.keyboard.press("Enter");
    await told(/stands in Sheet1!F6/);
    expect(await state<unknown>("workbook.sheets[0].contents.get('5,5')")).toEqual({
      formula: "=VIV.LAPSE(24,300,1400)",
    });
    // Over something: asked first.
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=will stand in its place");
    expect(await focused()).toBe("Go ahead");
    await page.keyboard.press("Enter");
    await told(/stands in Sheet1!F6/);
    await page.keyboard.down("Shift");
    await reach("All functions");
    await page.keyboard.up("Shift");
    await page.keyboard.press("Enter");
    expect(await focused()).toMatch(/^VIV\.LAPSE/);
  }, 30_000);

  test("a column for the keeper's own table: guessed, shown, written", async () => {
    await open("functions");
    await page.evaluate(`(() => {
      const { workbook } = window.state;
      workbook.put("Mine", [["Weight (g)", "Mouse (g)"], [240, 18], [300, null]]);
      workbook.selected = { sheet: "Mine", row: 1, column: 0 };
    })()`);
    await reach("Add a column to your own table");
    await page.keyboard.press("Enter");
    await told(/^"Mine", A1:B3: headings in row 1, 2 rows/);
    await page.selectOption("select", { label: "How large a meal was, as a share of the animal's mass" });
    await page.waitForSelector("text=7.5 %");
    await page.waitForSelector("text=row 3.");
    expect(await violations()).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await reach("Add the column");
    await page.keyboard.press("Enter");
    await told(/stands in Mine!C1:C3/);
    expect(await state<unknown>("workbook.sheets.find(({ name }) => name === 'Mine').contents.get('1,2')")).toEqual({
      formula: '=IF(OR(B2="",A2=""),"",VIV.PREYRATIO(B2,A2))',
    });
  }, 30_000);

  test("share: save a file, a picture, a shared copy, freeze, thaw, re-enter", async () => {
    await open("sheets");
    await reach("Insert Cooling plan");
    await page.keyboard.press("Enter");
    await told(/is in the workbook/);
    await page.evaluate("window.pane.openSection('share')");
    await page.waitForSelector("summary");
    await unfold("Save for others");
    await reach("Save for others");
    await page.keyboard.press("Enter");
    await told(/"Vivarium Almanac for others\.xlsx" is saved/);
    await unfold("Shared copy");
    await reach("Shared copy");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await page.keyboard.press("Enter");
    await told(/Copied to "Sheet1 \(2\)"/);
    await unfold("Freeze and thaw");
    await reach("Freeze");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await page.keyboard.press("Enter");
    await told(/now fixed figures/);
    await reach("Thaw");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await page.keyboard.press("Enter");
    await told(/formulas? (is|are) back/);
    await unfold("A picture or a page, for a post");
    for (const [kind, keys] of [
      ["png", []],
      ["svg", ["ArrowDown"]],
    ] as const) {
      await page.evaluate("document.activeElement.blur()");
      await reach("As");
      for (const key of keys) await page.keyboard.press(key);
      await reach("Save picture");
      await page.keyboard.press("Enter");
      await told(new RegExp(`\\.${kind}" is saved`));
    }
    await unfold("Formulas that show #NAME?");
    await reach("Re-enter formulas");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await page.keyboard.press("Enter");
    await told(/entered again/);
    const saved = await state<[string, string, string][]>(
      "saved.map(({ name, type, bytes }) => [name.split('.').at(-1), type, typeof bytes === 'string' ? bytes.slice(0, 4) : String.fromCharCode(...bytes.slice(1, 4))])",
    );
    expect(saved.map(([, type, start]) => [type.split("/").at(-1)?.split(".").at(-1), start])).toEqual([
      ["sheet", "K\u0003\u0004"],
      ["png", "PNG"],
      ["svg+xml", "<svg"],
    ]);
  }, 60_000);

  test("chosen sheets alone", async () => {
    await open("share");
    await reach(/^All sheets/);
    await page.keyboard.press("Space");
    await reach("Juniper's log");
    await page.keyboard.press("Space");
    await unfold("Save for others");
    await reach("Save for others");
    await page.keyboard.press("Enter");
    await told(/"Sheet1\.xlsx" is saved/);
    expect(await state<unknown>("workbook.saved")).toEqual([["Sheet1"]]);
  });

  test("places: the year is saved as a picture, and a place put aside stands beside another", async () => {
    await open("places");
    await fillPlace();
    await page.click("summary:has-text('Pictures of this year')");
    await page.getByLabel("What to call the place").fill("An invented valley");
    await page.getByRole("button", { name: "Put this place aside" }).click();
    await page.getByLabel("Latitude").fill("-33");
    await page.getByLabel("Longitude").fill("-70");
    await page.getByLabel("What to call the place").fill("");
    await page
      .getByLabel("Picture", { exact: true })
      .selectOption({ label: "Beside An invented valley, 1500 m, estimated from the stations around" });
    await page.getByLabel("As", { exact: true }).selectOption({ label: "SVG, for print" });
    await page.getByLabel("Paper").selectOption({ label: "Dark" });
    await page.waitForFunction(() =>
      /lives: .* valley: /.test(document.querySelector("img.yearPicture")?.getAttribute("alt") ?? ""),
    );
    await page.getByRole("button", { name: "Save picture" }).click();
    await told(/^.*Its caption: Where the animal lives and An invented valley\. /);
    const { name, text } = await state<{ name: string; text: string }>(
      `{ name: saved.at(-1).name, text: String(saved.at(-1).bytes) }`,
    );
    expect(name).toBe("Where the animal lives and An invented valley - pair.svg");
    for (const words of [
      "days with lows",
      "10 °C",
      "Datenbasis: Deutscher",
      "An estimate for open ground",
      'fill="#292929"',
    ])
      expect(text).toContain(words);
    // July stands first in the north, January in the south.
    const months = [...text.matchAll(/>([JFMASOND])</g)].map(([, letter]) => letter).join("");
    expect(months).toBe("JFMAMJJASONDJASONDJFMAMJ");
  });

  test("places: typed, answered, what is wrong in words, and kept while another section is looked at", async () => {
    await open("places");
    await reach(/^Latitude/);
    await page.keyboard.type("46,5");
    await reach(/^Longitude/);
    await page.keyboard.type("9.8 E");
    await reach(/^Lives from/);
    await page.keyboard.type("1200");
    await told(/Still needed: the elevations between which the animal lives/);
    await reach("to, m");
    await page.keyboard.type("1800");
    await page.waitForSelector("h2:text-is('The year at 1500 m')");
    // The lines are those of VIV.STATIONS(46.5,9.8,1200,1800), the note that of VIV.SITENOTE(46.5,9.8,1500).
    expect(await page.textContent(".stations > li")).toMatch(
      /^St\. Valentino alla Muta, Italy1461 m; 63 km north-east\. In the band; near\.CLIMAT reports 2003-2021/,
    );
    expect(await page.textContent("h3:text-is('How sure it is') + p")).toMatch(/^Estimated from 24 weather stations/);
    await reach("Insert both sheets");
    await page.keyboard.press("Enter");
    await told(/"Native climate" and "Station shortlist" are in the workbook, for 46\.50° N, 9\.80° E at 1500 m/);
    await page.getByLabel("to, m").fill("900");
    await page.waitForSelector("text=The band ends at 900 m, below its lower end at 1200 m: exchange the two.");
    expect(await page.$("h2:text-is('The year at 1500 m')")).toBeNull();
    await page.getByLabel("to, m").fill("1600");
    await page.getByLabel("Latitude").fill("0");
    await page.getByLabel("Longitude").fill("-140");
    await page.waitForSelector("text=/No estimate: .*(too few stations|km away)/");
    await page.evaluate("window.pane.openSection('care')");
    await page.evaluate("window.pane.openSection('places')");
    await page.waitForSelector("text=/No estimate/");
    expect(await page.inputValue("input >> nth=1")).toBe("-140");
  }, 30_000);

  test("the map: drawn, zoomed, the cross moved and picked by keys alone, and a tap picks", async () => {
    await open("places");
    await page.waitForSelector(".map canvas[width]");
    // Ground, sea and coast: a canvas that was not drawn holds one colour.
    const colours = (): Promise<number> =>
      page.evaluate(() => {
        const canvas = document.querySelector<HTMLCanvasElement>(".map canvas");
        const data = canvas?.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
        return new Set(new Uint32Array(Uint8Array.from(data).buffer)).size;
      });
    await page.waitForFunction(() => (document.querySelector<HTMLCanvasElement>(".map canvas")?.width ?? 0) > 400);
    for (let tries = 0; tries < 50 && (await colours()) < 50; tries++) await page.waitForTimeout(100);
    expect(await colours()).toBeGreaterThan(50);
    await fillPlace();
    await page.waitForSelector("text=/^Ground about \\d+ m on average over 37 km/");
    await page.getByLabel("Elevation for the year").focus();
    await reach("Map of stations");
    await page.keyboard.press("+");
    await told(/The map is 4\d\d km across/);
    await page.keyboard.press("Shift+ArrowRight");
    await told(/^46\.50° N, 10\.\d\d° E\. Ground about .*Best station/);
    expect(await page.inputValue("input >> nth=1")).toBe("9.8");
    await page.keyboard.press("Escape");
    await told(/Cross back at 46\.50° N, 9\.80° E/);
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Enter");
    await told(/^Picked: 46\.[5-9]\d° N, 9\.80° E/);
    expect(Number(await page.inputValue("input >> nth=0"))).toBeGreaterThan(46.5);
    await reach("Whole world");
    await page.keyboard.press("Enter");
    const box = await page.locator(".ground").boundingBox();
    if (!box) throw new Error("the map has no box");
    await page.mouse.click(box.x + 100, box.y + box.height / 2);
    await page.waitForSelector("text=In the sea, or on an island too small for this map.");
  }, 30_000);

  test("readings: pasted, asked for the order of the date, written", async () => {
    await open("readings");
    await reach("Or paste readings here");
    await page.keyboard.insertText(READINGS);
    await page.waitForSelector("table");
    await reach("Write to a new sheet");
    await page.keyboard.press("Enter");
    await told(/Say first in which order/);
    await page.evaluate("document.activeElement.blur()");
    await reach("Order of the date");
    await page.keyboard.press("ArrowDown");
    await page.waitForSelector("td:text-is('2026-04-03 10:00')");
    await reach("RH");
    await page.keyboard.press("Space");
    await page.waitForSelector("th:text-is('RH')");
    await reach("Write to a new sheet");
    await page.keyboard.press("Enter");
    await told(/3 readings on "Readings"\. .*1 row could not be read/);
    expect(
      await state<unknown>("['4,1', '5,1', '4,2'].map((key) => workbook.sheets.at(-1).contents.get(key))"),
    ).toEqual([21.5, "=1+1", 55]);
  }, 30_000);

  test("a file of 100 000 readings with bad rows, decimal commas and a formula among them", async () => {
    const rows = Array.from({ length: 100_000 }, (_, i) => {
      const moment = new Date(Date.UTC(2026, 0, 1, 0, i * 5)).toISOString().slice(0, 16).replace("T", " ");
      const figure = i % 10_000 === 77 ? "=1+1" : (8 + Math.sin(i / 100)).toFixed(2).replace(".", ",");
      return i % 20_000 === 3 ? `never;${figure}` : `${moment};${figure}`;
    });
    await open("readings");
    await page.setInputFiles("input[type=file]", {
      name: "box.csv",
      mimeType: "text/csv",
      buffer: Buffer.from(["Zeit;Temperatur (°C)", ...rows].join("\r\n")),
    });
    await page.waitForSelector("table");
    await reach("Write to a new sheet");
    await page.keyboard.press("Enter");
    // Five rows without a moment are left out; ten without a figure land as text. Row 1 of the file is its heading.
    await told(
      /99995 readings on "Readings"\. .*15 rows could not be read.*Row 5: time 'never'.*left out.*Row 79: temperature '=1\+1'.*kept/s,
    );
    expect(
      await state<unknown>("['4,0', '4,1', '80,1'].map((key) => workbook.sheets.at(-1).contents.get(key))"),
    ).toEqual([46_023, 8, "=1+1"]);
  }, 60_000);

  test("care: the probe", async () => {
    await open("care");
    await reach("Look at a blank cell");
    await page.keyboard.press("Enter");
    await told(/A blank is handed over as a blank/);
    expect(await state<number>("workbook.sheets.length")).toBe(2);
  });

  test("open a file of one's own: what could not be carried over is listed", async () => {
    await open("share");
    await page.setInputFiles("input[type=file]", {
      name: "My log.xlsx",
      mimeType: "application/octet-stream",
      buffer: Buffer.from("PK"),
    });
    await unfold("Open a file of yours");
    await reach("Open");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=What you have not saved as a file goes");
    await page.keyboard.press("Enter");
    await told(/"My log\.xlsx" is open.*The chart on its first sheet/);
  });

  test("what takes over a second shows how far it is, holds other actions, and can be cancelled", async () => {
    await open("share");
    await page.evaluate("window.state.slow = true");
    const before = await state<unknown>("workbook.snapshot()");
    await unfold("Formulas that show #NAME?");
    await reach("Re-enter formulas");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Go ahead");
    await page.keyboard.press("Enter");
    await page.waitForTimeout(300);
    expect(await page.getByRole("progressbar").count()).toBe(0);
    await page.getByRole("progressbar").waitFor();
    expect(await page.getAttribute("button:text-is('Freeze')", "aria-disabled")).toBe("true");
    await reach("Cancel");
    await page.keyboard.press("Enter");
    await told(/Cancelled\. Nothing was changed/);
    expect(await page.getByRole("progressbar").count()).toBe(0);
    expect(await state<unknown>("workbook.snapshot()")).toEqual(before);
  }, 30_000);
});

test("share: its parts stand apart, and all of it is on one screen until something is opened", async () => {
  await page.setViewportSize({ width: 400, height: 768 });
  await open("share");
  expect(await page.locator("h2").allTextContents()).toEqual(["Open and save", "Hand it on", "Repair"]);
  const heights = () =>
    page.evaluate(() => {
      const panel = document.querySelector("[role=tabpanel]") as Element;
      const parts = [...panel.querySelectorAll("details")].map((part) => part.clientHeight);
      return [panel.clientHeight, panel.scrollHeight, ...parts];
    });
  const [screen = 0, whole, ...shut] = await heights();
  expect(whole).toBeLessThanOrEqual(screen);
  // And so is whatever is opened.
  for (const summary of await page.locator("summary").all()) await summary.click();
  const [, , ...opened] = await heights();
  expect(opened.every((height, i) => height > (shut[i] ?? 0) && height < screen)).toBe(true);
  await page.setViewportSize({ width: 320, height: 760 });
});

test("the theme changes without a reload, and keeps what stands on the page", async () => {
  await open("functions");
  await page.fill("input[type=search]", "ramp");
  const colour = () => page.evaluate(() => getComputedStyle(document.querySelector("[role=tab]") as Element).color);
  const light = await colour();
  await page.evaluate("window.pane.setTheme('dark')");
  await page.waitForFunction(
    (was) => getComputedStyle(document.querySelector("[role=tab]") as Element).color !== was,
    light,
  );
  expect(await page.inputValue("input[type=search]")).toBe("ramp");
  await page.evaluate("window.pane.openSection('functions', 'RAMP')");
  await page.waitForSelector("article >> text=VIV.RAMP(");
});
