import { serial } from "../../functions/dates";
import { clockChanges } from "../../taskpane/actions/readings/clockChanges";

/** Readings of a logger that keeps local time, from the instants of the time zone database as the platform carries it. */
const local = (zone: string, from: Date, hours: number, minutes: number): number[] => {
  const clock = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    ...({
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      hourCycle: "h23",
    } as const),
  });
  return Array.from({ length: (hours * 60) / minutes }, (_, i) => {
    const parts = clock.formatToParts(new Date(from.getTime() + i * minutes * 60_000));
    const of = (kind: string): number => Number(parts.find(({ type }) => type === kind)?.value);
    return serial(of("year"), of("month"), of("day")) + (of("hour") * 60 + of("minute")) / 1440;
  });
};

test.each([10, 30, 60])("the autumn change in Berlin, 26 October 2025, readings every %d minutes", (minutes) => {
  const [words, ...rest] = clockChanges(local("Europe/Berlin", new Date("2025-10-25T12:00:00Z"), 30, minutes));
  expect(words).toMatch(/^2025-10-26: an hour comes twice \(back from 02:\d\d to 02:00\), as when clocks go back/);
  expect(rest).toEqual([]);
});

test("the spring change in Berlin, 30 March 2025", () => {
  expect(clockChanges(local("Europe/Berlin", new Date("2025-03-29T12:00:00Z"), 30, 10))).toEqual([
    "2025-03-30: an hour is missing (from 01:50 to 03:00), as when clocks go forward in spring. Nothing was filled in",
  ]);
});

test("south of the equator the months change places", () => {
  expect(clockChanges(local("Australia/Sydney", new Date("2025-04-05T06:00:00Z"), 20, 30))[0]).toMatch(/comes twice/);
  expect(clockChanges(local("Australia/Sydney", new Date("2025-10-04T06:00:00Z"), 20, 30))[0]).toMatch(/is missing/);
});

test("nothing is said of a clock that is not changed, of a gap by day, of a longer gap, or of readings a day apart", () => {
  expect(clockChanges(local("Asia/Tokyo", new Date("2025-10-25T12:00:00Z"), 48, 10))).toEqual([]);
  const readings = local("Asia/Tokyo", new Date("2025-03-29T15:00:00Z"), 24, 10);
  expect(clockChanges(readings.filter((_, i) => i < 80 || i >= 86))).toEqual([]);
  expect(clockChanges(readings.filter((_, i) => i < 6 || i >= 30))).toEqual([]);
  expect(clockChanges([45_000, 45_001, 45_002])).toEqual([]);
  expect(clockChanges([])).toEqual([]);
});
