import { Workbook as Book } from "@cj-tech-master/excelts";
import { LocaleService } from "@univerjs/core";
import {
  BaseReferenceObject,
  CELL_INVERTED_INDEX_CACHE,
  FormulaDependencyTreeVirtual,
  ICalculateFormulaService,
  IDependencyManagerService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import {
  compareAfresh,
  fillNoCells,
  patch,
  takeBack,
  type Generator,
  type Index,
  type Layout,
  type Reference,
} from "../../addin/preview/patches";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import type { CellContent } from "../../taskpane/workbook";
import { openWorkbook, readSheet } from "./engine";

jest.setTimeout(60_000);

type Method = (...given: never[]) => unknown;

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

test("toRTreeItem: a colour rule fills no cells, so that what is written at once is worked out in its order", async () => {
  const rows = Array.from({ length: 12 }, (_, i) => i + 1);
  try {
    const [patched, own] = await withAndWithout(
      () => FormulaDependencyTreeVirtual.prototype,
      "toRTreeItem",
      async () => {
        const sheet = open.engine.api.getActiveWorkbook()?.getActiveSheet();
        if (!sheet) throw new Error("no sheet");
        // It reads sums of the cells that the engine takes it to fill.
        const rule = sheet
          .newConditionalFormattingRule()
          .whenFormulaSatisfied("=$E1>5")
          .setBackground("#ff0000")
          .setRanges([sheet.getRange("A1:C12").getRange()])
          .build();
        sheet.addConditionalFormattingRule(rule);
        await put(
          0,
          1,
          rows.map((row) => [row, null, formula(`=SUM(B$1:B$12)+${row}`), formula(`=D$1+D$2+B${row}`)]),
        );
        return Promise.all(rows.map((row) => at(`E${row}`)));
      },
    );
    expect(patched).toEqual(rows.map((row) => 79 + 80 + row));
    expect(own).not.toEqual(patched);
  } finally {
    fillNoCells();
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

test("addDependencyRTreeCache: what formulas name is entered once, however often they are worked out", async () => {
  const held = () => {
    const index = injector().get(IDependencyManagerService) as unknown as {
      _dependencyRTreeCache: { toJSON(): object };
    };
    return JSON.stringify(index._dependencyRTreeCache.toJSON()).length;
  };
  const [patched, own] = await withAndWithout(
    () => injector().get(IDependencyManagerService) as unknown as Index,
    "addDependencyRTreeCache",
    async () => {
      await put(0, 0, [[1, formula("=SUM(A1:A9)"), formula("=COUNT(A1:B9)")]]);
      const before = held();
      for (const value of [2, 3, 4]) await put(0, 0, [[value]]);
      expect([await at("B1"), await at("C1")]).toEqual([4, 2]);
      return held() / before;
    },
  );
  expect(patched).toBe(1);
  expect(own).toBeGreaterThan(2);
});

test("_getRangeListByNode: the cells that a formula names are found once, and anew where sheets come, go and grow", async () => {
  const scenario = async (): Promise<unknown> => {
    const { workbook } = open;
    const seen: unknown[] = [];
    const look = async () => seen.push((await readSheet(workbook, "Sheet1")).block("B1:D2"));
    // The same words name other cells on other sheets; the sheet Later comes, grows and goes; A2500 is beyond the sheet at first.
    await put(0, 0, [
      [1, formula("=SUM(A:A)"), formula("=SUM(Later!A1:A3)"), formula("=A2500")],
      [2, formula("=SUM(A1:INDEX(A1:A9,A1))"), formula("=SUM(A1:A2)")],
    ]);
    const later = await workbook.add("Later", [
      [10, null],
      [20, null],
    ]);
    await workbook.write([{ sheet: later, row: 0, column: 2, cells: [[formula("=SUM(A1:A2)")]] }]);
    await look();
    await put(2499, 0, [[99]]);
    await put(2499, 0, [[100]]);
    await workbook.write([{ sheet: later, row: 2, column: 0, cells: [[30]] }]);
    await put(0, 0, [[2]]);
    await look();
    await workbook.remove([later]);
    await workbook.add("Later", [[7]]);
    await workbook.write([{ sheet: "Later", row: 1, column: 0, cells: [[8]] }]);
    await look();
    return seen;
  };
  const worked = async () => {
    let found = 0;
    const generator = injector().get(IFormulaDependencyGenerator) as unknown as { _nodeTraversalRef: Method };
    patch(
      generator,
      "_nodeTraversalRef",
      (own) =>
        (...given: never[]) => (found++, own(...given)),
      "nothing is counted",
    );
    const seen = await scenario();
    // While no sheet comes, goes or grows.
    found = 0;
    for (const value of [3, 4, 5]) await put(1, 0, [[value]]);
    return [seen, found] as const;
  };
  const [patched, own] = (await withAndWithout(
    () => injector().get(IFormulaDependencyGenerator) as unknown as Generator,
    "_getRangeListByNode",
    worked,
  )) as readonly [readonly [unknown, number], readonly [unknown, number]];
  expect(patched[0]).toEqual(own[0]);
  expect(patched[0]).toEqual([
    [
      [3, 30, "#NAME?"],
      [1, 3, null],
    ],
    [
      [104, 60, 100],
      [4, 4, null],
    ],
    [
      [104, "#REF!", 100],
      [4, 4, null],
    ],
  ]);
  expect(patched[1]).toBeLessThan(own[1]);
});

/** A list whose rows are filled by a formula each, what reads them, and what lies in their way. */
const rowsFilledEach = async (): Promise<unknown> => {
  const seen: unknown[] = [];
  const look = async () => seen.push((await readSheet(open.workbook, "Sheet1")).block("A1:H30"));
  const rows = Array.from({ length: 30 }, (_, i) => i + 1);
  await put(
    0,
    0,
    rows.map((row) => [row, formula(`=SEQUENCE(1,IF(A${row}>100,2,3),A${row})`)]),
  );
  await put(
    0,
    5,
    rows.map((row) => [formula(`=COUNT(B${row}:E${row})`), formula(`=D${row}&""`), formula("=SUM(B1:D30)")]),
  );
  await look();
  await put(4, 0, [[105], [106], [7]]);
  await look();
  // As a keeper types, who is not refused.
  const typed = async (row: number, value: string): Promise<void> => {
    open.engine.api.getActiveWorkbook()?.getActiveSheet().getRange(row, 2).setValue(value);
    await open.engine.settle();
  };
  await typed(9, "in its way");
  await typed(19, "=SEQUENCE(3)");
  await look();
  await put(9, 2, [[null]]);
  await put(19, 2, [[null]]);
  await look();
  return seen;
};

test("_isInOtherArrayFormulaRange: what another formula fills is found by its rows", async () => {
  const layout = () => injector().get(IFormulaRuntimeService) as unknown as Layout;
  const [patched, own] = await withAndWithout(layout, "_isInOtherArrayFormulaRange", rowsFilledEach);
  expect(patched).toEqual(own);
  const third = (patched as unknown[][][])[2];
  expect([third?.[9]?.[1], third?.[10]?.slice(1, 4)]).toEqual(["#SPILL!", [11, 12, 13]]);
});

test("getCellData: what was spilled into a cell is found by its row, and is gone where the spill is shorter now", async () => {
  const reference = () => BaseReferenceObject.prototype as unknown as Reference;
  const grid = (cells: Readonly<Record<number, Readonly<Record<number, number>>>>) => ({
    getValue: (row: number, column: number) => (cells[row]?.[column] === undefined ? null : { v: cells[row][column] }),
  });
  const across = (row: number, endColumn: number) => ({ 1: { startRow: row, endRow: row, startColumn: 1, endColumn } });
  // Rows 0 to 2 were filled to column 3 each. Row 1 has been laid out anew, to column 2; row 2 waits for its turn.
  const cells = {
    _runtimeArrayFormulaRange: {},
    getCurrentActiveSheetData: () => ({ cellData: grid({ 0: { 0: 1 }, 5: { 5: 6 } }) }),
    getCurrentActiveArrayFormulaCellData: () =>
      grid({ 0: { 1: 10, 2: 11, 3: 12 }, 1: { 1: 20, 2: 21, 3: 22 }, 2: { 1: 30, 2: 31, 3: 32 } }),
    getCurrentActiveArrayFormulaRange: () => ({ 0: across(0, 3), 1: across(1, 3), 2: across(2, 3) }),
    getCurrentRuntimeSheetData: () => grid({ 0: { 0: 2 } }),
    getCurrentRuntimeActiveArrayFormulaCellData: () => grid({ 1: { 1: 40, 2: 41 } }),
    getCurrentRuntimeActiveArrayFormulaRange: () => ({ 1: across(1, 2) }),
    getRuntimeFeatureCellValue: () => null,
  };
  const read = (): Promise<unknown> =>
    Promise.resolve(
      [0, 1, 2, 5].map((row) =>
        [0, 1, 2, 3, 4, 5].map((column) => reference().getCellData.call(cells as never, row, column)?.v ?? null),
      ),
    );
  const [patched, own] = await withAndWithout(reference, "getCellData", read);
  expect(patched).toEqual(own);
  expect(patched).toEqual([
    [2, 10, 11, 12, null, null],
    [null, 40, 41, null, null, null],
    [null, 30, 31, 32, null, null],
    [null, null, null, null, null, 6],
  ]);
});

test("create: words without a figure stay words, and a figure, a date or a time in words is still one", async () => {
  const cells = ['="yes"&""', '="July"=A9', '=IF("12%"=0.12,"is","is not")', '="12:00"+1', '=COUNT("a",1)', '="½"&1'];
  const [patched, own] = await withAndWithout(
    () => ValueObjectFactory,
    "create",
    async () => {
      await put(0, 0, [cells.map(formula)]);
      return (await readSheet(open.workbook, "Sheet1")).block("A1:F1");
    },
  );
  expect(patched).toEqual(own);
  expect((patched as unknown[][])[0]?.[0]).toBe("yes");
});
