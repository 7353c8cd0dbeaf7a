import fc from "fast-check";
import { serialOfIso } from "../../../functions/dates";
import { dayTable } from "../../../functions/readings/dayTable";
import { tracking } from "../../../functions/readings/tracking";
import { ramp } from "../../../functions/winter/ramp";
import { setPoint } from "../../../functions/winter/setPoint";
import { call, callCell, down } from "../../call";
import { anyMixedLog } from "./logs";
import { plans } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const dates = ["2026-09-21", "2026-10-05", "2026-11-16", "2027-02-08", "2027-03-22", "2027-03-29"];
const plan = down(dates);

test("by definition: DAYTABLE's days and means beside SETPOINT's answers", () => {
  const start = (serialOfIso("2026-10-05") as number) - 46_000;
  fc.assert(
    fc.property(anyMixedLog, fc.integer({ min: -10, max: 180 }), ([log, mixed], shift) => {
      const move = (times: readonly number[]): unknown[][] => down(times.map((time) => time + start + shift));
      const rows = call(tracking, move(mixed.times), down(mixed.temperatures), plan, 24, 8);
      const days = call(dayTable, move(log.times), down(log.temperatures));
      const wanted = call(setPoint, down(days.map(([day]) => day)), plan, 24, 8).flat() as number[];
      expect(rows.map(([day, , mean]) => [day, mean])).toEqual(days.map((row) => [row[0], row[5]]));
      expect(rows.map((row) => row[1])).toEqual(wanted);
      for (const [, set, mean, difference] of rows) {
        if (typeof mean === "number") expect(difference).toBeCloseTo(mean - (set as number), 9);
        else expect([mean, difference]).toEqual(["", ""]);
      }
    }),
    { numRuns: 60 },
  );
});

test("half-way down the set-point is half-way between warm and cold", () => {
  const times = down(["2026-10-26", "2026-10-26T12:00", "2026-10-26T23:00"]);
  expect(call(tracking, times, down([18, 18, 18]), plan, 24, 8, null, null, 720)).toEqual([
    [serialOfIso("2026-10-26"), 16, 18, 2],
  ]);
});

test("an unreadable reading is skipped, and a day without any has no row", () => {
  const rows = call(
    tracking,
    down(["2026-12-01T01:00", "2026-12-01T20:00", "2026-12-01T22:00", "2026-12-02T08:00"]),
    down([9, null, 9, "lost"]),
    plan,
    24,
    8,
    null,
    1,
    1440,
  );
  expect(rows).toEqual([[serialOfIso("2026-12-01"), 8, 9, 1]]);
});

test("a day of which too little is covered has a set-point and no mean", () => {
  const minutes = [0, 10, 20, 30, 40, 50, 60, 70].map((minute) => 46_357 + minute / 1440); // 2026-12-01
  expect(call(tracking, down(minutes), down(minutes.map(() => 9)), plan, 24, 8)).toEqual([[46_357, 8, "", ""]]);
});

test("a plan out of order and set-points the wrong way round say so", () => {
  expect(callCell(tracking, 46_300, 20, down([...dates].reverse()), 24, 8)).toMatch(
    /^#VALUE! plan holds .* give its dates in order$/,
  );
  expect(callCell(tracking, 46_300, 20, plan, 8, 24)).toMatch(/^#VALUE! cold holds 24 °C, above warm 8 °C/);
});

/** The rows of RAMP, each in force until the next: what a keeper does who turns the thermostat once a week. */
test.each([1, 5, 7, 10])("who turns the thermostat every %i days as RAMP says is never off", (step) => {
  const days = Array.from({ length: 190 }, (_, i) => (serialOfIso("2026-09-25") as number) + i);
  const rows = [
    ...(call(ramp, "2026-10-05", 24, 8, 42, step) as number[][]),
    ...(call(ramp, "2027-02-08", 8, 24, 42, step) as number[][]),
  ];
  const set = days.map((day) => rows.filter(([from]) => (from as number) <= day).at(-1)?.[1] ?? 24);
  // Two readings a day, just after and just before midnight: the box holds what it is set to.
  const times = down(days.flatMap((day) => [day + 0.001, day + 0.999]));
  const held = down(set.flatMap((one) => [one, one]));
  const off = call(tracking, times, held, plan, 24, 8, null, step, 1438);
  expect(off.length).toBe(days.length);
  for (const [, , , difference] of off as number[][]) expect(difference).toBeLessThan(0.01);
  for (const [, , , difference] of off as number[][]) expect(difference).toBeGreaterThan(-0.01);
  // Against the straight line a weekly keeper is up to 16 K · 6/42 off.
  const straight = call(tracking, times, held, plan, 24, 8, null, 1, 1438) as number[][];
  const worst = Math.max(...straight.map((row) => Math.abs(row[3] as number)));
  expect(worst).toBeCloseTo((16 * (step - 1)) / 42, 1);
});

// A box at 10 °C on each of those days: what is left is the set-point, by another interpolation.
yardstick(tracking, { against: "numpy 1.24.2 interp", within: 1e-8, unit: "K" }, () =>
  plans.flatMap(({ dates: six, warm, cold, days, setPoints }) => {
    const wanted = new Map(days.map((day, i) => [serialOfIso(day) as number, 10 - (setPoints[i] as number)]));
    const times = [...wanted.keys()].flatMap((day) => [day, day + 0.9]);
    const answer = call(tracking, down(times), down(times.map(() => 10)), down(six), warm, cold, null, 1, 1440);
    expect(answer.length).toBe(wanted.size);
    return answer.map(([day, , , off]) => [off as number, wanted.get(day as number) as number] as const);
  }),
);
