import { missed, toldOf, type Line } from "./race";

const table = (...lines: Line[]) => [{ title: "T", lines }];

test("what keeps to its limit, or has none, is not missed", () =>
  expect(
    missed(
      table({ what: "at it", ratio: 4, allowed: 4 }, { what: "free", ratio: 9 }, { what: "alone", milliseconds: 3 }),
    ),
  ).toEqual([]));

test("what is over its limit is missed, and so is what has no ratio to hold against it", () =>
  expect(
    missed(
      table(
        { what: "over", ratio: 4.01, allowed: 4 },
        { what: "unmeasured", allowed: 1 },
        { what: "broken", ratio: NaN, allowed: 1 },
      ),
    ),
  ).toEqual(["T, over: 4.01, allowed 4", "T, unmeasured: no ratio, allowed 1", "T, broken: NaN, allowed 1"]));

test("what the README tells is told by run, and not at all where something was not measured", () => {
  const page = { title: "P", run: "page", lines: [{ what: "opened", told: { open: 2 } }] };
  const both = [
    ...table({ what: "one", told: { open: 30 } }, { what: "two", told: { save: 40 } }, { what: "three" }),
    page,
  ];
  expect(Object.fromEntries(toldOf(both) ?? [])).toEqual({ bench: { open: 30, save: 40 }, page: { open: 2 } });
  expect(toldOf([...both, ...table({ what: "start-up", missing: "no Chromium" })])).toBeUndefined();
});
