import fc from "fast-check";
import { dateOf } from "../../functions/dates";
import { dateOrders, decimals, separators, type Form } from "../../taskpane/text/form";
import { guessForm, guessSeparator } from "../../taskpane/text/guessForm";
import { misfitWords } from "../../taskpane/text/misfit";
import { readTable } from "../../taskpane/text/readTable";

const form: Form = { separator: ";", decimal: ".", dateOrder: "dmy" };

test.each([
  ["1", 1],
  ["-1.5", -1.5],
  [".5", 0.5],
  ["1e3", 1000],
  ["007", "007"],
  ["", null],
  ["  ", null],
  ["true", true],
  ["FALSE", false],
  ["2026-11-02", { date: 46_328 }],
  ["2/11/2026", { date: 46_328 }],
  ["02.11.26", { date: 46_328 }],
  ["2.11.2026 12:00", { date: 46_328.5 }],
  ["2026-13-02", "2026-13-02"],
  ["25/13/2026", "25/13/2026"],
  ["46328", 46_328],
  ["12%", "12%"],
  ["21.5 °C", "21.5 °C"],
  ["=1+1", "=1+1"],
  ["+1", 1],
  ["-", "-"],
  ["1,5", "1,5"],
  ["1.234.567", "1.234.567"],
  ["1e999", "1e999"],
] as const)("the cell '%s' of a text with the day first and a decimal point", (text, expected) => {
  expect(readTable(`"${text}";"x"`, form).cells).toEqual([[expected, "x"]]);
});

test("a decimal comma, and the month first", () => {
  const { cells, misfits } = readTable("24,5;05/10/2026\n24.5;25/10/2026\n", {
    separator: ";",
    decimal: ",",
    dateOrder: "mdy",
  });
  expect(cells).toEqual([
    [24.5, { date: 46_152 }],
    ["24.5", "25/10/2026"],
  ]);
  expect(misfits).toEqual([
    { row: 2, column: 1, text: "24.5" },
    { row: 2, column: 2, text: "25/10/2026" },
  ]);
});

test("a comma is between the cells only where nothing else is", () => {
  // Four figures with commas between three semicolons: the commas are more, and yet not what keeps the cells apart.
  expect(guessSeparator("24,5;23,1;22,0;21,9\n24,6;23,2;22,1;21,8\n")).toBe(";");
  expect(guessSeparator("a,b\n1,2\n")).toBe(",");
  expect(guessSeparator("day,g,note\n2026-10-05,1,fed; ok\n2026-10-06,2,cold; quiet\n")).toBe(",");
  expect(guessSeparator("Logger, kept by hand\n\nday;g\n13.10.2024;165,1\n14.10.2024;160\n")).toBe(";");
  expect(guessSeparator("one column\n1\n2\n")).toBe(",");
});

test("a date that could be two days is asked about, one that is the same everywhere is not", () => {
  expect(guessForm("day,g\n05/10/2026,1\n").ambiguous).toBe("05/10/2026");
  expect(guessForm("day,g\n05/10/2026,1\n", { dateOrder: "mdy" })).toEqual({
    form: { separator: ",", decimal: ".", dateOrder: "mdy" },
  });
  expect(guessForm("day,g\n2026-10-05,1\n").ambiguous).toBeUndefined();
  expect(guessForm("version,g\n1.2.3,1\n").ambiguous).toBeUndefined();
  expect(guessForm("day,g\n05/10/2026,1\n25/10/2026,2\n")).toEqual({
    form: { separator: ",", decimal: ".", dateOrder: "dmy" },
  });
});

test.each([
  ["25/10/2026", "mdy", ".", /no date in the order month, day, year: it stays text. Write 2026-10-25 if that is day/],
  ["05/10/2026", "ymd", ".", /Write 2026-10-05 if that is day, month, year, or 2026-05-10 if that is month, day, year/],
  ["31/02/2026", "dmy", ".", /'31\/02\/2026' is no day of the calendar: it stays text/],
  ["24,5", "dmy", ".", /'24,5' has a decimal comma, and figures are read with a decimal point.*Write 24\.5/],
  ["24.5", "dmy", ",", /'24\.5' has a decimal point.*Write 24,5/],
  ["1,234", "dmy", ".", /Write 1\.234 or 1234$/],
  ["25/10/2026", "dmy", ".", undefined],
  ["2026-10-25", "mdy", ".", undefined],
  ["24.5", "dmy", ".", undefined],
  ["1.2.3", "mdy", ".", undefined],
  ["warm, dry", "mdy", ".", undefined],
  ["", "mdy", ".", undefined],
] as const)("'%s' to somebody who writes %s and %s", (text, dateOrder, decimal, words) => {
  const said = misfitWords(text, { dateOrder, decimal });
  if (words) expect(said).toMatch(words);
  else expect(said).toBeUndefined();
});

const two = (figure: number): string => String(figure).padStart(2, "0");

test("property: a table written in any form is read back as it was, or its dates are asked about; never another day", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...separators),
      fc.constantFrom(...dateOrders),
      fc.constantFrom(...decimals),
      fc.array(fc.tuple(fc.integer({ min: 40_000, max: 50_000 }), fc.integer({ min: -999, max: 99_999 })), {
        minLength: 1,
        maxLength: 40,
      }),
      (separator, dateOrder, decimal, rows) => {
        fc.pre(separator !== "," || decimal === ".");
        const text = rows
          .map(([serial, tenths]) => {
            const date = dateOf(serial);
            const [y, m, d] = [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())];
            const day = { ymd: `${y}/${m}/${d}`, dmy: `${d}/${m}/${y}`, mdy: `${m}/${d}/${y}` }[dateOrder];
            return [day, (tenths / 10).toFixed(1).replace(".", decimal)].join(separator);
          })
          .join("\n");
        const whole = rows.map(([serial, tenths]) => [{ date: serial }, tenths / 10]);
        expect(readTable(text, { separator, dateOrder, decimal }).cells).toEqual(whole);
        const { form: guessed, ambiguous } = guessForm(text);
        const wrong = JSON.stringify(readTable(text, guessed).cells) !== JSON.stringify(whole);
        expect(wrong && ambiguous === undefined).toBe(false);
      },
    ),
    { numRuns: 200 },
  );
});
