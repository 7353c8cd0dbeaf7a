import fc from "fast-check";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction, onOtherSheets, sheetReferences } from "../../taskpane/actions/formulas";
import { explaining, marked, unexplaining, unmarked } from "../../taskpane/actions/mark";
import { cellName } from "../../taskpane/actions/place";
import { entriesOf, isWorked } from "../../taskpane/actions/worked";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy } from "../../taskpane/actions/workingCopy";
import type { CellState, SheetContents, Workbook } from "../../taskpane/workbook";
import { answers, anyWorkbook } from "./anyWorkbook";
import { MemoryWorkbook } from "./memoryWorkbook";

/** The copies that a working copy added: behind the sheets of before, and before the one of worked formulas. */
const copied = async (workbook: Workbook, names: readonly string[]): Promise<readonly string[]> => {
  await workingCopy.run(workbook, names);
  return (await workbook.sheetNames()).slice(names.length, 2 * names.length);
};
const isExplained = ({ format = "" }: { readonly format?: string }): boolean => format.includes("Worked formulas");
const formulasIn = (sheets: readonly SheetContents[]) =>
  sheets.map(({ cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap(({ formula }, column) => (formula === undefined ? [] : [`${cellName(row, column)} ${formula}`])),
    ),
  );

describe("over any workbook", () => {
  test("copies follow one another, keep no function of ours that is not named, and thaw into what was copied", async () => {
    let [written, following, explainedOnce] = [0, 0, 0];
    await fc.assert(
      fc.asyncProperty(anyWorkbook, async (sheets) => {
        const workbook = new MemoryWorkbook(answers);
        for (const { name, cells, locked } of sheets) workbook.put(name, cells, { locked, format: "0.00" });
        const names = sheets.map(({ name }) => name);
        const before = workbook.snapshot() as unknown[];
        const own = await workbook.read(names);
        const copies = await copied(workbook, names);
        // The keeper's own sheets are as they were.
        expect((workbook.snapshot() as unknown[]).slice(0, names.length)).toEqual(before);
        const others = new Map(names.map((name, i) => [name.toLowerCase(), copies[i] as string]));
        const made = await workbook.read(copies);
        for (const { cells, locked } of made) {
          if (locked) continue;
          const named = cells.flat().flatMap(({ formula = "" }) => sheetReferences(formula));
          expect(named.filter(({ sheet }) => others.has(sheet.toLowerCase()))).toEqual([]);
          following += named.length;
        }
        written += made.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => formula !== undefined).length;
        await thaw.run(workbook, copies);
        const wanted = own.map((sheet) => ({
          ...sheet,
          cells: sheet.cells.map((line) =>
            line.map((cell) =>
              cell.formula === undefined ? cell : { ...cell, formula: onOtherSheets(cell.formula, others) },
            ),
          ),
        }));
        const back = await workbook.read(copies);
        expect(formulasIn(back.filter(({ locked }) => !locked))).toEqual(
          formulasIn(wanted.filter(({ locked }) => !locked)),
        );
        expect(back.flatMap(({ cells }) => cells.flat()).filter(({ format = "" }) => format.includes("*"))).toEqual([]);
        explainedOnce += made.filter(({ cells }) => cells.flat().some(isExplained)).length;
        for (const { cells } of made) {
          const isAny = (which: string): boolean => cells.flat().some(({ format = "" }) => format.includes(which));
          expect(cells.flat().filter(isExplained).length).toBeLessThanOrEqual(isAny('"*"') ? 1 : 0);
        }
      }),
      { numRuns: 100 },
    );
    expect(written).toBeGreaterThan(150);
    expect(following).toBeGreaterThan(10);
    expect(explainedOnce).toBeGreaterThan(10);
  });

  test("a mark goes as it came, whatever the number format", () =>
    fc.assert(
      fc.property(
        fc.constantFrom("General", "0.0", "yyyy-mm-dd", '0.0;-0.0;"none";[Red]@', '[Red]0.0;0.0" a;b"', "0%;\\;0", "@"),
        fc.oneof(fc.double({ noNaN: true }), fc.constantFrom("words", "")),
        (format, value) => {
          const cell = { value, format };
          const shown = marked(cell);
          expect(shown.format?.includes('"*"')).toBe(value !== "");
          expect(unmarked(shown)).toEqual(cell);
          // The same of what is said of it, beside a mark and alone; once is enough.
          expect(unexplaining(explaining(cell))).toEqual(cell);
          expect(unmarked(unexplaining(explaining(explaining(shown))))).toEqual(cell);
        },
      ),
    ));
});

describe("in words", () => {
  const workbook = () =>
    new MemoryWorkbook((formula) =>
      formula.includes("KOPPEN") ? [["Dfb"]] : formula.includes("COOLSPELL") ? [[12.5]] : [[{ error: "#N/A" }]],
    ).put(
      "Plan",
      [
        [{ formula: "=VIV.KOPPEN(A2:A13,B2:B13,46)" }, { formula: "=VIV.LAPSE(A2,300,1400)" }],
        [{ formula: "=Rates!A1" }, { formula: "=VIV.COOLSPELL(A2:A13,10)" }],
      ],
      { format: "0.0" },
    );

  test("what stays as a figure is marked where it stands, and why stands beside its formula", async () => {
    const own = workbook().put("Rates", [[5]]);
    const { left = [] } = await workingCopy.run(own, ["Plan"]);
    expect(left).toEqual([
      '1 formula of the copies will go on following "Rates", which was not copied',
      "'Plan (2)'!A1 stays as its figure: KOPPEN cannot be written in functions that every spreadsheet has",
      "'Plan (2)'!B2 stays as its figure: COOLSPELL cannot be written in functions that every spreadsheet has",
    ]);
    const [copy] = await own.read(["Plan (2)"]);
    expect(copy?.cells[0]?.[0]).toEqual({ value: "Dfb", format: '0.0;;;@"*"' });
    expect(copy?.cells[1]?.[1]).toEqual({ value: 12.5, format: '0.0"*"' });
    expect(copy?.cells[0]?.[1]?.format).toBe("0.0");
    const worked = (await own.read()).filter(isWorked).flatMap((sheet) => entriesOf(sheet).entries);
    expect(worked.map(({ words }) => words)).toEqual([
      "Fixed, marked *: KOPPEN cannot be written in functions that every spreadsheet has",
      null,
      "Fixed, marked *: COOLSPELL cannot be written in functions that every spreadsheet has",
    ]);
    await thaw.run(own, ["Plan (2)"]);
    const [back] = await own.read(["Plan (2)"]);
    expect(back?.cells.flat().map(({ format }) => format)).toEqual(["0.0", "0.0", "0.0", "0.0"]);
    expect(back?.cells.flat().filter(({ formula = "" }) => hasFunction(formula))).toHaveLength(3);
  });

  test("what the mark means stands behind the title, and goes with the last mark", async () => {
    const own = new MemoryWorkbook(() => [["Dfb"]]).put("Plan", [
      ["Year plan"],
      ["Class", { formula: "=VIV.KOPPEN(A2:A13,B2:B13,46)" }],
      ["Other", { formula: "=VIV.KOPPEN(C2:C13,D2:D13,46)" }],
      ["Sum", { formula: "=VIV.LAPSE(1,2,3)" }],
    ]);
    await workingCopy.run(own, ["Plan"]);
    const titleOfCopy = async () => (await own.read(["Plan (2)"]))[0]?.cells[0]?.[0];
    expect(await titleOfCopy()).toEqual({ value: "Year plan", format: 'General;;;@"   * fixed: see Worked formulas"' });
    // One of the two is no longer what it was: its mark stays, and with it the words.
    await own.write([{ sheet: "Plan (2)", row: 2, column: 1, cells: [["my own"]] }]);
    await thaw.run(own, ["Plan (2)"]);
    expect((await titleOfCopy())?.format).toContain("* fixed");
    await own.write([{ sheet: "Plan (2)", row: 2, column: 1, cells: [["Dfb"]] }]);
    await thaw.run(own, ["Plan (2)"]);
    expect(await titleOfCopy()).toEqual({ value: "Year plan" });
    // Nothing that goes on calculating calls for words.
    const alive = new MemoryWorkbook(() => [[1]]).put("Plan", [["Year plan", null, { formula: "=VIV.LAPSE(1,2,3)" }]]);
    await workingCopy.run(alive, ["Plan"]);
    expect((await alive.read(["Plan (2)"]))[0]?.cells[0]?.[0]).toEqual({ value: "Year plan" });
  });

  test("a frozen error keeps what the add-in says of it", async () => {
    const own = workbook();
    const read = own.read.bind(own);
    const said = "month 3 of highs is blank";
    // As a host reads it that keeps the words.
    own.read = async (names) =>
      (await read(names)).map((sheet) => ({
        ...sheet,
        cells: sheet.cells.map((line) =>
          line.map((cell) => (cell.formula?.includes("LAPSE") ? { ...cell, words: said } : cell)),
        ),
      }));
    await freeze.run(own, ["Plan"]);
    const worked = (await own.read()).filter(isWorked).flatMap((sheet) => entriesOf(sheet).entries);
    expect(worked.find(({ formula }) => formula.includes("LAPSE"))).toMatchObject({ shown: "#N/A", words: said });
    // As the preview reads it, which takes the sign for the error.
    const [kept] = (await own.read()).filter(isWorked) as [SheetContents];
    const signs = ({ value, ...cell }: CellState): CellState => ({
      ...cell,
      value: value === "#N/A" ? { error: value } : value,
    });
    expect(entriesOf({ ...kept, cells: kept.cells.map((line) => line.map(signs)) })).toEqual(entriesOf(kept));
  });

  test("a sheet of entries from before it had words keeps what the keeper wrote in that column", async () => {
    const own = workbook();
    await freeze.run(own, ["Plan"]);
    await own.write([
      { sheet: "Worked formulas", row: 2, column: 6, cells: [["my own column"], ["my note"]] },
      { sheet: "Plan", row: 8, column: 0, cells: [[{ formula: "=VIV.LAPSE(1,2,3)" }]] },
    ]);
    await freeze.run(own, ["Plan"]);
    await thaw.run(own, undefined);
    const [worked] = (await own.read()).filter(isWorked);
    expect(worked?.cells.slice(2, 4).map((line) => line[6]?.value)).toEqual(["my own column", "my note"]);
    expect(own.functions()).toHaveLength(4);
  });
});
