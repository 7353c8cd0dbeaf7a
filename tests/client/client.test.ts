import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Download } from "playwright-core";
import type { Action } from "../../taskpane/actions/action";
import { discardKept, restoreKept } from "../../taskpane/actions/kept";
import { openFile } from "../../taskpane/actions/openFile";
import { saveYear } from "../../taskpane/actions/saveYear";
import { saveWorkbook } from "../../taskpane/actions/saveFile";
import { FakeExcel } from "../excel/fake";
import { sheets } from "../../taskpane/sheets/catalogue";
import { endBrowser, Host, LARGEST, startBrowser } from "./host";
import { press, turnTo } from "./pane";
import { insertion, steps, type Step } from "./steps";
import { directTwin, keepOnly, previewTwin, type Twin } from "./twins";

jest.setTimeout(process.env.CLIENT === "whole" ? 1_200_000 : 120_000);
beforeAll(startBrowser, 60_000);
afterAll(endBrowser);

/** Nothing was refused by the policy, nothing failed on the page, nothing was sent that Excel would not take. */
const expectSound = (host: Host): void => {
  expect(host.complaints).toEqual([]);
  expect(host.elsewhere).toEqual([]);
  expect(host.batches.faults).toEqual([]);
  expect(host.largest).toBeGreaterThan(10_000);
  expect(host.largest).toBeLessThan(LARGEST);
};

/** The first letters of a file: a ZIP archive (ECMA-376, part 2), a PNG. */
const STARTS: Readonly<Record<string, string>> = { xlsx: "PK", png: "\u0089PNG" };
const expectFile = async (download: Download | undefined): Promise<void> => {
  const ending = download?.suggestedFilename().split(".").at(-1) ?? "";
  const start = STARTS[ending] ?? "no such ending";
  const bytes = readFileSync((await download?.path()) ?? "");
  expect(bytes.subarray(0, start.length).toString("latin1")).toBe(start);
};

const play = async (host: Host, twin: Twin, step: Step, next: Step | undefined, says: boolean): Promise<void> => {
  const before = twin.excel.tabs.map(({ name }) => name);
  const download = step.saves ? host.page.waitForEvent("download") : undefined;
  const said = await step.through(host.page, twin);
  const told = await step.same(twin.workbook);
  if (says) expect([step.does, said]).toEqual([step.does, expect.stringContaining(told)]);
  await expectFileOf(step, download);
  if (!next?.early) await twin.settle();
  expect([step.does, (await twin.differences()).slice(0, 20)]).toEqual([step.does, []]);
  if (step.passes) await keepOnly(twin, before);
};
const expectFileOf = async (step: Step, download: Promise<Download> | undefined): Promise<void> => {
  if (step.saves) await expectFile(await download);
};

test("every action of the pane, through the platform's own client, does what it does without it", async () => {
  const twin = directTwin();
  const host = await Host.open(twin.excel);
  for (const [i, step] of steps.entries()) await play(host, twin, step, steps[i + 1], true);
  expectSound(host);
  await host.page.close();
});

test("what freezing leaves in Excel is what it leaves in the preview, and thawing gives it back", async () => {
  const twin = previewTwin();
  const host = await Host.open(twin.excel);
  for (const step of steps.filter(({ action }) => ["insert-sheet", "freeze", "thaw"].includes(action.key)))
    await play(host, twin, step, undefined, true);
  expectSound(host);
  await host.page.close();
  twin.close();
});

/** A problem's number in an answer, as the client's `CustomFunctionResultErrorCode` has it: #VALUE!, #N/A. */
const [VALUE, NOT_AVAILABLE] = [7, 1];

test("functions are called and ribbon buttons pressed through the client; each function is told once", async () => {
  const excel = new FakeExcel();
  excel.newest = 1.19;
  const host = await Host.open(excel);
  expect((await host.call("LAPSE", [[[24]], [[300]], [[1400]]])).slice(1, 3)).toEqual([
    true,
    [[expect.closeTo(16.85, 9)]],
  ]);
  // One answer that is an error fails with its words; among others it is an error object.
  const [, well, words, code] = await host.call("LAPSE", [[["warm"]], [[300]], [[1400]]]);
  expect([well, words, code]).toEqual([false, expect.stringContaining("warm"), VALUE]);
  const [, , blank] = await host.call("LAPSE", [[[24], [null]], [[300]], [[1400]]]);
  expect(blank).toEqual([[expect.closeTo(16.85, 9)], [expect.objectContaining({ type: "Error" })]]);
  // Dates come with their format.
  const [, , ramp] = await host.call("RAMP", [[[46300]], [[24]], [[8]], [[42]], null]);
  expect((ramp as unknown[][])[0]?.[0]).toEqual({ type: "Double", basicValue: 46300, numberFormat: "yyyy-mm-dd" });
  // What has to be fetched first is answered later: the network of stations, and a place that none speaks for.
  const [, , climate] = await host.call("SITECLIMATE", [[[46.5]], [[9.8]], [[1800]]]);
  expect(climate).toHaveLength(12);
  const [, , , far] = await host.call("SITECLIMATE", [[[0]], [[-140]], [[100]]]);
  expect(far).toBe(NOT_AVAILABLE);

  await host.ribbon("insertFeedingLog");
  expect(host.excel.tabs.map(({ name }) => name)).toEqual(["Sheet1", "Feeding log"]);
  expectSound(host);
  await host.page.close();
});

/** `npm run client` plays all of what the suite takes a sample of. */
const WHOLE = process.env.CLIENT === "whole";

/** Levels of the platform's API, from what the manifest asks for; the client knows each member's own level, and refuses. */
const levels = [1.12, 1.13, 1.14, 1.15, 1.16, 1.17, 1.18, 1.19];
test.each(WHOLE ? levels : [1.12, 1.19])("an Excel of level %d gets every sheet whole", async (level) => {
  const twin = directTwin();
  twin.excel.newest = level;
  // The package's script is older than the newest Excel: it has no notes.
  twin.excel.hasNotes = false;
  const host = await Host.open(twin.excel);
  for (const { name } of WHOLE ? sheets : sheets.slice(0, 3)) {
    const step = insertion(name);
    const said = await step.through(host.page, twin);
    expect(said).toContain(`"${name}" is in the workbook`);
    expect(said).not.toContain("without");
  }
  expectSound(host);
  await host.page.close();
});

test("an action that fails anywhere leaves the workbook as it was, through the client too", async () => {
  const { excel } = directTwin();
  const host = await Host.open(excel);
  await press(host.page, "Insert Weights");
  excel.recalculate();
  const state = (): string => JSON.stringify(excel.snapshot());
  const acts = [
    ["Sheets", "Insert Weights"],
    ["Sheets", "Clear all sheets"],
    ["Share", "Re-enter formulas"],
    ["Share", "Shared copy"],
  ] as const;
  let failures = 0;
  for (const [section, name] of acts) {
    await turnTo(host.page, section);
    const kept = structuredClone(excel.tabs);
    const before = state();
    const shown = excel.active;
    const from = excel.calls;
    await press(host.page, name);
    const calls = excel.calls - from;
    expect(calls).toBeGreaterThan(10);
    // At places spread over the whole of it, and at its very end.
    const places = WHOLE ? Array.from({ length: 40 }, (_, i) => i / 40) : [0.05, 0.6];
    for (const place of [...places, 1]) {
      excel.tabs = structuredClone(kept);
      excel.active = shown;
      excel.recalculate();
      await turnTo(host.page, "Care");
      await turnTo(host.page, section);
      await host.page.waitForTimeout(100);
      excel.failAt = excel.calls + Math.max(1, Math.round(place * calls));
      const said = await press(host.page, name);
      excel.failAt = undefined;
      if (!said.startsWith("×")) {
        // Done after all: what failed was an ornament, or a look at the list of sheets.
        expect(said).toMatch(/is in the workbook|emptied|entered again|Copied/);
        continue;
      }
      failures++;
      expect([name, place, state()]).toEqual([name, place, before]);
    }
    excel.tabs = structuredClone(kept);
    excel.active = shown;
    excel.recalculate();
  }
  expect(failures).toBeGreaterThan(3);
  expect(host.complaints).toEqual([]);
  expect(host.batches.faults).toEqual([]);
  await host.page.close();
});

test("Excel for Mac, which takes no file from a page, is not told that one is saved", async () => {
  const host = await Host.open(new FakeExcel(), { platform: "Mac" });
  await press(host.page, "Insert Weights");
  await turnTo(host.page, "Share");
  await host.page.getByLabel("Picture").waitFor();
  for (const name of ["Save for others", "Save a working copy", "Save picture"]) {
    expect(await press(host.page, name)).toContain("Excel for Mac takes no file from an add-in.");
  }
  expectSound(host);
  await host.page.close();
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
