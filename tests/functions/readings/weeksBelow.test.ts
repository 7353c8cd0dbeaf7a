import { weeksBelow } from "../../../functions/readings/weeksBelow";
import { seasonShift } from "../../../functions/climate/seasonShift";
import { call, down } from "../../call";
import { yardstick } from "../../yardstick";
import { grouped, worcester } from "./logs";

const weeks = (times: readonly unknown[], temperatures: readonly unknown[], threshold: number) =>
  call(weeksBelow, down(times), down(temperatures), threshold)[0] as [number, number, number];
const run = (days: number, first = 46_342) => Array.from({ length: days }, (_, i) => first + i);

// A plain count over the days of an hourly record, grouped by arquero: Worcester MA (US Government work). Exact.
yardstick(weeksBelow, { against: "NOAA hourly normals, grouped by arquero", within: 1e-9, unit: "weeks" }, () => {
  const { times, temperatures } = worcester();
  const means = grouped({ times, temperatures }).map(({ plainMean }) => plainMean);
  return [-3, 0, 4, 10, 20].map(
    (threshold) =>
      [weeks(times, temperatures, threshold)[0], means.filter((one) => one <= threshold).length / 7] as const,
  );
});

test("sixteen weeks at 4 °C are sixteen, and the limit itself counts", () => {
  expect(weeks(run(112), Array<number>(112).fill(4), 4)).toEqual([16, 16, 0]);
  expect(weeks(run(112), Array<number>(112).fill(4.01), 4)).toEqual([0, 0, 0]);
});

test("a weekly log is whole, a gap of eight days is not, and it ends a spell", () => {
  const weekly = run(16).map((_, i) => 46_342 + 7 * i);
  expect(weeks(weekly, Array<number>(16).fill(4), 4)).toEqual([106 / 7, 106 / 7, 0]);
  expect(weeks([46_342, 46_350], [4, 4], 4)).toEqual([9 / 7, 9 / 7, 0]); // seven days between
  expect(weeks([46_342, 46_351], [4, 4], 4)).toEqual([2 / 7, 1 / 7, 8]);
});

test("days between two readings lie on the straight line between them, in equal steps", () => {
  // 2, 4, 6, 8 °C on four days running, of which the two in the middle were not read.
  const among = (threshold: number) => weeks([46_342, 46_345], [2, 8], threshold)[0] * 7;
  expect([1.9, 2, 3.9, 4, 5.9, 6, 7.9, 8].map((one) => Math.round(among(one)))).toEqual([0, 1, 1, 2, 2, 3, 3, 4]);
});

test("a warm day ends a spell, and takes nothing from the weeks in all", () => {
  const temperatures = [...Array<number>(14).fill(4), 12, ...Array<number>(7).fill(3)];
  expect(weeks(run(22), temperatures, 5)).toEqual([3, 2, 0]);
});

test("rows in any order, several readings a day, and what cannot be read", () => {
  const times = ["2026-11-17T08:00", "2026-11-16T20:00", "2026-11-16T08:00", "2026-11-18T08:00", "lost"];
  expect(weeks(times, [4, 6, 3, "lost", 1], 5)).toEqual([2 / 7, 2 / 7, 0]);
  expect(call(weeksBelow, down(["x"]), down([4]), 5)[0]?.[0]).toBe(
    "#VALUE! times holds no date and time that can be read",
  );
});

/** A year's cold counts the same in either half of the world; on the equator, where no month is cold, there is none. */
test("at 40° north, 40° south, 10° and on the equator", () => {
  const north = [1, 2, 6, 11, 16, 21, 24, 23, 19, 13, 7, 2];
  const south = call(seasonShift, [north])[0] as number[];
  const daily = (months: readonly number[]) => months.flatMap((one) => Array<number>(30).fill(one));
  expect(weeks(run(360), daily(north), 7)).toEqual([150 / 7, 90 / 7, 0]);
  expect(weeks(run(360), daily(south), 7)).toEqual([150 / 7, 150 / 7, 0]);
  expect(weeks(run(360), daily(Array<number>(12).fill(24)), 7)[0]).toBe(0);
  expect(weeks(run(360), daily(Array<number>(12).fill(27)), 7)[0]).toBe(0);
});
