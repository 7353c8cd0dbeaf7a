import { byWord, numeral } from "../../functions/twin";

const rates = [
  ["high", "6.5"],
  ["low", "4.5"],
  ["", "A1"],
] as const;

test("a word that stands in the formula itself is its figure, whatever its capitals; what is none of the words stands for itself", () => {
  expect(['"high"', '"Low"', '" low "', '"lows"', "3"].map((word) => byWord(word, rates))).toEqual([
    "6.5",
    "4.5",
    "4.5",
    "A1",
    "A1",
  ]);
  expect(
    byWord('"say ""aye"""', [
      ['say "aye"', "1"],
      ["", "2"],
    ]),
  ).toBe("1");
  expect(byWord("A1", rates)).toBe('IF(A1="high",6.5,IF(A1="low",4.5,A1))');
});

/** What a spreadsheet keeps of a number: 15 digits. A negative one is a piece of its own: 2^-1, and not 2 less 1. */
test("a number in a formula", () =>
  expect([1 / 3, 0.1 + 0.2, 2e-9, 1e21, -4.5, 0].map(numeral)).toEqual([
    "0.333333333333333",
    "0.3",
    "2E-9",
    "1E+21",
    "(-4.5)",
    "0",
  ]));
