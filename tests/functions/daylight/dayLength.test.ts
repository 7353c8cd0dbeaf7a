import fc from "fast-check";
import * as SunCalc from "suncalc";
import { dayLength } from "../../../functions/daylight/dayLength";
import { dateOf, serial, serialOfIso } from "../../../functions/dates";
import { call, callCell, down } from "../../call";
import { rows } from "../../tables/dayLength.json";
import { yardstick } from "../../yardstick";

const MINUTE = 1 / 60;
const hours = (latitude: number, date: string | number): number => callCell(dayLength, latitude, date) as number;

/**
 * A minute below 60° and three from there to 66°: near the polar circle the sun crosses the horizon so slantingly that
 * 0.01° of height are a minute. A keeper's timer has steps of that size.
 */
const within = (latitude: number): number => (Math.abs(latitude) < 60 ? MINUTE : 3 * MINUTE);

test("both hemispheres are among the rows", () => {
  expect(rows.length).toBeGreaterThanOrEqual(48);
  expect(Math.min(...rows.map(({ latitude }) => latitude))).toBeLessThan(-50);
});

const off = rows.map(
  ({ date, latitude, astropy }) => [latitude, 60 * Math.abs(hours(latitude, date) - astropy)] as const,
);
const most = (isNear: boolean): string =>
  Math.max(...off.filter(([latitude]) => Math.abs(latitude) < 60 === isNear).map(([, minutes]) => minutes)).toFixed(2);
test(`off Astropy by at most ${most(true)} minutes below 60° and ${most(false)} above`, () => {
  for (const [latitude, minutes] of off) expect(minutes / 60).toBeLessThanOrEqual(within(latitude));
});

// Astropy 5.2.1, PyEphem 4.1.4 and astronomy-engine 2.1.19 agree among themselves to half a minute.
test.each(rows)("ephemerides: $date at $latitude°", ({ date, latitude, astropy, ephem, astronomyEngine }) => {
  for (const truth of [astropy, ephem, astronomyEngine]) {
    expect(Math.abs(hours(latitude, date) - truth)).toBeLessThanOrEqual(within(latitude));
  }
});
for (const [against, key] of [
  ["Astropy", "astropy"],
  ["PyEphem", "ephem"],
  ["Astronomy Engine", "astronomyEngine"],
] as const) {
  const near = rows.filter(({ latitude }) => Math.abs(latitude) < 60);
  yardstick(dayLength, { against, within: MINUTE, unit: "h" }, () =>
    near.map((row) => [hours(row.latitude, row.date), row[key]]),
  );
}

/** SunCalc 2 run here: sunrise and sunset at Greenwich's longitude. */
const sunCalc = (latitude: number, day: number): number => {
  const noon = new Date(dateOf(day).getTime() + 12 * 3_600_000);
  const { sunrise, sunset } = SunCalc.getTimes(noon, latitude, 0);
  return sunrise && sunset ? (sunset.getTime() - sunrise.getTime()) / 3_600_000 : NaN;
};

describe.each([2026, 2028, 1960, 2090])("SunCalc in %i", (year) => {
  const days = Array.from({ length: 366 }, (_, i) => serial(year, 1, 1) + i);
  const pairsAt = (latitude: number) => {
    const answers = call(dayLength, latitude, down(days));
    return days.map((day, i) => [answers[i]?.[0] as number, sunCalc(latitude, day)] as const);
  };
  test.each([-65, 65])("at %d°, every day", (latitude) => {
    for (const [answer, truth] of pairsAt(latitude)) {
      expect(Math.abs(answer - truth)).toBeLessThanOrEqual(within(latitude));
    }
  });
  const against = `SunCalc, every day of ${year} at ten latitudes below 60°`;
  yardstick(dayLength, { against, within: MINUTE, unit: "h" }, () =>
    [-59.9, -45, -33, -12, 0, 8, 27, 40, 52, 59.9].flatMap(pairsAt),
  );
});

test("polar day and polar night, north and south", () => {
  expect(hours(70, "2026-06-21")).toBe(24);
  expect(hours(70, "2026-12-21")).toBe(0);
  expect(hours(-70, "2026-06-21")).toBe(0);
  expect(hours(-70, "2026-12-21")).toBe(24);
  expect(hours(90, "2026-05-01")).toBe(24);
  expect(hours(-90, "2026-05-01")).toBe(0);
});

// North of the circle SunCalc says on which days the sun does not rise or set; at the turn of the season it may differ
// by a day.
test("the polar day of 69.65° N lasts as long as SunCalc says, to two days", () => {
  const days = Array.from({ length: 365 }, (_, i) => serial(2026, 1, 1) + i);
  const summer = days.filter((day) => hours(69.65, day) === 24).length;
  const winter = days.filter((day) => hours(69.65, day) === 0).length;
  const neither = days.filter((day) => !Number.isFinite(sunCalc(69.65, day))).length;
  expect(summer).toBeGreaterThan(55);
  expect(winter).toBeGreaterThan(40);
  expect(Math.abs(summer + winter - neither)).toBeLessThanOrEqual(2);
});

// What the caution says of the far side of the earth, whose day begins twelve hours apart.
test("twelve hours of longitude are at most three minutes at 60°", () => {
  const days = Array.from({ length: 365 }, (_, i) => serial(2026, 1, 1) + i);
  const farSide = Math.max(...days.map((day) => Math.abs(hours(60, day) - (hours(60, day) + hours(60, day + 1)) / 2)));
  expect(farSide * 60).toBeLessThanOrEqual(3);
  expect(farSide * 60).toBeGreaterThan(2);
});

test("between 0 and 24, and longer towards the pole in summer", () =>
  fc.assert(
    fc.property(
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.integer({ min: serialOfIso("1901-01-01"), max: serialOfIso("2199-12-31") }),
      (latitude, day) => {
        expect(hours(latitude, day)).toBeGreaterThanOrEqual(0);
        expect(hours(latitude, day)).toBeLessThanOrEqual(24);
      },
    ),
  ));

test("a latitude beyond the pole, and a date that is none", () => {
  expect(callCell(dayLength, 91, "2026-06-21")).toBe("#VALUE! latitude holds 91: give a number from -90 to 90 °");
  expect(callCell(dayLength, 50, "2026-02-30")).toMatch(
    /^#VALUE! date holds '2026-02-30': give a real date, or 2026-10-05/,
  );
});
