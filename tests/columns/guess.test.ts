import { guesses, headingWords, unitIn } from "../../taskpane/columns/guess";
import { settled } from "../../taskpane/columns/settled";
import { tableAt, type OwnTable } from "../../taskpane/columns/table";
import { wishes } from "../../taskpane/columns/wishes";
import { addColumn, columnFor } from "../../taskpane/actions/addColumn";
import { formats } from "../../taskpane/sheets/sheet";
import type { CellState, SheetContents } from "../../taskpane/workbook";
import { MemoryWorkbook } from "../pane/memoryWorkbook";

const DAY = 46_000;
const date = (value: number): CellState => ({ value, format: formats.date });
const sheet = (cells: readonly (readonly (CellState | CellState["value"])[])[]): SheetContents => ({
  name: "Log",
  hidden: false,
  locked: false,
  cells: cells.map((row) =>
    row.map((cell) => (typeof cell === "object" && cell !== null && "value" in cell ? cell : { value: cell })),
  ),
});
const log = (headings: readonly string[]): SheetContents =>
  sheet([headings, [date(DAY), "Ash", 140, 12, "yes"], [date(DAY + 7), "Birch", 310, 28, "no"]]);
const table = (contents: SheetContents, at = { row: 1, column: 0 }) => tableAt(contents, at) as OwnTable;
const wishFor = (key: string) => wishes.find((wish) => wish.key === key) as (typeof wishes)[number];

/** Headings as keepers of six languages write them (common words, no source). */
test.each([
  ["English", ["Date", "Name", "Weight (g)", "Mouse (g)", "Taken?"]],
  ["German", ["Datum", "Tier", "Gewicht g", "Futtertier (g)", "Gefressen"]],
  ["French", ["Jour", "Nom", "Poids, g", "Proie, g", "Mangé"]],
  ["Spanish", ["Fecha", "Nombre", "Peso (g)", "Presa (g)", "Resultado"]],
  ["Italian", ["Data", "Animale", "Massa g", "Preda g", "Esito"]],
  ["Dutch", ["Dag", "Dier", "Gewicht (g)", "Prooi (g)", "Uitkomst"]],
  ["a feeder's weight before the snake's", ["When", "Snake", "Snake weight", "Feeder weight", "Result"]],
])("%s headings are understood", (_, headings) => {
  const found = guesses(
    table(log(headings)).columns,
    new Map([
      ["prey", "prey"],
      ["body", "mass"],
      ["dates", "date"],
      ["animals", "animal"],
      ["outcomes", "outcome"],
    ] as const),
  );
  expect(Object.fromEntries([...found].map(([name, { column, by }]) => [name, `${column} ${by}`]))).toEqual({
    dates: "0 heading",
    animals: "1 heading",
    body: "2 heading",
    prey: "3 heading",
    outcomes: "4 heading",
  });
});

test("a heading's words, its unit, and no unit where the heading is the word alone", () => {
  expect(headingWords("Höchstwert °C (Tag)")).toEqual(["hoechstwert", "c", "tag"]);
  expect(unitIn("Temp °F")).toBe("f");
  expect(unitIn("RH %")).toBe("%");
  expect(unitIn("M")).toBeUndefined();
});

test("a column of the wrong kind is never guessed; the only one of its kind is, and says so", () => {
  const { columns } = table(
    sheet([
      ["Date", "Mass"],
      ["spring", "heavy"],
      ["autumn", "light"],
    ]),
  );
  expect(guesses(columns, new Map([["dates", "date"]] as const)).size).toBe(0);
  const only = table(
    sheet([
      ["x", "y"],
      ["a", 12],
      ["b", 14],
    ]),
  );
  expect(guesses(only.columns, new Map([["body", "mass"]] as const)).get("body")).toEqual({ column: 1, by: "values" });
  expect(
    guesses(
      only.columns,
      new Map([
        ["body", "mass"],
        ["prey", "prey"],
      ] as const),
    ).size,
  ).toBe(0);
});

test("a table is found from any of its cells and from beside it, under its titles; what is none is told", () => {
  const contents = sheet([["My animals"], ["Date", "Mass"], [date(DAY), 140], [null, null], ["Note", "elsewhere"]]);
  for (const at of [
    { row: 1, column: 0 },
    { row: 2, column: 1 },
    { row: 2, column: 2 },
    { row: 0, column: 0 },
  ]) {
    expect(tableAt(contents, at)).toMatchObject({ headings: 1, row: 2, rows: 1, free: 2 });
  }
  expect(tableAt(contents, { row: 20, column: 9 })).toMatch(/^Select a cell of your table/);
  expect(
    tableAt(
      sheet([
        [1, 2],
        [3, 4],
      ]),
      { row: 0, column: 0 },
    ),
  ).toBe("A1:B2 has no row of headings on top: write a word over each column, then look again.");
});

test("what stands once is read as figure, date, word or cells, and what it is not is told", () => {
  const [interval] = wishFor("NEXTMEAL").wants.filter(({ name }) => name === "interval");
  const [plan] = wishFor("SETPOINT").wants.filter(({ name }) => name === "plan");
  const [since] = wishFor("lost").wants.filter(({ name }) => name === "since");
  if (!interval || !plan || !since) throw new Error("a want is missing");
  const sheets = [log(["Date", "Name", "Weight", "Mouse", "Taken"])];
  expect(settled(interval, " 7,5 ", "Log", sheets)).toEqual({ text: "7.5", value: 7.5 });
  expect(settled(interval, "C2", "Log", sheets)).toEqual({ text: "$C$2", value: 140 });
  expect(settled(interval, "'My log'!C2", "Log", sheets)).toBe('there is no sheet "My log"');
  expect(settled(since, "2026-11-16", "Log", sheets)).toEqual({ text: "DATE(2026,11,16)", value: 46342 });
  expect(settled(since, "16/11/2026", "Log", sheets)).toBe("Day the cold began: give a date as 2026-10-05, or a cell");
  expect(settled(plan, "=Log!A2:A3", "Log", sheets)).toEqual({ text: "Log!$A$2:$A$3", value: [[DAY], [DAY + 7]] });
  expect(settled(plan, "soon", "Log", sheets)).toBe("Winter plan wants cells, such as B4:B9");
});

describe("units in headings", () => {
  const at = { sheet: "Log", row: 1, column: 0 };
  const fluctuation = wishFor("FLUCTUATION");
  const of = (high: string, low: string) =>
    columnFor(
      {
        wish: fluctuation,
        at,
        columns: new Map([
          ["high", 2],
          ["low", 3],
        ]),
        once: new Map(),
      },
      [log(["Date", "Name", high, low, "Taken"])],
    );
  test("degrees Fahrenheit are told to the function, and answered so", () =>
    expect(of("High °F", "Low °F")).toMatchObject({
      heading: "High less low, °F",
      formulas: [expect.stringContaining('"imperial"'), expect.anything()],
    }));
  test("two systems at once are refused", () =>
    expect(of("High °F", "Low °C")).toBe(
      '"High °F" and "Low °C" are in different units: choose columns of one system.',
    ));
  test("kilograms are refused", () =>
    expect(
      columnFor(
        {
          wish: wishFor("PREYRATIO"),
          at,
          columns: new Map([
            ["prey", 3],
            ["body", 2],
          ]),
          once: new Map(),
        },
        [log(["Date", "Name", "Weight (kg)", "Mouse (g)", "Taken"])],
      ),
    ).toMatch(/^"Weight \(kg\)" is in kg/));
});

test("rows out of order are told where an answer looks at the rows above", () => {
  const contents = sheet([
    ["Date", "Name", "Weight (g)", "Mouse (g)", "Taken"],
    [date(DAY + 7), "Ash", 140, 12, "yes"],
    [date(DAY), "Ash", 141, 12, "yes"],
  ]);
  const columns = new Map([
    ["dates", 0],
    ["animals", 1],
    ["masses", 2],
  ]);
  const column = columnFor(
    { wish: wishFor("growth"), at: { sheet: "Log", row: 1, column: 0 }, columns, once: new Map() },
    [contents],
  );
  expect(column).toMatchObject({ notes: [expect.stringMatching(/^Row 3 is earlier than the row above it/)] });
});

test("the action writes heading and formulas and nothing else, and a protected sheet is refused", async () => {
  const at = { sheet: "Log", row: 1, column: 0 };
  const choice = {
    wish: wishFor("PREYRATIO"),
    at,
    columns: new Map([
      ["prey", 1],
      ["body", 0],
    ]),
    once: new Map<string, string>(),
  };
  const cells = [
    ["Weight", "Mouse"],
    [140, 12],
    [310, null],
  ];
  const workbook = new MemoryWorkbook(() => [[0.1]]).put("Log", cells);
  const said = await addColumn.run(workbook, choice);
  expect(said.text).toBe(
    '"Meal, share of the animal" stands in Log!C1:C3. Empty until they can be answered: 1 row. For rows that you add below, fill the last formula down.',
  );
  expect([...(workbook.sheets[0]?.contents ?? [])].slice(5)).toEqual([
    ["0,2", "Meal, share of the animal"],
    ["1,2", { formula: '=IF(OR(B2="",A2=""),"",VIV.PREYRATIO(B2,A2))' }],
    ["2,2", { formula: '=IF(OR(B3="",A3=""),"",VIV.PREYRATIO(B3,A3))' }],
  ]);
  expect([...(workbook.sheets[0]?.formats ?? [])]).toEqual([
    ["1,2", "0.0%"],
    ["2,2", "0.0%"],
  ]);
  const locked = new MemoryWorkbook().put("Log", cells, { locked: true });
  const before = JSON.stringify(locked.snapshot());
  await expect(addColumn.run(locked, choice)).rejects.toThrow(
    '"Log" is protected. Unprotect it first. Nothing was changed.',
  );
  expect(JSON.stringify(locked.snapshot())).toBe(before);
});
