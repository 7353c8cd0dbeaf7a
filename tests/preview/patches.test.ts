import { Workbook as Book } from "@cj-tech-master/excelts";
import { LocaleService } from "@univerjs/core";
import {
  CELL_INVERTED_INDEX_CACHE,
  ICalculateFormulaService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { compareAfresh, patch, takeBack, type Generator } from "../../addin/preview/patches";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import type { CellContent } from "../../taskpane/workbook";
import { openWorkbook, readSheet } from "./engine";

jest.setTimeout(60_000);

/** What patches of the engine are for: with each figures are right, and without it they are not. */
let open: ReturnType<typeof openWorkbook>;
beforeEach(() => (open = openWorkbook()));
afterEach(() => open.close());

const formula = (text: string): CellContent => ({ formula: text });
const put = async (row: number, column: number, cells: readonly (readonly CellContent[])[]): Promise<void> => {
  await open.workbook.write([{ sheet: "Sheet1", row, column, cells }]);
  // Without the patch nobody knows when the engine is done.
  await new Promise((resolve) => setTimeout(resolve, 300));
};
const at = async (address: string): Promise<unknown> => (await readSheet(open.workbook, "Sheet1")).at(address);
const injector = () => open.engine.univer.__getInjector();

/** What a scenario gives with the patch, and then without it. */
const withAndWithout = async <T extends object>(
  object: () => T,
  method: keyof T & string,
  scenario: () => Promise<unknown>,
): Promise<readonly [unknown, unknown]> => {
  const patched = await scenario();
  open.close();
  open = openWorkbook();
  takeBack(object(), method);
  return [patched, await scenario()];
};

test("execute: what reads a spill that reads a spill follows to the last", async () => {
  const [patched, own] = await withAndWithout(
    () => injector().get(ICalculateFormulaService),
    "execute",
    async () => {
      await put(0, 0, [[1]]);
      for (let i = 9; i >= 0; i--)
        await put(0, i + 1, [[formula(`=SEQUENCE(2,1,${i === 0 ? "A1" : `${"BCDEFGHIJK"[i - 1] ?? ""}2`})`)]]);
      await put(0, 0, [[100]]);
      return at("K2");
    },
  );
  expect(patched).toBe(110);
  expect(own).not.toBe(110);
});

test("setRuntimeData: no spill is cut off by a sheet's end", async () => {
  const [patched, own] = await withAndWithout(
    () => injector().get(IFormulaRuntimeService),
    "setRuntimeData",
    async () => {
      await put(1999, 0, [[20]]);
      await put(2499, 1, [[formula("=VIV.LAPSE(A1:A2300,500,1500)")]]);
      return at("B4499");
    },
  );
  expect(patched).toBe(13.5);
  expect(own).not.toBe(13.5);
});

test("_detectForcedRecalculationNode: a random number is drawn once for all rounds", async () => {
  const [patched, own] = await withAndWithout(
    () => injector().get(IFormulaDependencyGenerator) as unknown as Generator,
    "_detectForcedRecalculationNode",
    async () => {
      await put(0, 0, [[formula("=SEQUENCE(3,1,RAND())"), formula("=A2"), formula("=SEQUENCE(2,1,A2)")]]);
      let rounds = 0;
      const heard = injector()
        .get(ICalculateFormulaService)
        .executionCompleteListener$.subscribe(() => rounds++);
      await put(5, 5, [[1]]);
      heard.unsubscribe();
      return rounds;
    },
  );
  expect(own).toBeGreaterThan(patched as number);
});

test("t: a timer of the engine that fires after its end meets words, and no fault", async () => {
  const words = injector().get(LocaleService);
  open.close();
  expect(() => words.t("any.word")).not.toThrow();
  takeBack(words, "t");
  expect(() => words.t("any.word")).toThrow();
  open = openWorkbook();
  await open.workbook.read();
});

test("the index of compared cells is neither kept nor asked, by any engine", async () => {
  const scenario = async (): Promise<unknown> => {
    await put(0, 0, [
      [5, formula("=SEQUENCE(4,1,A1)"), formula("=COUNTIF(B1:B4,6)"), formula("=SUM((B1:B4=6)*1)")],
      [null, null, formula("=COUNTIF(B1:B4,106)"), formula("=SUM((B1:B4=106)*1)")],
    ]);
    await put(0, 0, [[105]]);
    return (await readSheet(open.workbook, "Sheet1")).block("C1:D2");
  };
  expect(await scenario()).toEqual([
    [0, 0],
    [1, 1],
  ]);
  const index = CELL_INVERTED_INDEX_CACHE;
  const held = () => {
    index.set("u", "s", 0, 6, 2);
    index.setContinueBuildingCache("u", "s", 0, 0, 3);
    return [index.getCellValuePositions("u", "s", 0)?.size, index.canUseCache("u", "s", 0, 0, 3).rowsInCache];
  };
  expect(held()).toEqual([undefined, []]);
  for (const method of ["canUseCache", "set", "setContinueBuildingCache"] as const) takeBack(index, method);
  try {
    expect(held()).toEqual([1, [[0, 3]]]);
  } finally {
    index.clear();
    compareAfresh();
  }
});

test("a name that comes to stand for other cells does so in a formula that was read before", async () => {
  const file = async (sheet: string, value: number): Promise<Uint8Array> => {
    const made = new Book();
    const log = made.addWorksheet(sheet);
    log.getCell("A1").value = value;
    log.getCell("A2").value = { formula: "warm+1" };
    made.definedNames.addFormula("warm", `${sheet}!$A$1`);
    return new Uint8Array(await made.xlsx.writeBuffer());
  };
  const workbook = new PreviewWorkbook(open.engine);
  await workbook.open("1.xlsx", await file("Log", 5));
  await workbook.open("2.xlsx", await file("Other", 7));
  await workbook.write([{ sheet: "Other", row: 4, column: 4, cells: [[formula("=warm+1")]] }]);
  const sheet = await readSheet(workbook, "Other");
  expect([sheet.at("A2"), sheet.at("E5")]).toEqual([8, 8]);
});

test("a member that is gone in another version of the engine is told of at once", () => {
  const engine = { calculate: 1 } as unknown as { calculate: () => number };
  expect(() => patch(engine, "calculate", (own) => own, "figures would be wrong")).toThrow(
    "the spreadsheet engine has no calculate any more: figures would be wrong",
  );
});
