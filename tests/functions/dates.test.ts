import { dateOf, FIRST_DAY, isoOf, LAST_DAY, serial, serialOf, serialOfIso } from "../../functions/dates";

/** Counted by hand: 1 January 1900 is day 1, and a 29 February of that year is counted as well. */
test.each([
  ["1900-03-01", 61],
  ["1900-12-31", 366],
  ["2000-01-01", 36_526],
  ["2000-02-29", 36_585],
  ["2026-11-02", 46_328],
  ["9999-12-31", 2_958_465],
])("%s is day %d, and back", (text, day) => {
  expect(serialOfIso(text)).toBe(day);
  expect(isoOf(day)).toBe(text);
  expect(serialOf(dateOf(day + 0.75))).toBe(day);
  const [year, month, date] = text.split("-").map(Number) as [number, number, number];
  expect(serial(year, month, date)).toBe(day);
});

test("the first and the last day are those of the system", () =>
  expect([isoOf(FIRST_DAY), isoOf(LAST_DAY)]).toEqual(["1900-03-01", "9999-12-31"]));

/** ISO 8601: hours 00 to 23, minutes and seconds 00 to 59; a day has 86 400 seconds. */
test.each([
  ["2000-01-01T00:00", 0],
  ["2000-01-01 12:00", 43_200],
  ["2000-01-01T14:30:15", 52_215],
  ["2000-01-01T23:59", 86_340],
  ["2000-01-01T00:00:59", 59],
  ["2000-01-01T23:59:59", 86_399],
  ["2000-01-01T06:00:00.5", 21_600],
  ["2000-01-01T06:00:00.250", 21_600],
])("%s is %d seconds into its day, fractions dropped", (text, seconds) =>
  expect(serialOfIso(text)).toBe(36_526 + seconds / 86_400),
);

test("a time of day is written to the second, midnight as the day alone", () => {
  expect(isoOf(36_526 + 52_215 / 86_400)).toBe("2000-01-01T14:30:15");
  expect(isoOf(36_526.999999)).toBe("2000-01-02");
});

/** Days that are on no calendar (a century is no leap year unless 400 divides it), hours on no clock, and other text. */
test.each([
  "2026-02-29",
  "2100-02-29",
  "2026-02-30",
  "2026-04-31",
  "2026-13-01",
  "2026-00-10",
  "2026-01-00",
  "2026-01-32",
  "0026-01-01",
  "2026-11-02T24:00",
  "2026-11-02T12:60",
  "2026-11-02T12:00:60",
  "on 2026-11-02",
  "2026-11-02 or so",
  "2026-11-02T12:00:00.",
  "2026-11-02T12:00:00.x",
  "2026-11-02T12",
  "2026-11-2",
  "02.11.2026",
  "",
])("'%s' is no date", (text) => expect(serialOfIso(text)).toBeUndefined());
