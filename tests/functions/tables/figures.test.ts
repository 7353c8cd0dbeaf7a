import { SheetError } from "../../../addin/boundary/cell";
import { massTrend } from "../../../functions/condition/massTrend";
import { figuresOf } from "../../../functions/tables/figures";
import { call, callCell, down } from "../../call";

test.each<[string, unknown, unknown]>([
  ["a number", 142.5, 142.5],
  ["0 is a figure", 0, 0],
  ["a number as text", " 142.5 ", 142.5],
  ["a word", "refused", ""],
  ["TRUE", true, ""],
  ["a blank", null, ""],
  ["a date", 46_113, 46_113],
])("%s", (_, cell, answer) => expect(callCell(figuresOf, cell)).toBe(answer));

test.each([
  ["a figure with its unit", "142 g"],
  ["a comma", "142,5"],
  ["digits of another script", "١٤٢"],
  ["a number beyond all", "1e999"],
])("%s is not left out in silence", (_, cell) =>
  expect(callCell(figuresOf, cell)).toBe(`#VALUE! range holds '${cell}': give a bare number, or words without digits`),
);

test("of a long cell the first 40 letters are told", () =>
  expect(callCell(figuresOf, `${"x".repeat(40)}123`)).toBe(
    `#VALUE! range holds '${"x".repeat(40)}': give a bare number, or words without digits`,
  ));

test("an error stays one, and spoils no other cell", () =>
  expect(call(figuresOf, down([1, new SheetError("#DIV/0!"), 3]))).toEqual(
    down([1, "#VALUE! range holds the error #DIV/0!", 3]),
  ));

test("a block keeps its shape", () =>
  expect(
    call(figuresOf, [
      [1, "x"],
      ["y", 4],
    ]),
  ).toEqual([
    [1, ""],
    ["", 4],
  ]));

test("a word in a column of masses no longer spoils a trend", () => {
  const dates = down(["2026-04-01", "2026-04-08", "2026-04-15", "2026-04-22"]);
  const masses = down([140, "refused", 144, 146]);
  expect(callCell(massTrend, dates, masses)).toMatch(/^#VALUE! row 2 of masses holds 'refused'/);
  expect(callCell(massTrend, dates, call(figuresOf, masses))).toBeCloseTo(2, 9);
});
