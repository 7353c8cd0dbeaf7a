import { Problem } from "../../../functions/problem";
import { seriesOf, type Series } from "../../../functions/readings/shared/series";
import { timeOutside } from "../../../functions/readings/timeOutside";
import { tracking } from "../../../functions/readings/tracking";
import { call, down } from "../../call";

const seriesFrom = (rows: readonly (readonly [time: number, temperature: number])[]) => {
  const times = Float64Array.from(rows, ([time]) => time);
  const temperatures = Float64Array.from(rows, ([, temperature]) => temperature);
  const series = seriesOf(times, temperatures);
  if (series instanceof Problem) throw new Error(series.message);
  return { times, temperatures, series };
};
const rowsOf = ({ times, temperatures }: Series) => [...times].map((time, i) => [time, temperatures[i]]);

// A year of minutes is a million figures: as loggers write them, they are used where they lie.
test.each<[string, [number, number][]]>([
  ["one reading", [[1, 20]]],
  [
    "times that rise, temperatures that do as they like",
    [
      [1, 20],
      [2, 19],
      [3, 21],
    ],
  ],
  [
    "two readings of one moment, the lower first",
    [
      [1, 20],
      [2, 19],
      [2, 21],
      [3, 18],
    ],
  ],
  [
    "the same reading twice",
    [
      [1, 20],
      [1, 20],
    ],
  ],
])("whole and in order, nothing is copied: %s", (_, rows) => {
  const { times, temperatures, series } = seriesFrom(rows);
  expect(series.times).toBe(times);
  expect(series.temperatures).toBe(temperatures);
  expect([series.skipped, series.untimed]).toEqual([[], 0]);
});

test("out of order or not whole, it is put in order, and the given columns stay as they are", () => {
  const rows = [
    [3, 18],
    [2, 21],
    [NaN, 5],
    [2, 19],
    [4, NaN],
    [1, 20],
  ] as const;
  const { times, temperatures, series } = seriesFrom(rows);
  expect(rowsOf(series)).toEqual([
    [1, 20],
    [2, 19],
    [2, 21],
    [3, 18],
  ]);
  expect([series.skipped, series.untimed]).toEqual([[4], 1]);
  expect([...times].map((time, i) => [time, temperatures[i]])).toEqual(rows);
});

test.each([
  ["TIMEOUTSIDE", timeOutside, [15, 25]],
  ["TRACKING", tracking, [down([46_286, 46_300, 46_342, 46_426, 46_468, 46_475]), 24, 8]],
] as const)("%s says what is wrong with its columns", (_, definition, rest) => {
  const first = (times: unknown[], temperatures: unknown[]) =>
    call(definition, down(times), down(temperatures), ...rest)[0]?.[0];
  expect(first([46_300, 46_301], [20])).toBe("#VALUE! times holds 2 cells and temperatures 1: give as many of each");
  expect(first(["a", "b"], [20, 21])).toBe("#VALUE! times holds no date and time that can be read");
  expect(first([46_300, 46_301], ["a", "b"])).toBe(
    "#VALUE! temperatures holds no number that can be read beside a time",
  );
});
