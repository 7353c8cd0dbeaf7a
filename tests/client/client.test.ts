import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Download } from "playwright-core";
import type { Action } from "../../taskpane/actions/action";
import { discardKept, restoreKept } from "../../taskpane/actions/kept";
import { openFile } from "../../taskpane/actions/openFile";
import { saveWorkbook } from "../../taskpane/actions/saveFile";
import { FakeExcel } from "../excel/fake";
import { endBrowser, Host, LARGEST, startBrowser } from "./host";
import { press, turnTo } from "./pane";
import { steps, type Step } from "./steps";
import { directTwin, keepOnly, previewTwin, type Twin } from "./twins";

jest.setTimeout(120_000);
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
  /** Only where the host is a page of ours. */
  const elsewhere: readonly Action<never>[] = [saveWorkbook, openFile, restoreKept, discardKept];
  const played = [...steps.map(({ action }) => action), ...elsewhere].map(({ key }) => key);
  expect([...new Set(played)].sort()).toEqual([...exported].sort());
});
