import type { Nullable } from "@univerjs/core";
import {
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  type ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type CalculateFormulaService,
} from "@univerjs/engine-formula";
import { ConditionalFormattingService } from "@univerjs/sheets-conditional-formatting";
import { serialOfIso } from "../../functions/dates";
import { addRows } from "../../taskpane/actions/addRows";
import { animals } from "../../taskpane/sheets/animals";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { sheets } from "../../taskpane/sheets/catalogue";
import { areaOfLog } from "../../taskpane/sheets/grown";
import { growing } from "../../taskpane/sheets/growing";
import { areaOf } from "../../taskpane/sheets/shared/address";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { CellContent, SheetContents } from "../../taskpane/workbook";
import { openWorkbook, readSheet } from "./engine";

jest.setTimeout(120_000);

type Open = ReturnType<typeof openWorkbook>;
let open: Open;
beforeEach(() => {
  open = openWorkbook();
});
afterEach(() => open.close());

/** Every value of a workbook, by its place. */
const valuesOf = (all: readonly SheetContents[]): Record<string, unknown> =>
  Object.fromEntries(
    all.flatMap(({ name, cells }) =>
      cells.flatMap((row, i) =>
        row.flatMap(({ value }, j) => (value === null ? [] : [[`${name} R${i + 1}C${j + 1}`, value]])),
      ),
    ),
  );

const inWords = (value: Nullable<BaseValueObject>): unknown => (!value || value.isNull() ? null : value.getValue());

/** Cells that show something else than their formula gives by itself, over the figures that the sheets show. */
const stale = async ({ engine, workbook }: Open): Promise<string[]> => {
  const injector = engine.univer.__getInjector();
  // The interface says that `calculate` answers nothing; the class behind it does answer.
  const calculator = injector.get(ICalculateFormulaService) as unknown as Pick<CalculateFormulaService, "calculate">;
  const runtime = injector.get(IFormulaRuntimeService);
  const book = engine.api.getActiveWorkbook();
  const all = await workbook.read();
  injector.get(IFormulaCurrentConfigService).loadDataLite();
  const wrong: string[] = [];
  for (const { name, cells } of all) {
    const sheet = book?.getSheetByName(name);
    if (!book || !sheet) throw new Error(`no sheet ${name}`);
    for (const [i, row] of cells.entries()) {
      for (const [j, { formula }] of row.entries()) {
        if (formula === undefined) continue;
        runtime.reset();
        runtime.setCurrent(i, j, sheet.getMaxRows(), sheet.getMaxColumns(), sheet.getSheetId(), book.getId());
        const found = await calculator.calculate(formula);
        if (!found) throw new Error(`${formula} cannot be read`);
        const answer = found.isReferenceObject()
          ? (found as BaseReferenceObject).toArrayValueObject()
          : (found as BaseValueObject);
        const block = answer.isArray() ? (answer as ArrayValueObject).getArrayValue() : [[answer]];
        block.forEach((line, down) =>
          line.forEach((value, right) => {
            const shown = cells[i + down]?.[j + right]?.value ?? null;
            const plain = typeof shown === "object" && shown !== null ? shown.error : shown;
            // A spilled blank is shown as nothing, or as 0 where it stands alone.
            const wanted = inWords(value);
            if (wanted === plain || ((wanted ?? "") === "" && (plain ?? "") === "")) return;
            if (wanted === null && plain === 0) return;
            wrong.push(`${name} R${i + 1 + down}C${j + 1 + right} shows ${plain}: ${formula} gives ${String(wanted)}`);
          }),
        );
      }
    }
  }
  return wrong;
};

const recalculated = async ({ engine, workbook }: Open): Promise<Record<string, unknown>> => {
  engine.api.getFormula().executeCalculation();
  return valuesOf(await workbook.read());
};

const formula = (text: string): CellContent => ({ formula: text });
const put = async (row: number, column: number, cells: readonly (readonly CellContent[])[]) => {
  await open.workbook.write([{ sheet: "Sheet1", row, column, cells }]);
  return readSheet(open.workbook, "Sheet1");
};

describe("the sheets of the catalogue", () => {
  test("inserted at once and one by one: no figure that its formula does not give, none that another round changes", async () => {
    await open.workbook.insert(sheets);
    const atOnce = valuesOf(await open.workbook.read());
    expect(Object.values(atOnce).length).toBeGreaterThan(4000);
    expect(await stale(open)).toEqual([]);
    expect(await recalculated(open)).toEqual(atOnce);

    const other = openWorkbook();
    try {
      for (const sheet of sheets) await other.workbook.insert([sheet]);
      expect(valuesOf(await other.workbook.read())).toEqual(atOnce);
    } finally {
      other.close();
    }
  });

  const day = (iso: string): number => {
    const serial = serialOfIso(iso);
    if (serial === undefined) throw new Error(iso);
    return serial;
  };
  /** Where the input right of a label stands, or the `column`th below a title. */
  const inputOf = ({ cells }: SheetContents, label: string): { row: number; column: number } => {
    for (const [row, line] of cells.entries()) {
      const at = line.findIndex(({ value }) => value === label);
      if (at < 0) continue;
      const right = line.findIndex(({ value, formula }, j) => j > at && value !== null && formula === undefined);
      const below = cells[row + 1]?.[at];
      if (right >= 0 && typeof line[right]?.value === "number") return { row, column: right };
      if (typeof below?.value === "number") return { row: row + 1, column: at };
    }
    throw new Error(`no input "${label}"`);
  };
  /** The sheet as it would be with other inputs from the start. */
  const withInputs = (sheet: Sheet, inputs: ReadonlyMap<string, number>): Sheet => ({
    ...sheet,
    blocks: sheet.blocks.map((block) => {
      const { top, left } = areaOf(block.at);
      return {
        ...block,
        rows: block.rows.map((row, i) => row.map((cell, j) => inputs.get(`${top - 1 + i},${left - 1 + j}`) ?? cell)),
      };
    }),
  });

  test.each<[string, string, Readonly<Record<string, number>>]>([
    ["an elevation", "nativeClimate", { "Elevation, m": 1200 }],
    ["the day of the last meal", "coolingPlan", { "Day of last or first meal": day("2026-10-19") }],
    ["the days in the cold", "coolingPlan", { "Days in the cold": 21 }],
    ["a reading", "readings", { "°C": 27.5 }],
    ["the dates of the winter plan", "feedingLog", { "Last meal": day("2026-09-14"), "First meal": day("2027-04-12") }],
  ])("%s that changes: the same figures as with it from the start", async (_, key, changes) => {
    const sheet = sheets.find((one) => one.key === key);
    if (!sheet) throw new Error(`no sheet ${key}`);
    const { workbook } = open;
    const [name = ""] = await workbook.insert([sheet]);
    const [contents] = await workbook.read([name]);
    if (!contents) throw new Error("nothing inserted");
    const before = valuesOf([contents]);
    const inputs = new Map<string, number>();
    for (const [label, value] of Object.entries(changes)) {
      const { row, column } = inputOf(contents, label);
      inputs.set(`${row},${column}`, value);
      await workbook.write([{ sheet: name, row, column, cells: [[value]] }]);
    }
    const after = valuesOf(await workbook.read([name]));
    expect(Object.keys(after).filter((place) => after[place] !== before[place]).length).toBeGreaterThan(inputs.size);
    expect(await stale(open)).toEqual([]);

    const fresh = openWorkbook();
    try {
      await fresh.workbook.insert([withInputs(sheet, inputs)]);
      expect(valuesOf(await fresh.workbook.read([name]))).toEqual(after);
    } finally {
      fresh.close();
    }
  });

  test("rounds follow a plan that grows shorter, and longer again", async () => {
    const { workbook } = open;
    const [name = ""] = await workbook.insert([coolingPlan]);
    const [contents] = await workbook.read([name]);
    if (!contents) throw new Error("nothing inserted");
    const before = valuesOf([contents]);
    const { row, column } = inputOf(contents, "Days in the cold");
    const days = contents.cells[row]?.[column]?.value;
    await workbook.write([{ sheet: name, row, column, cells: [[0]] }]);
    expect(await stale(open)).toEqual([]);
    await workbook.write([{ sheet: name, row, column, cells: [[days as number]] }]);
    expect(valuesOf(await workbook.read([name]))).toEqual(before);
  });
});

describe("what reads spilled cells", () => {
  test("follows through ten spills, each of which reads only what the one before has spilled", async () => {
    await put(0, 0, [[1]]);
    const chain = Array.from({ length: 10 }, (_, i) =>
      formula(i === 0 ? "=SEQUENCE(2,1,A1)" : `=SEQUENCE(2,1,${"BCDEFGHIJK"[i - 1]}2)`),
    );
    // From right to left, so that none is worked out after what it reads by chance.
    for (const [i, one] of [...chain.entries()].reverse()) await put(0, i + 1, [[one]]);
    expect((await readSheet(open.workbook, "Sheet1")).at("K2")).toBe(11);
    expect((await put(0, 0, [[100]])).at("K2")).toBe(110);
  });

  test("also where it reads the first cell of another spill, or asks INDEX, OFFSET or INDIRECT for the cell", async () => {
    const sheet = await put(0, 0, [
      [
        2,
        formula("=SEQUENCE(3,1,A1)"),
        formula("=SEQUENCE(3,1,B3)"),
        formula("=B1+C3"),
        formula("=INDEX(C1:C3,3)"),
        formula("=OFFSET(C1,2,0)"),
        formula('=INDIRECT("C3")'),
        formula("=SUM(B1:C3)"),
      ],
    ]);
    expect(sheet.block("D1:H1")).toEqual([[8, 6, 6, 6, 24]]);
    expect((await put(0, 0, [[10]])).block("D1:H1")).toEqual([[24, 14, 14, 14, 72]]);
  });

  test("when rows are put in below, into what the spills name: the meals of Today", async () => {
    const { workbook } = open;
    await workbook.insert([animals]);
    const told = async () => (await readSheet(workbook, "Today")).block("A10:F15");
    const before = await told();
    const [, [meals] = []] = growing.animals ?? [];
    const { top, left } = areaOfLog(animals, meals ?? "");
    await workbook.show("Today", top - 1, left - 1);
    await addRows.run(workbook, 1);
    expect(await told()).toEqual(before);
    expect(before[4]?.[1]).toBe("Feeding");
  });

  test("when the spill grows shorter, becomes one cell, and is gone", async () => {
    await put(0, 0, [
      [6, formula("=SEQUENCE(A1)"), formula("=COUNT(B1:B9)"), formula("=B2*10"), formula("=SUM(B3:B9)")],
    ]);
    expect((await readSheet(open.workbook, "Sheet1")).block("C1:E1")).toEqual([[6, 20, 18]]);
    expect((await put(0, 0, [[3]])).block("C1:E1")).toEqual([[3, 20, 3]]);
    expect((await put(0, 0, [[1]])).block("C1:E1")).toEqual([[1, 0, 0]]);
    expect((await put(0, 0, [[4]])).block("C1:E1")).toEqual([[4, 20, 7]]);
    expect((await put(0, 1, [[null]])).block("C1:E1")).toEqual([[0, 0, 0]]);
  });

  test("a colour rule that reads one spilled cell", async () => {
    await put(0, 0, [[1, formula("=SEQUENCE(3,1,A1)")]]);
    const sheet = open.engine.api.getActiveWorkbook()?.getSheetByName("Sheet1");
    if (!sheet) throw new Error("no sheet");
    sheet.addConditionalFormattingRule(
      sheet
        .newConditionalFormattingRule()
        .whenFormulaSatisfied("=$B$3>10")
        .setBackground("#ff0000")
        .setRanges([sheet.getRange("D1").getRange()])
        .build(),
    );
    const colours = open.engine.univer.__getInjector().get(ConditionalFormattingService);
    const colour = async (): Promise<unknown> => {
      const ask = () => colours.composeStyle(sheet.getWorkbook().getUnitId(), sheet.getSheetId(), 0, 3)?.style?.bg?.rgb;
      ask();
      // The rule is worked out when it is first asked for.
      await new Promise((resolve) => setTimeout(resolve, 300));
      await open.engine.settle();
      return ask();
    };
    expect(await colour()).toBeUndefined();
    await put(0, 0, [[20]]);
    expect(await colour()).toBe("rgb(255,0,0)");
    await put(0, 0, [[2]]);
    expect(await colour()).toBeUndefined();
  });
});

describe("a spill with something in its way", () => {
  test("gets the room that another one leaves", async () => {
    const sheet = await put(0, 0, [
      [4, null, formula("=SEQUENCE(3,1,50)")],
      [null, null, null],
      [formula("=SEQUENCE(1,A1)")],
    ]);
    const blocked = [sheet.at("C1"), sheet.at("A3")].filter((value) => value === "#SPILL!");
    expect(blocked).toHaveLength(1);
    const after = await put(0, 0, [[2]]);
    expect(after.block("A3:C3")).toEqual([[1, 2, 52]]);
    expect(await stale(open)).toEqual([]);
  });

  test("changes nothing in its way: neither a figure that is worked out in the same round nor another's formula", async () => {
    await put(0, 0, [
      [1, formula("=SEQUENCE(4)"), null],
      [null, formula("=A1+1"), null],
      [null, formula("=SEQUENCE(2,1,A1)"), null],
      [null, 7, null],
    ]);
    const after = await put(0, 0, [[5]]);
    expect(after.block("B1:B4")).toEqual([["#SPILL!"], [6], ["#SPILL!"], [7]]);
    expect(after.state("B3").formula).toBe("=SEQUENCE(2,1,A1)");
    expect((await put(3, 1, [[null]])).block("B2:B4")).toEqual([[6], [5], [6]]);
  });

  test("a value written where another's formula stood in its way stays", async () => {
    await put(0, 0, [[formula("=SEQUENCE(3,2)")], [null, null], [formula("={20,18}")]]);
    const after = await put(2, 0, [[10, 9]]);
    expect(after.block("A1:B3")).toEqual([
      ["#SPILL!", null],
      [null, null],
      [10, 9],
    ]);
  });
});

describe("rounds", () => {
  test("end where a formula gives another number each time, and all its readers see the same", async () => {
    await put(0, 0, [[formula("=RANDARRAY(3)"), formula("=A2"), formula("=A2+A3")]]);
    const sheet = await put(5, 5, [[1]]);
    expect(sheet.at("B1")).toBe(sheet.at("A2"));
    expect(sheet.at("C1")).toBeCloseTo(Number(sheet.at("A2")) + Number(sheet.at("A3")), 12);
  });

  test("end where spills go round in a circle", async () => {
    await put(0, 0, [[formula("=SEQUENCE(2,1,C2)"), null, formula("=SEQUENCE(2,1,A2)")]]);
    expect((await put(5, 5, [[1]])).at("F6")).toBe(1);
  });

  test("a calculation that takes minutes, as on a slow machine, comes to its end all the same", async () => {
    const real = Date.now.bind(Date);
    let later = 0;
    const clock = jest.spyOn(Date, "now").mockImplementation(() => real() + later);
    const heard = open.engine.univer
      .__getInjector()
      .get(ICalculateFormulaService)
      .executionCompleteListener$.subscribe(() => (later += 120_000));
    try {
      await put(0, 0, [[1, formula("=A1+1"), formula("=SEQUENCE(2,1,B1)"), formula("=C2*2")]]);
      expect((await put(0, 0, [[2]])).at("D1")).toBe(8);
    } finally {
      heard.unsubscribe();
      clock.mockRestore();
    }
  });

  test("no change is lost that comes while formulas are worked out", async () => {
    const { workbook, engine } = open;
    const rows = 400;
    await workbook.add("Chain", [
      [1, formula("=SEQUENCE(3,1,A1)")],
      ...Array.from({ length: rows }, (_, i): CellContent[] => [i, null, formula(`=A${i + 2}+$B$3`)]),
    ]);
    const sheet = engine.api.getActiveWorkbook()?.getSheetByName("Chain");
    // Changes at all moments of the calculations that the earlier ones have set off.
    for (let i = 0; i < 30; i++) {
      sheet?.getRange(i % 2 === 0 ? "A1" : `A${2 + i}`).setValue(1000 + i);
      await new Promise((resolve) => setTimeout(resolve, 7 + ((i * 13) % 120)));
    }
    expect((await readSheet(workbook, "Chain")).at("B3")).toBe(1030);
    expect(await stale(open)).toEqual([]);
  });
});
