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
 * The same chapter as others have written it, to nine decimals: no figure of the formula is another. The obliquity there has
 * terms in the square and the cube of the centuries, which come to 0.0000006° by 2145 and to 0.0000034° by 2197.
 */
const FAR = serial(2145, 1, 1);
test("declination as astronomia has it, from 1901 to 2197", () => {
  expect(astronomia.length).toBeGreaterThan(50);
  for (const [moment, degrees] of astronomia as [number, number][]) {
    expect(Math.abs((declination(moment) * 180) / Math.PI - degrees)).toBeLessThan(moment < FAR ? 6e-7 : 3.5e-6);
  }
});
