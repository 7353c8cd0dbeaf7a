import { severalAnimals } from "../../functions/shared/severalAnimals";

/** Common practice, no source: half more on one day is no meal; on two days and half of all rows it is another animal. */
const asks = (...days: readonly (readonly number[])[]): boolean => {
  const rows = days.flatMap((values, day) => values.map((value) => [46_113 + 7 * day, value] as const));
  return (
    severalAnimals(
      rows.map(([day]) => day),
      rows.map(([, value]) => value),
      "masses",
      "gram",
    ) !== undefined
  );
};

test("figures of a day are far apart from half more on", () => {
  expect(asks([100, 150], [100, 150])).toBe(false);
  expect(asks([100, 150.1], [100, 150.1])).toBe(true);
  expect(asks([100, 120, 151], [151, 100, 120])).toBe(true);
});

test("as small as they may be: a hatchling weighed twice is one animal", () =>
  expect(asks([0.5, 0.5], [0.6, 0.6], [0.1, 0.15])).toBe(false));

test("two such days are asked about, one is a slip", () => {
  expect(asks([100, 200])).toBe(false);
  expect(asks([100, 200], [100])).toBe(false);
  expect(asks([100, 200], [100, 200])).toBe(true);
});

test("with half of the rows on such days, and not with fewer", () => {
  const alone = (count: number): number[][] => Array.from({ length: count }, () => [100]);
  expect(asks([100, 200], [100, 200], ...alone(4))).toBe(true);
  expect(asks([100, 200], [100, 200], ...alone(5))).toBe(false);
});

test("a figure of nothing is no animal's", () => expect(asks([0, 100], [0, 100])).toBe(false));

test("hatchlings of less than a gram are told apart too", () => expect(asks([0.5, 0.9], [0.5, 0.9])).toBe(true));
