import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { chromiumHere } from "./chromiumHere";
import type { Line, Table } from "./race";

const FOLDER = "dist";
const FUNCTIONS = `${FOLDER}/functions.js`;
const NETWORK = `${FOLDER}/network/stations.json`;
/** Scripts that a page asks for first, by the names that they have before their hash. */
const isFirst = (name: string): boolean => /^(functions|taskpane)\./.test(name);
const RUNS = 7;

/** What the functions script finds in a spreadsheet, as far as its start needs it. */
const HOST = `globalThis.CustomFunctions = { associate() {}, Error: class extends Error {} };
globalThis.Office = { onReady: () => new Promise(() => {}), actions: { associate() {} }, context: { requirements: { isSetSupported: () => true } } };`;

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] as number;

/** The bundler's start asks where the script came from. */
const FROM = `globalThis.document = { currentScript: { tagName: "SCRIPT", src: "https://almanac.invalid/functions.js" } };
globalThis.self = globalThis; globalThis.window = globalThis;`;

/** Milliseconds from the script's text to the end of its run, each in a process that has never seen it. */
const inNode = (): number => {
  const child = `${HOST} ${FROM} const { readFileSync } = require("node:fs"); const { Script } = require("node:vm");
    const text = readFileSync(${JSON.stringify(FUNCTIONS)}, "utf8"); const start = performance.now();
    new Script(text).runInThisContext(); console.log(performance.now() - start); process.exit(0);`;
  return median(
    Array.from({ length: RUNS }, () => Number(execFileSync(process.execPath, ["-e", child], { encoding: "utf8" }))),
  );
};

const inChromium = async (executablePath: string): Promise<number> => {
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  try {
    const script = readFileSync(FUNCTIONS, "utf8");
    const times: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const context = await browser.newContext();
      const page = await context.newPage();
      await page.evaluate(HOST);
      times.push(
        await page.evaluate(async (source) => {
          const element = document.createElement("script");
          element.src = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
          const start = performance.now();
          await new Promise((resolve, reject) => {
            element.onload = resolve;
            element.onerror = () => reject(new Error("the functions script did not start"));
            document.head.append(element);
          });
          return performance.now() - start;
        }, script),
      );
      await context.close();
    }
    return median(times);
  } finally {
    await browser.close();
  }
};

const sizeOf = (what: string, paths: readonly string[], name?: string): Line => {
  const files = paths.map((path) => readFileSync(path));
  const kilobytes = (sizes: readonly number[]): number => sizes.reduce((sum, size) => sum + size, 0) / 1000;
  const plain = kilobytes(files.map(({ length }) => length));
  const zipped = kilobytes(files.map((file) => gzipSync(file, { level: 9 }).length));
  const note = `${plain.toFixed(1)} kB, gzipped ${zipped.toFixed(1)} kB`;
  return { what, note, ...(name === undefined ? {} : { told: { [name]: zipped } }) };
};

export const tables = async (): Promise<Table[]> => {
  const title = "Start-up of the functions script, size of the bundles";
  if (!existsSync(FUNCTIONS)) {
    return [{ title, lines: [{ what: FUNCTIONS, missing: 'it is not built, "npm run build" does that' }] }];
  }
  const browser = chromiumHere();
  const scripts = readdirSync(FOLDER).filter((name) => name.endsWith(".js"));
  const pathsOf = (names: readonly string[]): readonly string[] => names.map((name) => `${FOLDER}/${name}`);
  const pane = scripts.filter((name) => name.startsWith("taskpane."));
  const others = scripts.filter((name) => !isFirst(name));
  return [
    {
      title,
      lines: [
        { what: "start-up in Node", milliseconds: inNode() },
        browser === undefined
          ? { what: "start-up in Chromium", missing: "no Chromium was found; CHROMIUM=path names one" }
          : { what: "start-up in Chromium", milliseconds: await inChromium(browser) },
        sizeOf(FUNCTIONS, [FUNCTIONS], "functions"),
        ...(pane.length > 0 ? [sizeOf(`${FOLDER}/taskpane.js`, pathsOf(pane), "pane")] : []),
        sizeOf(NETWORK, [NETWORK], "network"),
        ...(others.length > 0 ? [sizeOf(`${others.length} further parts, fetched when needed`, pathsOf(others))] : []),
      ],
    },
  ];
};
