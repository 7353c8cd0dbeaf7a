import { agreed, endsOf } from "../../addin/build/limits";
import { catalogue } from "../../functions/catalogue";
import type { CellParameter } from "../../functions/define";
import pinned from "./limits.json";

const ends = pinned as unknown as ReturnType<typeof endsOf>;

/**
 * Every limit of every argument, as it was agreed: what a keeper's sheet may hold does not change by a slip of a figure. One
 * that is changed on purpose is changed in limits.json by hand; `npm run generate` appends those of new arguments. That
 * the ends are taken and what lies beyond them is refused in words is tried in habits.ts.
 */
test("the limits are those that were agreed", () => expect(endsOf(catalogue)).toEqual(ends));

/**
 * ECMA-376, SpreadsheetML, "Date Representation": the 1900 system ends with 31 December 9999, which is 2,958,465, and 61 is
 * 1 March, the day after a 29 February that never was.
 */
test("a date may be any day of the spreadsheet's from 1 March 1900 on, a time any moment until the last of them has ended", () => {
  const ofDates = catalogue.flatMap(({ parameters }) =>
    Object.values(parameters)
      .flatMap((one): readonly CellParameter[] => (one.reads === "cell" ? [one] : one.columns.map(([, cell]) => cell)))
      .filter(({ kind }) => kind === "date"),
  );
  for (const [unit, last] of [
    ["date", 2_958_465],
    ["date and time", 2_958_466],
  ] as const) {
    const own = ofDates.filter((one) => one.unit === unit);
    expect(own.length).toBeGreaterThan(4);
    for (const { limits } of own) expect([limits?.least, limits?.most]).toEqual([61, last]);
  }
});

test("a new argument's limits are appended, and no other's are changed", () => {
  const { "LAPSE.temperature": _, ...others } = ends;
  const before = { ...others, "LAPSE.rate": [-1, 1] as const };
  expect(agreed(before, catalogue)).toEqual({ ...ends, "LAPSE.rate": [-1, 1] });
});
