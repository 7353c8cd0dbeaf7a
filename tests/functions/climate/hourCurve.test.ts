import fc from "fast-check";
import { cautions } from "../../../functions/cautions";
import { hourCurve } from "../../../functions/climate/hourCurve";
import { AIR_150_CM, hourCurve as curve } from "../../../functions/climate/shared/hourCurve";
import { dayLength } from "../../../functions/daylight/dayLength";
import { call, callCell, down } from "../../call";
import { worcesterDays } from "../../normals";
import { mean, rms } from "../../statistics";
import { rows } from "../../tables/hourCurves.json";
import { yardstick, yardstickOf } from "../../yardstick";

/**
 * TrenchR 1.1.1 takes the lag of the minimum only as 0, so the shared arithmetic is held against it with that lag. Its
 * rows have ten decimals: 1e-8. The model has a step at dawn: at sunrise itself TrenchR answers the end of the night, the
 * curve the beginning of the day, so there the curve is asked a moment earlier.
 */
yardstick(hourCurve, { against: "TrenchR 1.1.1", within: 1e-8, unit: "K" }, () =>
  rows.map(({ high, low, sunrise, sunset, hour, temperature }) => {
    // The curve counts from solar noon; the rows' noon lies between their sunrise and sunset.
    const shift = 12 - (sunrise + sunset) / 2;
    const answer = curve(high, low, sunset - sunrise, { ...AIR_150_CM, low: 0 })(
      (hour + shift + 24 - (hour === sunrise ? 1e-9 : 0)) % 24,
    );
    return [answer, temperature];
  }),
);

const DAY = [22, 10, 14] as const;
const at = (...hours: readonly number[]): number[] =>
  call(hourCurve, ...DAY, down(hours)).map(([value]) => value as number);

// Parton & Logan 1981: the low 0.17 h before sunrise (5:00), the sine from there.
test("the low stands before sunrise, the high after noon", () => {
  expect(at(5 - 0.17)[0]).toBeCloseTo(10, 9);
  const fine = Array.from({ length: 241 }, (_, i) => i / 10);
  const values = at(...fine);
  const hottest = fine[values.indexOf(Math.max(...values))] as number;
  expect(Math.max(...values)).toBeCloseTo(22, 2);
  expect(Math.abs(hottest - (12 + 1.86 - 0.17))).toBeLessThan(0.06);
});

test("at noon and at sunset by the sine, at midnight by the decay, worked out by hand", () => {
  const sine = (hours: number): number => 10 + 12 * Math.sin((Math.PI * hours) / 17.72);
  const sunset = sine(14.17);
  expect(at(12, 19, 0, 24)).toEqual([
    expect.closeTo(sine(7.17), 9),
    expect.closeTo(sunset, 9),
    expect.closeTo(10 + (sunset - 10) * Math.exp(-2.2 * 0.5), 9),
    expect.closeTo(10 + (sunset - 10) * Math.exp(-2.2 * 0.5), 9),
  ]);
});

test("without hours, 24 rows of hour and temperature; with hours, the temperatures alone", () => {
  const table = call(hourCurve, ...DAY);
  expect(table.map(([hour]) => hour)).toEqual(Array.from({ length: 24 }, (_, hour) => hour));
  expect(call(hourCurve, ...DAY, down([3, null, 15]))).toEqual([[table[3]?.[1]], [""], [table[15]?.[1]]]);
});

test("never leaves high and low", () =>
  fc.assert(
    fc.property(
      fc.double({ min: -40, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 2, max: 22, noNaN: true }),
      (low, swing, hours) => {
        fc.pre(low + swing <= 60);
        for (const [, value] of call(hourCurve, low + swing, low, hours) as [number, number][]) {
          expect(value).toBeGreaterThanOrEqual(low - 1e-9);
          expect(value).toBeLessThanOrEqual(low + swing + 1e-9);
        }
      },
    ),
  ));

/**
 * NOAA hourly normals 1981-2010, Worcester MA, 42.27° N (US Government work): each day's own high and low, the hours
 * by the clock, which is 12 minutes and the equation of time from the sun's. Reported, not tuned to; the model is made
 * for single days, and normals are smoother. 1.5 K is two thirds of what a flat line at the mid-point would leave.
 */
describe("NOAA hourly normals", () => {
  const off = worcesterDays.flatMap(([day, hours]) => {
    const high = Math.max(...hours);
    const low = Math.min(...hours);
    const light = callCell(dayLength, 42.27, `2000-${day}`);
    return call(hourCurve, high, low, light).map(
      ([hour, value]) => (value as number) - (hours[hour as number] as number),
    );
  });
  const flat = worcesterDays.flatMap(([, hours]) =>
    hours.map((hour) => (Math.max(...hours) + Math.min(...hours)) / 2 - hour),
  );

  test("nearly all days are whole", () => expect(worcesterDays.length).toBeGreaterThan(355));
  yardstickOf(
    hourCurve,
    { against: "NOAA hourly normals 1981-2010", figure: "RMSE of the hours", least: 0, most: 1.5, unit: "K" },
    () => ({ figure: rms(off), values: off.length }),
  );
  test(`mean ${mean(off).toFixed(2)} K; flat at the mid-point RMSE ${rms(flat).toFixed(2)} K`, () =>
    expect(rms(off)).toBeLessThan(rms(flat) / 2));
});

test("a low above its high, and a day of 24 hours", () => {
  expect(callCell(hourCurve, 10, 22, 14)).toBe("#VALUE! low holds 22 °C, above high 10 °C: are they swapped?");
  expect(callCell(hourCurve, 22, 10, 24)).toBe("#VALUE! dayLength holds 24: give a number from 2 to 22 h");
});

test.each([2, 2.5, 3, 3.3, 3.4, 5, 10])("in a day of %d hours the high is reached", (light) => {
  const temperature = curve(22, 10, light);
  const highest = Math.max(...Array.from({ length: 2401 }, (_, i) => temperature(i / 100)));
  expect(highest).toBeCloseTo(22, 4);
});

// Parton & Logan 1981: the high 1.86 h after noon (and 0.17 h before, with the low); from then on the night's decay of 2.2.
test.each([2, 2.5, 3, 3.3])("in a day of %d hours the night's law begins with the high", (light) => {
  const temperature = curve(22, 10, light);
  for (const later of [0.001, 0.05, 0.5, 3, 9])
    expect(temperature(12 + 1.86 - 0.17 + later)).toBeCloseTo(10 + 12 * Math.exp((-2.2 * later) / (24 - light)), 9);
});

test("the caution names the clock", () => expect(cautions.modelHours).toContain("solar time"));
