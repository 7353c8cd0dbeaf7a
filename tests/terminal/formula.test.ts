import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const root = join(__dirname, "..", "..");

/** Runs the command as `npm run -s formula --` does. */
const formula = (args: readonly string[], input = "") => {
  const ran = spawnSync(process.execPath, ["addin/terminal/run.mjs", ...args], {
    cwd: root,
    input,
    encoding: "utf8",
    maxBuffer: 64e6,
  });
  return { out: ran.stdout, err: ran.stderr, code: ran.status };
};
const answers = (out: string): unknown[] =>
  out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as unknown);

jest.setTimeout(120_000);

let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), "formula-"))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("JSON", () => {
  const given: readonly (readonly [formula: string, rows: unknown])[] = [
    ["=VIV.LAPSE({20;10},500,1500)", [[13.5], [3.5]]],
    ["=viv.lapse(20,500,1500)", [[13.5]]],
    ["=VIV.LAPSE(20,,1500)", [[{ error: "#N/A", message: "stationElevation is blank" }]]],
    // Text in a formula stays text, as other spreadsheets have it.
    [
      '=VIV.LAPSE("12%",500,1500)',
      [[{ error: "#VALUE!", message: "temperature holds '12%': give a number from -90 to 60 °C" }]],
    ],
    ['=VIV.LAPSE("20",500,1500)', [[13.5]]],
    [
      "=VIV.LAPSE(20)",
      [[{ error: "#VALUE!", message: "stationElevation is missing: VIV.LAPSE takes 3 to 5 arguments" }]],
    ],
    ["=VIV.LAPSE(1,2,3,4,,6)", [[{ error: "#VALUE!", message: "VIV.LAPSE takes 3 to 5 arguments: 6 given" }]]],
    ["=VIV.PRESSURE(1,,3)", [[{ error: "#VALUE!", message: "VIV.PRESSURE takes 1 to 2 arguments: 3 given" }]]],
    ['=IFERROR(VIV.LAPSE("x",1,2),"caught")', [["caught"]]],
    ["=ISNA(VIV.LAPSE(20,,1500))", [[true]]],
    ["=SUM(VIV.LAPSE({20;10},500,1500))", [[17]]],
    ["=LET(a,VIV.LAPSE(20,500,1500),a*2)", [[27]]],
    ["=1/3", [[1 / 3]]],
    ["=A1", [[null]]],
    ['=""', [[null]]],
    ['="2026-01-01"', [["2026-01-01"]]],
    ["=TRUE", [[true]]],
    ["=DATE(2026,10,5)", [[46300]]],
    ["=1/0", [[{ error: "#DIV/0!", message: "something is divided by 0" }]]],
    ["=NOT.THERE(1)", [[{ error: "#NAME?", message: "no function or name is called so" }]]],
    [
      "=SEQUENCE(2,2)",
      [
        [1, 2],
        [3, 4],
      ],
    ],
  ];
  let lines: unknown[];
  beforeAll(() => {
    const { out, err, code } = formula(["--json", ...given.map(([one]) => one)]);
    // Some of the answers are errors, and the exit status says so.
    expect({ err, code }).toEqual({ err: "", code: 1 });
    lines = answers(out);
  });
  test("is one line a formula", () => expect(lines).toHaveLength(given.length));
  test.each(given.map(([one, rows], i) => [one, rows, i] as const))("%s", (_, rows, i) =>
    expect(lines[i]).toEqual(rows),
  );
});

test("plain output is rows with tabs, dates as ISO, problems with their words", () => {
  const { out, code } = formula(["=VIV.RAMP(DATE(2026,10,5),24,8,42)", "=TRUE", '=VIV.LAPSE("x",1,2)', '="a\tb"']);
  expect(code).toBe(1);
  const lines = out.split("\n");
  expect(lines.slice(0, 2)).toEqual(["2026-10-05\t24", "2026-10-12\t21.333333333333332"]);
  expect(lines.slice(6)).toEqual([
    "2026-11-16\t8",
    "TRUE",
    "#VALUE! temperature holds 'x': give a number from -90 to 60 °C",
    "a b",
    "",
  ]);
});

test("plain output has words for the engine's own errors too", () => {
  const { out, code } = formula(["=NOFUNCTION(1)", "=1/0", "=VIV.LAPSE(20)"]);
  expect(code).toBe(1);
  expect(out.trimEnd().split("\n")).toEqual([
    "#NAME? no function or name is called so",
    "#DIV/0! something is divided by 0",
    "#VALUE! stationElevation is missing: VIV.LAPSE takes 3 to 5 arguments",
  ]);
});

test.each([
  ["UTF-16", [0xff, 0xfe, 0x00]],
  ["a picture", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ["text with a NUL", [0x31, 0x2c, 0x00, 0x32]],
  ["text that breaks off within a letter", [0x31, 0x0a, 0xc3]],
])("exit 2 and one line for a file that is no text: %s", (_, bytes) => {
  const file = join(folder, "odd.csv");
  writeFileSync(file, Uint8Array.from(bytes));
  const { out, err, code } = formula(["--csv", file, "=A1"]);
  expect({ out, code }).toEqual({ out: "", code: 2 });
  expect(err).toBe(`${file} is no UTF-8 text: save it as CSV in UTF-8\n`);
});

test("a file's cells stand at A1: numbers, ISO dates, blanks, and text that looks like a formula", () => {
  const file = join(folder, "log.csv");
  writeFileSync(file, "day;high;note\r\n2026-10-05;21.5;=1+1\r\n2026-10-06;;007\r\n");
  const { out, code } = formula([
    "--json",
    "--csv",
    file,
    "=A1:C3",
    "=VIV.LAPSE(B2:B3,500,1500)",
    "=A2=DATE(2026,10,5)",
    "=SUM(B:B)",
  ]);
  expect(code).toBe(1);
  expect(answers(out)).toEqual([
    [
      ["day", "high", "note"],
      [46300, 21.5, "=1+1"],
      [46301, null, "007"],
    ],
    [[15], [{ error: "#N/A", message: "temperature is blank" }]],
    [[true]],
    [[21.5]],
  ]);
});

describe("a file as a keeper writes it", () => {
  const file = (text: string): string => {
    const path = join(folder, "keeper.csv");
    writeFileSync(path, text);
    return path;
  };

  test("day first and a decimal comma are guessed, and said on the other output", () => {
    const path = file("Datum;g\n13.10.2024;165,1\n01.10.2024;160\n");
    const { out, err, code } = formula(["--json", "--csv", path, "=A2:B3", "=SUM(B2:B3)"]);
    expect(answers(out)).toEqual([
      [
        [45_578, 165.1],
        [45_566, 160],
      ],
      [[325.1]],
    ]);
    expect(code).toBe(0);
    expect(err).toBe(
      `${path}: read with semicolon between cells, decimal comma, dates as day, month, year (--dates and --decimal change that)\n`,
    );
  });

  test("two readings of one date are never chosen between", () => {
    const path = file("day,g\n05/10/2026,165\n");
    const asked = formula(["--csv", path, "=A2"]);
    expect({ out: asked.out, code: asked.code }).toEqual({ out: "", code: 2 });
    expect(asked.err).toContain("'05/10/2026' can be read in more than one way: say --dates day-month-year");
    expect(formula(["--csv", path, "--dates", "day-month-year", "=A2"]).out).toBe("2026-10-05\n");
    expect(formula(["--csv", path, "--dates", "month-day-year", "=A2"]).out).toBe("2026-05-10\n");
  });

  test("what is said holds, and what it cannot mean stays text and is named", () => {
    const path = file("day;g\n25/10/2026;24,5\n");
    const { out, err } = formula(["--csv", path, "--dates", "month-day-year", "--decimal", "point", "=A2:B2"]);
    expect(out).toBe("25/10/2026\t24,5\n");
    expect(err).toContain(
      "2 cells that look like a date or a figure stay text (row 2, column 1: '25/10/2026'; row 2, column 2: '24,5')",
    );
    expect(formula(["--csv", path, "--decimal", "comma", "=B2*2"]).out).toBe("49\n");
  });

  test.each([
    ["--dates", "american"],
    ["--decimal", ";"],
  ])("%s takes only its own words", (option, word) => {
    const { err, code } = formula(["--csv", file("a\n1\n"), option, word, "=A1"]);
    expect(code).toBe(2);
    expect(err).toContain(`${option} ${word}: give `);
  });
});

test("a hundred thousand rows go in and out", () => {
  const rows = 100_000;
  const file = join(folder, "long.csv");
  writeFileSync(file, Array.from({ length: rows }, (_, i) => i % 30).join("\n"));
  const { out, code } = formula(["--json", "--csv", file, `=VIV.LAPSE(A1:A${rows},500,1500)`]);
  expect(code).toBe(0);
  const [column] = answers(out) as [number[][]];
  expect(column).toHaveLength(rows);
  expect(column[29]?.[0]).toBeCloseTo(29 - 6.5, 9);
});

test("a thousand formulas from standard input take seconds", () => {
  const lines = Array.from({ length: 1000 }, (_, i) => `=VIV.LAPSE(${i / 100},500,1500)`);
  const begun = performance.now();
  const { out, code } = formula(["--json", "-"], `${lines.join("\n")}\n\n`);
  expect(code).toBe(0);
  expect(answers(out).map((answer) => (answer as number[][])[0]?.[0])).toEqual(
    lines.map((_, i) => expect.closeTo(i / 100 - 6.5, 9) as number),
  );
  // Ten times what two slow cores take: a minute would mean that each formula starts an engine.
  expect(performance.now() - begun).toBeLessThan(30_000);
});

test("--native prints a formula in functions that every spreadsheet has, or says that there is none", () => {
  expect(formula(["--native", "=VIV.LAPSE(24,300,1400)+VIV.PREYRATIO(A1,20)"])).toMatchObject({
    out: '=(24-6.5*(1400-300)/1000)+IF(A1="",NA(),IF(AND(A1>=0,A1<=100000),A1/20,VALUE("?")))\n',
    code: 0,
  });
  expect(formula(["--native", "=VIV.KOPPEN(A1:A12,B1:B12,4)"])).toMatchObject({
    out: "=VIV.KOPPEN(A1:A12,B1:B12,4) has no native twin: KOPPEN cannot be written in functions that every spreadsheet has\n",
    code: 1,
  });
});

test("--help prints pages of the handbook as text: functions by their names, others by their paths or titles", () => {
  const { out, code } = formula(["--help", "viv.lapse", "winter-trouble", "Cooling plan"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^VIV\.LAPSE\n\n {4}VIV\.LAPSE\(temperature, /);
  expect(out).toContain("\n\nCALL A REPTILE VET\n\n");
  expect(out).toContain("\n\nCooling plan\n\n");
  expect(out).not.toMatch(/\]\(|\*\*|\\[|*_]|&\w+;/);
});

test.each([
  ["nothing at all", [], "give a formula"],
  ["a page that is not there", ["--help", "x"], "the handbook has no page x: give the name of a function"],
  ["a formula without =", ["VIV.LAPSE(1,2,3)"], "is no formula: start it with ="],
  ["a formula that is not whole", ["=1", "=VIV.LAPSE(20,"], "=VIV.LAPSE(20, cannot be read"],
  ["an option that is not there", ["--cvs", "x", "=1"], "--cvs"],
  ["a file that is not there", ["--csv", "/nowhere/x.csv", "=1"], "/nowhere/x.csv cannot be read"],
])("exit 2 and one line for %s", (_, args, words) => {
  const { out, err, code } = formula(args);
  expect({ out, code }).toEqual({ out: "", code: 2 });
  expect(err.trimEnd().split("\n")).toHaveLength(1);
  expect(err).toContain(words);
});
