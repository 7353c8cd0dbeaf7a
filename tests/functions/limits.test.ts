import { agreed, endsOf } from "../../addin/build/limits";
import { catalogue } from "../../functions/catalogue";
import pinned from "./limits.json";

const ends = pinned as unknown as ReturnType<typeof endsOf>;

/**
 * Every limit of every argument, as it was agreed: what a keeper's sheet may hold does not change by a slip of a figure. One
 * that is changed on purpose is changed in limits.json by hand; `npm run generate` appends those of new arguments. That
 * the ends are taken and what lies beyond them is refused in words is tried in habits.ts.
 */
test("the limits are those that were agreed", () => expect(endsOf(catalogue)).toEqual(ends));

test("a new argument's limits are appended, and no other's are changed", () => {
  const { "LAPSE.temperature": _, ...others } = ends;
  const before = { ...others, "LAPSE.rate": [-1, 1] as const };
  expect(agreed(before, catalogue)).toEqual({ ...ends, "LAPSE.rate": [-1, 1] });
});
