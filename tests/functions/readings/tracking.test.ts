import fc from "fast-check";
import { serialOfIso } from "../../../functions/dates";
import { dayTable } from "../../../functions/readings/dayTable";
import { tracking } from "../../../functions/readings/tracking";
import { ramp } from "../../../functions/winter/ramp";
import { setPoint } from "../../../functions/winter/setPoint";
import { call, callCell, down } from "../../call";
import { anyMixedLog } from "./logs";

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
      for (const [, set, mean, difference] of rows as number[][]) {
        expect(difference).toBeCloseTo((mean as number) - (set as number), 9);
      }
    }),
    { numRuns: 60 },
  );
});

test("half-way down the set-point is half-way between warm and cold", () => {
  expect(call(tracking, "2026-10-26T12:00", 18, plan, 24, 8)).toEqual([[serialOfIso("2026-10-26"), 16, 18, 2]]);
});

test("an unreadable reading is skipped, and a day without any has no row", () => {
  const rows = call(
    tracking,
    down(["2026-12-01T08:00", "2026-12-01T20:00", "2026-12-02T08:00"]),
    down([9, null, "lost"]),
    plan,
    24,
    8,
  );
  expect(rows).toEqual([[serialOfIso("2026-12-01"), 8, 9, 1]]);
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
  const off = call(tracking, down(days.map((day) => day + 0.5)), down(set), plan, 24, 8, null, step);
  for (const [, , , difference] of off as number[][]) expect(difference).toBeCloseTo(0, 9);
  // Against the straight line a weekly keeper is up to 16 K · 6/42 off.
  const straight = call(tracking, down(days.map((day) => day + 0.5)), down(set), plan, 24, 8) as number[][];
  const worst = Math.max(...straight.map((row) => Math.abs(row[3] as number)));
  expect(worst).toBeCloseTo((16 * (step - 1)) / 42, 1);
});
