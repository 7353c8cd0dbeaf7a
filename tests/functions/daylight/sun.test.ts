import { Body, Equator, Observer } from "astronomy-engine";
import { declination } from "../../../functions/daylight/shared/sun";
import { dateOf, serial } from "../../../functions/dates";
import { rows as astronomia } from "../../tables/sunDeclination.json";

/** From the middle of the earth, as the formula counts it: a keeper's place moves the sun by 0.002°. */
const fromTheMiddle = new Observer(0, 0, -6_378_137);
const daysOf = (year: number): number[] => Array.from({ length: 46 }, (_, i) => serial(year, 1, 1) + 8 * i);

/**
 * Astronomy Engine run here, apparent place of date. Meeus gives 0.01° for his low accuracy; against this it is 0.0033° at
 * most in these years, and 0.004° is asked for, so that every term has to be there.
 */
test.each([1901, 1950, 1992, 2000, 2008, 2017, 2026, 2050, 2099])("declination through %i within 0.004°", (year) => {
  for (const day of daysOf(year)) {
    const { dec } = Equator(Body.Sun, dateOf(day), fromTheMiddle, true, true);
    expect(Math.abs((declination(day) * 180) / Math.PI - dec)).toBeLessThan(0.004);
  }
});

/**
 * The same chapter as others have written it, to nine decimals: no figure of the formula is another. The obliquity there is
 * Meeus 22.2, in seconds of arc with terms in the square and the cube of the centuries; what ours leaves out is put in here.
 */
const RADIANS = Math.PI / 180;
const leftOut = (moment: number, delta: number): number => {
  const t = (moment - 36_526.5) / 36_525;
  const obliquity = (84_381.448 - 46.815 * t - 0.00059 * t ** 2 + 0.001813 * t ** 3) / 3600;
  return ((obliquity - (23.439291 - 0.0130042 * t)) * Math.tan(delta)) / Math.tan(obliquity * RADIANS);
};
test("declination as astronomia has it, from 1901 to 2197", () => {
  expect(astronomia.length).toBeGreaterThan(50);
  for (const [moment, degrees] of astronomia as [number, number][]) {
    const delta = declination(moment);
    expect(Math.abs(delta / RADIANS + leftOut(moment, delta) - degrees)).toBeLessThan(3e-9);
  }
});
