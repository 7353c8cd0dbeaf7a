import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { plainFileSheet } from "../../addin/file/plain";
import { writeXlsx } from "../../addin/file/write";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import type { Workbook } from "../../taskpane/workbook";
import { addressOf, PLACE } from "../pictures/address";
import { chromiumHere } from "./chromiumHere";
import type { Line, Table } from "./race";

declare global {
  interface Window {
    workbook: Workbook;
  }
}

/** The built preview in a page: a few seconds each, on the clock, once; what a keeper waits for. */
const BUILT = "dist/preview";
const ROWS = 20_000;
const MEGABYTE = 1e6;
/** A sheet of figures is worked out when so many cells hold one. */
const WORKED_OUT = 100;
/** Runs with the preview served and a browser, and ends both. */
const served = async (executablePath: string, use: (browser: Browser, address: string) => Promise<Line[]>) => {
  const server = spawn(process.execPath, ["addin/preview/serve.mjs", BUILT], { stdio: ["ignore", "pipe", "inherit"] });
  try {
    const address = await addressOf(server);
    const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
    try {
      return await use(browser, address);
    } finally {
      await browser.close();
    }
  } finally {
    server.kill();
  }
};

/** Seconds until it is done. */
const secondsOf = async (act: () => Promise<unknown>): Promise<number> => {
  const start = performance.now();
  await act();
  return (performance.now() - start) / 1000;
};

/** Waits until the last sheet of that name, of as many as are wanted, holds figures. */
const workedOut = (page: Page, name: string, wanted = 1): Promise<unknown> =>
  page.waitForFunction(
    async ([begins, many, least]) => {
      const names = (await window.workbook.sheetNames()).filter((one) => one.startsWith(begins));
      if (names.length < many) return false;
      const all = await window.workbook.read(names);
      return all.every(({ cells }) => cells.flat().filter(({ value }) => typeof value === "number").length > least);
    },
    [name, wanted, WORKED_OUT] as const,
    { polling: 100, timeout: 120_000 },
  );

/** Bytes that scripts of the page hold. */
const held = async (page: Page): Promise<number> => {
  const session = await page.context().newCDPSession(page);
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  await session.detach();
  return usedSize;
};

const log = (): Promise<Uint8Array> =>
  writeXlsx([
    plainFileSheet({
      name: "Log",
      cells: [
        ["Time", "Temperature", "Humidity"],
        ...Array.from({ length: ROWS }, (_, i) => [
          46_000 + i / 144,
          Math.round(80 + 20 * Math.sin(i / 23)) / 10,
          60 + (i % 17),
        ]),
      ],
    }),
  ]);

const measured = async (browser: Browser, address: string): Promise<Line[]> => {
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
  const first = await secondsOf(async () => {
    await page.goto(address);
    await page.waitForSelector("body.ready", { timeout: 120_000 });
    await workedOut(page, nativeClimate.name);
  });
  const start = (await held(page)) / MEGABYTE;

  const map = await secondsOf(async () => {
    await page.getByRole("tab", { name: "Places" }).click();
    // A canvas that was not drawn holds one colour.
    await page.waitForFunction(() => {
      const canvas = document.querySelector<HTMLCanvasElement>(".map canvas");
      if (!canvas || canvas.width === 0 || canvas.height === 0) return false;
      const data = canvas.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      return new Set(new Uint32Array(Uint8Array.from(data).buffer)).size > 50;
    });
  });
  const place = await secondsOf(async () => {
    for (const [label, words] of PLACE) await page.getByLabel(label).first().fill(words);
    await page.getByRole("button", { name: "Insert both sheets" }).click();
    await workedOut(page, nativeClimate.name, 2);
  });

  const bytes = Buffer.from(await log()).toString("base64");
  const times = await page.evaluate(async (file) => {
    const { workbook } = window;
    const seconds = async <T>(act: () => Promise<T>): Promise<readonly [number, T]> => {
      const from = performance.now();
      const answer = await act();
      return [(performance.now() - from) / 1000, answer];
    };
    const content = Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0));
    const [open] = await seconds(() => (workbook.open as NonNullable<Workbook["open"]>)("log.xlsx", content));
    const [save, saved] = await seconds(() => (workbook.save as NonNullable<Workbook["save"]>)());
    const [sheet] = await workbook.read();
    return { open, save, length: saved.length, rows: sheet?.cells.length };
  }, bytes);
  if (times.rows !== ROWS + 1) throw new Error(`the page opened ${times.rows} rows and not ${ROWS + 1}`);
  const withFile = (await held(page)) / MEGABYTE;
  const file = times.length / 1000;
  const line = (what: string, seconds: number, told: Readonly<Record<string, number>>, note = ""): Line => ({
    what,
    milliseconds: 1000 * seconds,
    told,
    ...(note === "" ? {} : { note }),
  });
  return [
    line("first figures, after loading", first, { first, start }, `${start.toFixed(0)} MB held`),
    line("the map, drawn for the first time", map, { map }),
    line("a place that is typed in, until its sheet is worked out", place, { place }),
    line(
      `a file of ${ROWS} rows opened`,
      times.open,
      { rows: ROWS, open: times.open, held: withFile },
      `${withFile.toFixed(0)} MB held`,
    ),
    line("the same file saved", times.save, { save: times.save, file }, `${file.toFixed(0)} kB`),
  ];
};

export const tables = async (): Promise<Table[]> => {
  const table = { title: "The preview in a page: each once, on the clock", run: "page" };
  const executable = chromiumHere();
  if (!existsSync(`${BUILT}/index.html`)) {
    return [{ ...table, lines: [{ what: BUILT, missing: 'it is not built, "npm run build" does that' }] }];
  }
  if (executable === undefined) {
    return [{ ...table, lines: [{ what: "a page", missing: "no Chromium was found; CHROMIUM=path names one" }] }];
  }
  return [{ ...table, lines: await served(executable, measured) }];
};
