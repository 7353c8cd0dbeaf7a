import fc from "fast-check";
import { setManner } from "../../addin/preview/manner";
import { parseDate, parseNumber } from "../../addin/preview/numfmt";
import { shortFigure } from "../../addin/preview/drawnFigures";
import { dateOf } from "../../functions/dates";
import { dateOrders, decimals } from "../../taskpane/text/form";
import { mannerOf } from "../../taskpane/text/mannerOf";

const OCTOBER = 46_300; // 5 October 2026, counted by a spreadsheet
const MAY = 46_152; // 10 May 2026

afterAll(() => setManner({ dateOrder: "ymd", decimal: "." }));

describe("what is typed or pasted, as the engine is told", () => {
  test.each([
    ["dmy", "05/10/2026", OCTOBER],
    ["dmy", "25/10/2026", 46_320],
    ["dmy", "05.10.2026", OCTOBER],
    ["dmy", "5-10-26", OCTOBER],
    ["dmy", "10/25/2026", undefined],
    ["mdy", "05/10/2026", MAY],
    ["mdy", "25/10/2026", undefined],
    ["mdy", "10/25/2026", 46_320],
    ["ymd", "05/10/2026", undefined],
    ["ymd", "26/10/05", OCTOBER],
    ["dmy", "2026-10-05", OCTOBER],
    ["mdy", "2026-10-05", OCTOBER],
    ["mdy", "2026/10/05 12:00", OCTOBER + 0.5],
    ["mdy", "5 Oct 2026", OCTOBER],
    ["dmy", "Mon 05/10/2026", undefined],
    ["dmy", "05 10 2026", undefined],
    ["dmy", "5-10", undefined],
    ["dmy", "31/02/2026", undefined],
  ] as const)("%s: %s", (dateOrder, text, serial) => {
    setManner({ dateOrder, decimal: "." });
    expect(parseDate(text)?.v).toBe(serial);
    // And no figure either: with a decimal comma, points would only group its digits.
    setManner({ dateOrder, decimal: "," });
    if (serial === undefined) expect(parseNumber(text)).toBeNull();
  });

  test("a day and a month are of this year, in the keeper's order", () => {
    const year = new Date().getFullYear();
    for (const [dateOrder, text] of [
      ["dmy", "5/10"],
      ["mdy", "10/5"],
      ["ymd", "10/5"],
    ] as const) {
      setManner({ dateOrder, decimal: "." });
      const date = dateOf(Number(parseDate(text)?.v));
      expect([date.getFullYear(), date.getMonth() + 1, date.getDate()]).toEqual([year, 10, 5]);
    }
  });

  test.each([
    [".", "24.5", 24.5],
    [".", "1e3", 1000],
    [",", "24,5", 24.5],
    [",", "-,5", -0.5],
    [",", "1.234,5", 1234.5],
    [",", "1.234.567", 1_234_567],
    [",", "12,5%", 0.125],
    [",", "24.5", undefined],
    [",", "1.234", undefined],
    [",", "1.23,4", undefined],
    [",", "7", 7],
  ] as const)("decimal %s: %s", (decimal, text, value) => {
    setManner({ dateOrder: "dmy", decimal });
    expect(parseNumber(text)?.v).toBe(value);
  });

  test("property: a date by figures is the day that the order means, or none", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...dateOrders),
        fc.constantFrom(...decimals),
        fc.constantFrom("/", ".", "-"),
        fc.integer({ min: 36_526, max: 54_788 }),
        fc.constantFrom(...dateOrders),
        (dateOrder, decimal, sign, serial, written) => {
          setManner({ dateOrder, decimal });
          const date = dateOf(serial);
          const [y, m, d] = [date.getFullYear(), date.getMonth() + 1, date.getDate()];
          const text = { ymd: [y, m, d], dmy: [d, m, y], mdy: [m, d, y] }[written].join(sign);
          const read = parseDate(text)?.v;
          if (written === dateOrder || written === "ymd") expect(read).toBe(serial);
          // In another order it may be another day of the calendar: only then is it read, and as that day.
          else if (read !== undefined) {
            const other = dateOf(Number(read));
            expect([other.getDate(), other.getMonth() + 1]).toEqual([m, d]);
            expect(dateOrder).not.toBe("ymd");
          }
        },
      ),
    );
  });
});

// Unicode CLDR, as the platform carries it.
test.each([
  ["en-GB", "dmy", "."],
  ["en-US", "mdy", "."],
  ["de-DE", "dmy", ","],
  ["fr-FR", "dmy", ","],
  ["sv-SE", "ymd", ","],
  ["ja-JP", "ymd", "."],
  ["fa-IR", "ymd", "."],
] as const)("a browser in %s", (locale, dateOrder, decimal) =>
  expect(mannerOf(locale)).toEqual({ dateOrder, decimal }),
);

test.each([
  [21.333333333333332, "21.3333"],
  [0.012345678, "0.01235"],
  [8, "8"],
  [-1234.5, "-1234.5"],
  [1e-7, "1e-7"],
])("%d is drawn as %s", (value, text) => expect(shortFigure(value)).toBe(text));
