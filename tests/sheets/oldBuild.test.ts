import { sheets } from "../../taskpane/sheets/catalogue";
import { cleared } from "../../taskpane/sheets/clear";
import { columnLetters } from "../../taskpane/sheets/shared/address";
import { drawn, type Reading } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(60_000);

/** Whether the spreadsheet hands a function 0 for a blank cell, as builds of Excel before 2024 do. */
let old = false;

jest.mock("../../addin/boundary/evaluate", () => {
  const { evaluate } = jest.requireActual<typeof import("../../addin/boundary/evaluate")>(
    "../../addin/boundary/evaluate",
  );
  const { CellsAt } = jest.requireActual<typeof import("../../addin/boundary/cell")>("../../addin/boundary/cell");
  const zeroed = (argument: unknown): unknown => {
    if (Array.isArray(argument)) return argument.map(zeroed);
    if (argument instanceof CellsAt) return zeroed(argument.cells);
    return argument === null ? 0 : argument;
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
