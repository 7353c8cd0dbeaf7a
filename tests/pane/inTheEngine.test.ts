import fc from "fast-check";
import { catalogue } from "../../functions/catalogue";
import { serialOfIso } from "../../functions/dates";
import type { Example, Value } from "../../functions/define";
import { formulaOf } from "../../functions/formula";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction } from "../../taskpane/actions/formulas";
import { areaOf, cellName, type Area } from "../../taskpane/actions/place";
import { probe } from "../../taskpane/actions/probe";
import { reenter } from "../../taskpane/actions/reenter";
import { sharedCopy } from "../../taskpane/actions/sharedCopy";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy } from "../../taskpane/actions/workingCopy";
import { animals } from "../../taskpane/sheets/animals";
import { sheets } from "../../taskpane/sheets/catalogue";
import { cellOf } from "../../taskpane/sheets/shared/page";
import type { CellContent, SheetContents, Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";

interface Given {
  readonly workbook: Workbook;
  /** The sheets, where another calculation of everything changes nothing. */
  readonly settled: () => Promise<readonly SheetContents[]>;
}

const within = async <T>(act: (given: Given) => Promise<T>): Promise<T> => {
  const { engine, workbook, close } = openWorkbook();
  const settled = async (): Promise<readonly SheetContents[]> => {
    const before = await workbook.read();
    engine.api.getFormula().executeCalculation();
    const again = await workbook.read();
    expect(held(again, false)).toEqual(held(before, false));
    return again;
  };
  try {
    return await act({ workbook, settled });
  } finally {
    close();
  }
};

/** Every cell that holds something, by its place: the value, or with `formulas` the formula where there is one. */
const held = (all: readonly SheetContents[], formulas: boolean): Record<string, unknown> =>
  Object.fromEntries(
    all.flatMap(({ name, cells }) =>
      cells.flatMap((line, row) =>
        line.flatMap(({ value, formula }, column): [string, unknown][] =>
          value === null && formula === undefined
            ? []
            : [[`${name}!${cellName(row, column)}`, formulas ? (formula ?? value) : value]],
        ),
      ),
    ),
  );

const rowsOf = ({ gives }: Example): readonly (readonly Value[])[] =>
  Array.isArray(gives) ? (gives as readonly (readonly Value[])[]) : [[gives as Value]];

test(
  "every worked example, typed as the pane shows it, answers what the pane says",
  () =>
    within(async ({ workbook }) => {
      const examples = catalogue.flatMap((definition) =>
        definition.examples.map((example) => ({ definition, example })),
      );
      let row = 0;
      const places = examples.map(({ definition, example }) => {
        const place = { row, formula: formulaOf(definition, example), rows: rowsOf(example), within: example.within };
        row += (example.rows ?? place.rows.length) + 1;
        return place;
      });
      const cells: CellContent[][] = Array.from({ length: row }, () => [null]);
      for (const { row, formula } of places) cells[row] = [{ formula }];
      // A sheet wide enough for the widest answer.
      const name = await workbook.add("Examples", [...cells, Array.from({ length: 30 }, () => null)]);
      const [contents] = await workbook.read([name]);
      for (const { row, formula, rows, within } of places) {
        for (const [i, line] of rows.entries()) {
          for (const [j, wanted] of line.entries()) {
            const value = contents?.cells[row + i]?.[j]?.value ?? null;
            const dated = typeof wanted === "string" ? serialOfIso(wanted) : undefined;
            if (dated !== undefined && typeof value === "number")
              expect([formula, i, j, value]).toEqual([formula, i, j, dated]);
            else if (typeof wanted === "number" && within > 0) {
              expect([formula, i, j, typeof value]).toEqual([formula, i, j, "number"]);
              expect(Math.abs((value as number) - wanted)).toBeLessThanOrEqual(within);
            } else expect([formula, i, j, value ?? ""]).toEqual([formula, i, j, wanted]);
          }
        }
      }
      expect(places.length).toBeGreaterThanOrEqual(catalogue.length);
    }),
  60_000,
);

test(
  "all the sheets, frozen: the same values and no VIV formula; thawed: the same formulas to the letter",
  () =>
    within(async ({ workbook, settled }) => {
      await workbook.insert(sheets);
      const before = await settled();
      expect(
        before
          .flatMap(({ cells }) => cells.flat())
          .filter(({ formula }) => formula !== undefined && hasFunction(formula)).length,
      ).toBeGreaterThan(20);
      const { left } = await freeze.run(workbook, undefined);
      expect(left).toEqual([]);
      const frozen = (await settled()).filter(({ name }) => name !== "Worked formulas");
      expect(held(frozen, false)).toEqual(held(before, false));
      expect(
        Object.values(held(frozen, true)).filter(
          (one) => typeof one === "string" && one.startsWith("=") && hasFunction(one),
        ),
      ).toEqual([]);
      const { left: after } = await thaw.run(workbook, undefined);
      expect(after).toEqual([]);
      const thawed = await settled();
      expect(held(thawed, true)).toEqual(held(before, true));
      expect(held(thawed, false)).toEqual(held(before, false));
      expect(thawed.map(({ name }) => name)).toEqual(before.map(({ name }) => name));
    }),
  180_000,
);

/** Formulas that are worked out: of one cell and of many, with errors, with an empty look, within others, over sheets. */
const live = [
  "=VIV.LAPSE(24,300,1400)",
  "=VIV.RAMP(DATE(2026,10,5),24,8,14)",
  "=VIV.LAPSE({20;10},500,1500)",
  "=VIV.FLUCTUATION({20,18},{10,9})",
  '=IF(COUNT(Z90:Z91)<2,"",VIV.PREYRATIO(Z90,Z91))',
  "=VIV.FLUCTUATION(10,Z99)",
  '=VIV.LAPSE("warm",1,2)',
  "=ROUND(VIV.FLUCTUATION('Juniper''s log'!A1,1)+1,2)",
  '="it is ""VIV"" "&VIV.RELEASE()',
] as const;
const others = ["=1+1", '="VIV.LAPSE(1)"'] as const;

/** Rows of any cells. A sum reads the other sheet, and not its own, where it might hold itself. */
const grid = (sum: string): fc.Arbitrary<CellContent[][]> => {
  const content: fc.Arbitrary<CellContent> = fc.oneof(
    { weight: 5, arbitrary: fc.constant(null) },
    { weight: 2, arbitrary: fc.constantFrom<CellContent>(1, 17.5, "text", "=VIV.AGE(1)", true) },
    { weight: 3, arbitrary: fc.constantFrom(...live).map((formula) => ({ formula })) },
    { weight: 1, arbitrary: fc.constantFrom(...others, sum).map((formula) => ({ formula })) },
  );
  return fc.array(fc.array(content, { minLength: 4, maxLength: 4 }), { minLength: 2, maxLength: 6 });
};

test(
  "any sheets, frozen and thawed",
  () =>
    fc.assert(
      fc.asyncProperty(grid("=SUM(Other!A1:B4)"), grid("=SUM('Juniper''s log'!A1:B1)"), (one, other) =>
        within(async ({ workbook, settled }) => {
          await workbook.add("Juniper's log", [[12, null, null, null], ...one]);
          await workbook.add("Other", other);
          const before = await settled();
          await freeze.run(workbook, undefined);
          const frozen = (await settled()).filter(({ name }) => name !== "Worked formulas");
          expect(held(frozen, false)).toEqual(held(before, false));
          await thaw.run(workbook, undefined);
          const thawed = await settled();
          expect(held(thawed, true)).toEqual(held(before, true));
          expect(held(thawed, false)).toEqual(held(before, false));
        }),
      ),
      { numRuns: 5 },
    ),
  180_000,
);

test(
  "a shared copy leaves the sheet with its formulas, and holds the same values without",
  () =>
    within(async ({ workbook }) => {
      const [name = ""] = await workbook.insert(sheets.slice(0, 1));
      const [before] = await workbook.read([name]);
      await sharedCopy.run(workbook, [name]);
      const all = await workbook.read();
      const copy = all.find((sheet) => sheet.name !== name && sheet.name.startsWith(name));
      if (!before || !copy) throw new Error("no copy");
      expect(held([{ ...copy, name }], false)).toEqual(held([before], false));
      expect(copy.cells.flat().filter(({ formula }) => formula !== undefined && hasFunction(formula))).toEqual([]);
      const now = all.find((sheet) => sheet.name === name);
      expect(now && held([now], true)).toEqual(held([before], true));
    }),
  60_000,
);

test(
  "a blank cell is handed over as a blank, and the probe leaves nothing behind",
  () =>
    within(async ({ workbook }) => {
      const names = await workbook.sheetNames();
      expect((await probe.run(workbook)).text).toContain("as a blank by the preview.");
      expect(await workbook.sheetNames()).toEqual(names);
    }),
  30_000,
);

test(
  "a formula in Excel's stored spelling works again once it is re-entered",
  () =>
    within(async ({ workbook }) => {
      const name = await workbook.add("From a file", [[{ formula: "=_xldudf_VIV_LAPSE(24,300,1400)" }]]);
      expect((await workbook.read([name]))[0]?.cells[0]?.[0]?.value).toEqual({ error: "#NAME?" });
      await reenter.run(workbook);
      expect((await workbook.read([name]))[0]?.cells[0]?.[0]).toMatchObject({
        formula: "=VIV.LAPSE(24,300,1400)",
        value: 16.85,
      });
    }),
  30_000,
);

test("a date that follows the calendar stops with what is said of its day, goes on where nothing stops, and thaws", async () => {
  await within(async ({ workbook }) => {
    const [today = ""] = await workbook.insert([animals]);
    const at = areaOf(cellOf(animals, "reminders.today")) as Area;
    const write = (sheet: string): Promise<void> =>
      workbook.write([{ sheet, row: at.row, column: at.column, cells: [[{ formula: "=TODAY()" }]] }]);
    const own = await workbook.add("Mine", [["a note"]]);
    await write(today);
    await write(own);
    const cellIn = async (sheet: string) => (await workbook.read([sheet]))[0]?.cells[at.row]?.[at.column];

    const { left } = await workingCopy.run(workbook, [today, own]);
    const [copy = "", ownCopy = ""] = (await workbook.sheetNames()).slice(3);
    const stopped = await cellIn(copy);
    expect([stopped?.formula, typeof stopped?.value, stopped?.format]).toEqual([
      undefined,
      "number",
      expect.stringMatching(/\*/),
    ]);
    expect(left?.join()).toContain("what is said beside it is of this day");
    // A column of one reason is one line.
    expect(left?.length).toBeLessThan(8);
    expect((await cellIn(ownCopy))?.formula).toBe("=TODAY()");

    await freeze.run(workbook, [today, own]);
    expect((await cellIn(today))?.formula).toBeUndefined();
    expect((await cellIn(own))?.formula).toBe("=TODAY()");
    await thaw.run(workbook, [today]);
    expect((await cellIn(today))?.formula).toBe("=TODAY()");
  });
}, 60_000);
