import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Download } from "playwright-core";
import { waitFor } from "../../addin/fetch";
import { readNetworkBy } from "../../addin/network/load";
import { readNetworkFromDisk } from "../../addin/network/readFromDisk";
import { catalogue } from "../../functions/catalogue";
import type { Action } from "../../taskpane/actions/action";
import { discardKept, restoreKept } from "../../taskpane/actions/kept";
import { openFile } from "../../taskpane/actions/openFile";
import { saveYear } from "../../taskpane/actions/saveYear";
import { saveWorkbook } from "../../taskpane/actions/saveFile";
import { argumentsOf, expectAnswer } from "../excel/examples";
import { FakeExcel } from "../excel/fake";
import { sheets } from "../../taskpane/sheets/catalogue";
import { failing, held, heldBare, type Place } from "./failures";
import { endBrowser, Host, LARGEST, startBrowser } from "./host";
import { press, turnTo } from "./pane";
import { insertion, last, steps, upTo, type Step } from "./steps";
import { directTwin, keepOnly, previewTwin, type Twin } from "./twins";

jest.setTimeout(process.env.CLIENT === undefined ? 300_000 : 3_600_000);
beforeAll(startBrowser, 60_000);
afterAll(endBrowser);

/** The largest request of all, in characters. */
let largest = 0;

/** Nothing was refused by the policy, nothing failed on the page, nothing was sent that Excel would not take. */
const expectSound = (host: Host): void => {
  expect(host.complaints).toEqual([]);
  expect(host.elsewhere).toEqual([]);
  expect(host.batches.faults).toEqual([]);
  expect(host.largest).toBeGreaterThan(10_000);
  expect(host.largest).toBeLessThan(LARGEST);
  largest = Math.max(largest, host.largest);
};

/** The first letters of a file: a ZIP archive (ECMA-376, part 2), a PNG. */
const STARTS: Readonly<Record<string, string>> = { xlsx: "PK", png: "\u0089PNG" };
const expectFile = async (download: Download | undefined): Promise<void> => {
  const ending = download?.suggestedFilename().split(".").at(-1) ?? "";
  const start = STARTS[ending] ?? "no such ending";
  const bytes = readFileSync((await download?.path()) ?? "");
  expect(bytes.subarray(0, start.length).toString("latin1")).toBe(start);
};

/** What was found wrong, and how often the step was not done, of all places at which it was made to fail. */
interface Found {
  readonly faults: string[];
  failures: number;
}

/** Plays a step on both sides; then again at each of these places of its work, where Excel fails. */
const play = async (
  host: Host,
  twin: Twin,
  step: Step,
  next?: Step,
  places: readonly Place[] = [],
  found: Found = { faults: [], failures: 0 },
): Promise<void> => {
  const { page, excel } = host;
  const names = excel.tabs.map(({ name }) => name);
  const back = twin.kept();
  await upTo(step, page, excel);
  const download = step.saves ? page.waitForEvent("download") : undefined;
  const from = excel.calls;
  const said = await last(step, page);
  const undisturbed = { calls: excel.calls - from, workbook: held(excel), withoutOrnaments: heldBare(excel) };
  const told = await step.same(twin.workbook);
  expect([step.does, said]).toEqual([step.does, expect.stringContaining(told)]);
  if (download) await expectFile(await download);
  if (!next?.early) await twin.settle();
  expect([step.does, (await twin.differences()).slice(0, 20)]).toEqual([step.does, []]);

  const on = twin.kept();
  for (const place of places) {
    back();
    const { failed, fault } = await failing(host, step, place, { ...undisturbed, said: told });
    if (failed) found.failures++;
    if (fault !== undefined) found.faults.push(fault);
  }
  on();
  if (step.passes) await keepOnly(twin, names);
};

/** `npm run client` plays all of what the suite takes a sample of; `npm run client -- freeze thaw` these actions' failures alone. */
const { CLIENT } = process.env;
const WHOLE = CLIENT === "whole";
const everywhere: readonly Place[] = [
  ...Array.from({ length: 41 }, (_, i) => ({ share: i / 40 })),
  { share: 0.7, forGood: true },
];

/** In the suite one place a step, spread over the later part of their work, in which the workbook changes. */
const placesOf = ({ action: { key } }: Step, i: number): readonly Place[] => {
  if (CLIENT === undefined) return [{ share: 0.4 + 0.6 * ((i * 0.618) % 1) }];
  return WHOLE || CLIENT.split(" ").includes(key) ? everywhere : [];
};

test("every action of the pane, through the platform's own client, does what it does without it, and all or nothing", async () => {
  const twin = directTwin();
  const host = await Host.open(twin.excel);
  const found: Found = { faults: [], failures: 0 };
  for (const [i, step] of steps.entries()) await play(host, twin, step, steps[i + 1], placesOf(step, i), found);
  expect(found.faults).toEqual([]);
  expect(found.failures).toBeGreaterThan(CLIENT === undefined || WHOLE ? steps.length / 2 : 0);
  expectSound(host);
  await host.page.close();
});

test("what freezing leaves in Excel is what it leaves in the preview, and thawing gives it back", async () => {
  const twin = previewTwin();
  const host = await Host.open(twin.excel);
  for (const step of steps.filter(({ action }) => ["insert-sheet", "freeze", "thaw"].includes(action.key)))
    await play(host, twin, step);
  expectSound(host);
  await host.page.close();
  twin.close();
});

/** A problem's number in an answer, as the client's `CustomFunctionResultErrorCode` has it: #VALUE!, #N/A. */
const [VALUE, NOT_AVAILABLE] = [7, 1];
/** What a cell may hold in place of a value (@types/office-js, ErrorCellValueType), as Excel hands it to a function. */
const ERRORS = [
  "#BLOCKED!",
  "#BUSY!",
  "#CALC!",
  "#CONNECT!",
  "#DIV/0!",
  "#FIELD!",
  "#NAME?",
  "#NULL!",
  "#NUM!",
  "#REF!",
  "#SPILL!",
  "#VALUE!",
];
const errorCell = (code: string) => [[{ value: JSON.stringify({ type: "CustomFunctionError", code }) }]];

test("every function answers through the client, sheets go in and ribbon buttons are pressed in the newest Excel", async () => {
  const twin = directTwin();
  const { excel } = twin;
  excel.newest = 1.19;
  // The package's script is older than the newest Excel: it has no notes.
  excel.hasNotes = false;
  const host = await Host.open(excel);
  readNetworkBy(readNetworkFromDisk);
  for (const definition of catalogue) await waitFor(definition);
  // All at once, as a sheet asks for them: some have to fetch something first, and are answered later than those behind them.
  await Promise.all(
    catalogue.flatMap((definition) =>
      definition.examples.map(async (example) => {
        const [, well, value, errorCode] = await host.call(definition.name, argumentsOf(definition, example));
        expectAnswer(definition, example, { failed: !well, value, errorCode }, "Double");
      }),
    ),
  );
  // One answer that is a problem fails with its words; among others it is an error object that carries them.
  await Promise.all(
    catalogue.map(async ({ name, parameters }) => {
      const given = Object.keys(parameters);
      if (given.length === 0) return;
      const [, well, value, code] = await host.call(name, [errorCell("#DIV/0!"), ...given.slice(1).map(() => null)]);
      const words = well ? (value as { message?: unknown }[][]).flat().find(({ message }) => message)?.message : value;
      expect([name, words]).toEqual([name, expect.stringMatching(new RegExp(`\\b(${given.join("|")}) (holds|is) `))]);
      if (!well) expect([VALUE, NOT_AVAILABLE]).toContain(code);
    }),
  );
  const at = async (cell: unknown): Promise<unknown> => {
    const [, well, words, code] = await host.call("LAPSE", [cell, [[300]], [[1400]]]);
    return [well, words, code];
  };
  expect(await Promise.all([[["warm"]], [[null]], ...ERRORS.map(errorCell), errorCell("#N/A")].map(at))).toEqual([
    [false, expect.stringContaining("warm"), VALUE],
    [false, "temperature is blank", NOT_AVAILABLE],
    ...ERRORS.map((error) => [false, `temperature holds the error ${error}`, VALUE]),
    [false, "temperature holds the error #N/A", NOT_AVAILABLE],
  ]);
  const [, , blank] = await host.call("LAPSE", [[[24], [null], ["warm"]], [[300]], [[1400]]]);
  const problem = (basicValue: string) => [expect.objectContaining({ type: "Error", basicValue }) as unknown];
  expect(blank).toEqual([[expect.closeTo(16.85, 9)], problem("#N/A"), problem("#VALUE!")]);
  const [, , , far] = await host.call("SITECLIMATE", [[[0]], [[-140]], [[100]]]);
  expect(far).toBe(NOT_AVAILABLE);

  await host.ribbon("insertFeedingLog");
  expect(excel.tabs.map(({ name }) => name)).toEqual(["Sheet1", "Feeding log"]);
  await insertAll(host, sheets.slice(0, 3));
  expectSound(host);
  await host.page.close();
});

/** Inserts sheets, of which nothing may be missing. */
const insertAll = async ({ page, excel }: Host, all: typeof sheets): Promise<void> => {
  for (const { name } of all) {
    const step = insertion(name);
    await upTo(step, page, excel);
    const said = await last(step, page);
    expect(said).toContain(`is in the workbook`);
    expect(said).not.toContain("without");
  }
};

/** Levels of the platform's API, from what the manifest asks for; the client knows each member's own level, and refuses. */
const levels = [1.12, 1.13, 1.14, 1.15, 1.16, 1.17, 1.18, 1.19];
if (WHOLE)
  test.each(levels)("an Excel of level %d gets every sheet whole", async (level) => {
    const { excel } = directTwin();
    excel.newest = level;
    excel.hasNotes = false;
    const host = await Host.open(excel);
    await insertAll(host, sheets);
    expectSound(host);
    await host.page.close();
  });

test("Excel for Mac, which takes no file from a page, is not told that one is saved: a picture for print is text to copy", async () => {
  const host = await Host.open(new FakeExcel(), { platform: "Mac" });
  const { page } = host;
  await press(page, "Insert Weights");
  await turnTo(page, "Share");
  await page.getByLabel("Picture").waitFor();
  for (const name of ["Save for others", "Save a working copy", "Save picture"]) {
    expect(await press(page, name)).toContain("Excel for Mac takes no file from an add-in.");
  }
  await page.getByLabel("As", { exact: true }).selectOption({ label: "SVG, for print" });
  expect(await press(page, "Save picture")).toContain("Copy the text below");
  const box = page.getByRole("textbox", { name: /^Text of "Weights.*\.svg"$/ });
  await box.focus();
  const chosen = await box.evaluate((area: HTMLTextAreaElement) => {
    const { value, selectionStart, selectionEnd, readOnly } = area;
    const picture = new DOMParser().parseFromString(value.slice(selectionStart, selectionEnd), "image/svg+xml");
    return { readOnly, root: picture.documentElement.localName, words: picture.documentElement.textContent };
  });
  expect(chosen).toEqual({ readOnly: true, root: "svg", words: expect.stringContaining("invented animals") as string });
  expect(host.saved).toBe(0);
  expectSound(host);
  await page.close();
});

test("no action is left out", () => {
  const folder = join(__dirname, "..", "..", "taskpane", "actions");
  const exported = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .flatMap((name) => [
      ...readFileSync(join(folder, name), "utf8").matchAll(
        /^export const \w+: Action(?:<.*>)? = \{\s*key: "([^"]+)"/gm,
      ),
    ])
    .map(([, key]) => key);
  /** Only where the host is a page of ours; or nothing is asked of the workbook. */
  const elsewhere: readonly Action<never>[] = [saveWorkbook, openFile, restoreKept, discardKept, saveYear];
  const played = [...steps.map(({ action }) => action), ...elsewhere].map(({ key }) => key);
  expect([...new Set(played)].sort()).toEqual([...exported].sort());
});

if (WHOLE)
  afterAll(() => {
    const reports = join(__dirname, "..", "..", "reports");
    mkdirSync(reports, { recursive: true });
    writeFileSync(join(reports, "client.json"), JSON.stringify({ largest: largest / 1e6, places: everywhere.length }));
  });
