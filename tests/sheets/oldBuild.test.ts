import { sheets } from "../../taskpane/sheets/catalogue";
import { cleared } from "../../taskpane/sheets/clear";
import { columnLetters } from "../../taskpane/sheets/shared/address";
import { drawn, openWorkbook, readSheet, type Reading } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(60_000);

/** Whether the spreadsheet hands a function 0 for a blank cell, as builds of Excel before 2024 do. */
let old = false;

jest.mock("../../addin/boundary/evaluate", () => {
  const { evaluate } = jest.requireActual<typeof import("../../addin/boundary/evaluate")>(
    "../../addin/boundary/evaluate",
  );
  const { CellsAt, SheetError } =
    jest.requireActual<typeof import("../../addin/boundary/cell")>("../../addin/boundary/cell");
  const rowsOf = (cells: readonly (readonly unknown[])[]) => cells.map((row) => row.map(zeroed));
  const zeroed = (argument: unknown): unknown => {
    if (argument === null) return 0;
    if (Array.isArray(argument)) return argument.map(zeroed);
    if (argument instanceof CellsAt) return new CellsAt(rowsOf(argument.cells), argument.row, argument.column);
    // What blanks might hide in unseen.
    if (typeof argument === "object" && !(argument instanceof SheetError))
      throw new Error(`arguments come in a ${argument.constructor.name} that is not looked into`);
    return argument;
  };
  return {
    evaluate: (...[definition, given]: Parameters<typeof evaluate>) =>
      // A missing argument is undefined and stays so; a blank cell is null.
      evaluate(definition, old ? given.map(zeroed) : given),
  };
});

const shown = (reading: Reading): readonly string[] =>
  reading.cells.flatMap((row, i) =>
    row.flatMap(({ value }, j) =>
      value === null || value === "" ? [] : [`${columnLetters(j + 1)}${i + 1} ${JSON.stringify(value)}`],
    ),
  );

test.each(sheets.filter(({ key }) => key !== "selfCheck").map((sheet) => [sheet.name, sheet] as const))(
  "%s shows the same where blanks are handed over as 0, filled and cleared",
  async (_, sheet) => {
    old = false;
    const now = await drawn(sheet, cleared(sheet));
    old = true;
    const then = await drawn(sheet, cleared(sheet));
    old = false;
    expect(then.map(shown)).toEqual(now.map(shown));
  },
);

test("a blank is handed over as 0 by itself and within a list", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const shows = async (): Promise<readonly unknown[]> => {
      const name = await workbook.add("Blanks", [
        [{ formula: "=VIV.FLUCTUATION(E1,F1)" }, { formula: "=VIV.FLUCTUATION(E1:E2,F1:F2)" }, null],
        [null, null, null],
      ]);
      return (await readSheet(workbook, name)).block("A1:B2").flat();
    };
    old = true;
    expect(await shows()).toEqual([0, 0, null, 0]);
    old = false;
    expect(await shows()).toEqual(["", "", null, ""]);
  } finally {
    old = false;
    close();
  }
});

test("the sheet Self-check says which of the two it is", async () => {
  const [selfCheck] = sheets.filter(({ key }) => key === "selfCheck");
  if (!selfCheck) throw new Error("there is no Self-check");
  old = true;
  const [then] = (await drawn(selfCheck)) as [Reading];
  old = false;
  const [now] = (await drawn(selfCheck)) as [Reading];
  expect(now.at("B9")).toMatch(/blank: good$/);
  expect(then.at("B9")).toMatch(/as 0/);
});
