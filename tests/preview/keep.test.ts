import { keepWorkbook, type KeptBook, type Told } from "../../addin/preview/keep";
import { mannerNow, setManner } from "../../addin/preview/manner";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import type { Shelf } from "../../addin/preview/shelf";
import { watchChanges } from "../../addin/preview/unsaved";
import { perform } from "../../taskpane/actions/action";
import { discardKept, restoreKept } from "../../taskpane/actions/kept";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import type { Manner } from "../../taskpane/text/form";
import { openWorkbook } from "./engine";

jest.setTimeout(60_000);

/** A browser's storage with its locks, which pages share. What is put there is copied, as a browser does. */
const storage = () => {
  const places = new Map<string, { told: Told; book: KeptBook }>();
  const locks = new Set<string>();
  let [next, isFull] = [0, false];
  const page = (): Shelf & { readonly end: () => void } => {
    const own = new Set<string>();
    return {
      take: (id = String(next++)) => {
        if (locks.has(id)) return Promise.reject(new Error("another page has it"));
        locks.add(id);
        own.add(id);
        return Promise.resolve(id);
      },
      leave: (id) => {
        if (own.delete(id)) locks.delete(id);
      },
      put: (id, told, book) => {
        if (isFull) return Promise.reject(new Error("full"));
        places.set(id, structuredClone({ told, book }));
        return Promise.resolve();
      },
      get: (id) => Promise.resolve(places.get(id)?.book),
      remove: (id) => Promise.resolve(void places.delete(id)),
      list: () => Promise.resolve([...places].flatMap(([id, { told }]) => (locks.has(id) ? [] : [{ id, ...told }]))),
      end: () => own.forEach((id) => locks.delete(id)),
    };
  };
  return { page, fill: (full: boolean) => (isFull = full) };
};

const ends: (() => void)[] = [];
afterEach(() => ends.splice(0).forEach((end) => end()));

/** A page on a storage; `crash` ends it without a word. */
const load = async (from: ReturnType<typeof storage>) => {
  const { engine, close } = openWorkbook();
  const unsaved = watchChanges(engine);
  const workbook = new PreviewWorkbook(engine, undefined, unsaved.standing);
  const shelf = from.page();
  const keeping = await keepWorkbook(engine, workbook, unsaved, shelf);
  workbook.kept = keeping;
  keeping.begin();
  const crash = (): void => {
    shelf.end();
    close();
  };
  ends.push(close);
  return { workbook, keeping, crash, engine, unsaved };
};

const put = (workbook: PreviewWorkbook, content: string | number, row = 0) =>
  workbook.write([{ sheet: "Sheet1", row, column: 0, cells: [[content]] }]);
const firstCell = async (workbook: PreviewWorkbook) => (await workbook.read())[0]?.cells[0]?.[0]?.value;

test("what a page kept before it crashed comes back to the letter, and the page goes on in its place", async () => {
  const browser = storage();
  const first = await load(browser);
  const manner: Manner = { dateOrder: "dmy", decimal: "," };
  setManner(manner);
  await put(first.workbook, 16.5);
  await first.workbook.write([
    { sheet: "Sheet1", row: 1, column: 0, cells: [[{ formula: "=VIV.RAMP(DATE(2026,10,5),24,8,42)" }]] },
  ]);
  await first.workbook.insert([nativeClimate]);
  await first.workbook.show("Sheet1");
  const stood = await first.workbook.read();
  await first.keeping.now();
  first.crash();
  setManner({ dateOrder: "mdy", decimal: "." });

  const second = await load(browser);
  const [kept, ...others] = await second.keeping.list();
  expect(others).toEqual([]);
  expect(kept).toMatchObject({ title: "Vivarium Almanac", sheets: 2, saved: false });
  if (!kept) throw new Error("nothing kept");
  const asked = await perform(restoreKept, second.workbook, kept);
  if (asked.kind !== "ask") throw new Error(asked.kind);
  expect((await perform(restoreKept, second.workbook, kept, {}, asked.words)).kind).toBe("done");
  expect(await second.workbook.read()).toEqual(stood);
  expect((await second.workbook.selection()).sheet).toBe("Sheet1");
  expect(mannerNow()).toEqual(manner);
  expect(second.unsaved.isChanged()).toBe(true);
  second.engine.api.getActiveWorkbook()?.undo();
  expect(await second.workbook.sheetNames()).toEqual(["Sheet1"]);
  expect(mannerNow()).toEqual({ dateOrder: "mdy", decimal: "." });
  second.engine.api.getActiveWorkbook()?.redo();
  await put(second.workbook, 17);
  await second.keeping.now();
  second.crash();
  const third = await load(browser);
  const again = await third.keeping.list();
  expect(again.map(({ id }) => id)).toEqual([kept.id]);
  await third.keeping.restore(kept.id);
  expect(await firstCell(third.workbook)).toBe(17);
});

test("a page keeps by itself what changed, and nothing where nothing did", async () => {
  const browser = storage();
  const idle = await load(browser);
  await idle.keeping.now();
  idle.crash();
  const busy = await load(browser);
  await put(busy.workbook, 1);
  await new Promise((resolve) => setTimeout(resolve, 2_500));
  busy.crash();
  expect(await (await load(browser)).keeping.list()).toHaveLength(1);
});

test("pages side by side keep their own, and what one has open no other can take", async () => {
  const browser = storage();
  const [one, other] = [await load(browser), await load(browser)];
  await put(one.workbook, "one");
  await put(other.workbook, "other");
  await one.keeping.now();
  await other.keeping.now();
  const third = await load(browser);
  expect(await third.keeping.list()).toEqual([]);
  one.crash();
  const [kept] = await third.keeping.list();
  if (!kept) throw new Error("nothing kept");
  await put(third.workbook, "third");
  // What this page had itself stays behind for the next.
  await third.keeping.restore(kept.id);
  expect(await firstCell(third.workbook)).toBe("one");
  await expect(other.keeping.restore(kept.id)).rejects.toThrow("another page has it");
  await expect(other.keeping.discard(kept.id)).rejects.toThrow("another page has it");
  expect(await firstCell(other.workbook)).toBe("other");
  const [left, ...more] = await other.keeping.list();
  expect(more).toEqual([]);
  await other.keeping.restore(left?.id ?? "");
  expect(await firstCell(other.workbook)).toBe("third");
});

test("what is thrown away is gone; of what lies in files too only the latest is offered", async () => {
  const browser = storage();
  for (const content of ["a", "b", "c"]) {
    const page = await load(browser);
    await put(page.workbook, content);
    if (content !== "c") await page.workbook.save();
    await page.keeping.now();
    page.crash();
  }
  const page = await load(browser);
  const offered = await page.keeping.list();
  expect(offered.map(({ saved }) => saved)).toEqual([false, true]);
  const [lost] = offered;
  if (!lost) throw new Error("nothing kept");
  const asked = await perform(discardKept, page.workbook, lost);
  if (asked.kind !== "ask") throw new Error(asked.kind);
  expect(asked.words.text).toMatch(/"Vivarium Almanac", 1 sheet, changed .* not saved as a file/);
  await perform(discardKept, page.workbook, lost, {}, asked.words);
  const [kept, ...others] = await page.keeping.list();
  expect(others).toEqual([]);
  await page.keeping.restore(kept?.id ?? "");
  expect(await firstCell(page.workbook)).toBe("b");
});

test("half a step is not kept, and a storage that takes nothing is told of", async () => {
  const browser = storage();
  const page = await load(browser);
  const said = jest.spyOn(console, "warn").mockImplementation(() => undefined);
  browser.fill(true);
  await put(page.workbook, "whole");
  await page.keeping.now();
  expect(page.keeping.trouble()).toMatch(/keeps nothing/);
  expect(said).toHaveBeenCalledTimes(1);
  said.mockRestore();
  browser.fill(false);
  await page.keeping.now();
  expect(page.keeping.trouble()).toBeUndefined();
  await expect(
    page.workbook.asOne(async () => {
      await put(page.workbook, "half");
      await page.keeping.now();
      throw new Error("no more");
    }),
  ).rejects.toThrow("no more");
  page.crash();
  const next = await load(browser);
  const [kept] = await next.keeping.list();
  await next.keeping.restore(kept?.id ?? "");
  expect(await firstCell(next.workbook)).toBe("whole");
});
