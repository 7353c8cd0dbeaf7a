import fc from "fast-check";
import psychrolib from "psychrolib";
import { humidityAfter } from "../../../functions/air/humidityAfter";
import { callCell } from "../../call";
import { after } from "../../tables/humidity.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const answer = (...given: readonly number[]): number => callCell(humidityAfter, ...given) as number;

// IAPWS-IF97; 0.2 % of humidity, the difference between the vapour pressures. Beyond 100 the rest condenses.
yardstick(humidityAfter, { against: "IAPWS-IF97", within: 0.2, unit: "%" }, () =>
  after.map((row) => [answer(row.temperature, row.humidity, row.newTemperature), Math.min(100, row.newHumidity)]),
);

test("one of the rows condenses and one does not", () => {
  expect(after.some(({ newHumidity }) => newHumidity > 100)).toBe(true);
  expect(after.some(({ newHumidity }) => newHumidity < 100)).toBe(true);
});

// PsychroLib by the humidity ratio, which stays as it is: 0.2 %.
yardstick(humidityAfter, { against: "PsychroLib", within: 0.2, unit: "%" }, () =>
  (
    [
      [10, 80, 26],
      [5, 90, 20],
      [26, 60, 20],
      [18, 50, 30],
    ] as const
  ).map(([t, rh, then]) => {
    const ratio = psychrolib.GetHumRatioFromRelHum(t, rh / 100, 95_000);
    return [answer(t, rh, then), 100 * psychrolib.GetRelHumFromHumRatio(then, ratio, 95_000)];
  }),
);

test("unchanged where the temperature is, never above 100, and back again where nothing condensed", () =>
  fc.assert(
    fc.property(
      fc.double({ min: -45, max: 60, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.double({ min: -45, max: 60, noNaN: true }),
      (t, rh, then) => {
        expect(answer(t, rh, t)).toBeCloseTo(rh, 9);
        const later = answer(t, rh, then);
        expect(later).toBeLessThanOrEqual(100);
        if (later < 100 && later >= 1) expect(answer(then, later, t)).toBeCloseTo(rh, 6);
      },
    ),
  ));

test("what is too much for the cooler air condenses: 100 %, no more and no less", () =>
  expect([answer(20, 100, 10), answer(25, 60, 5)]).toEqual([100, 100]));

test("0.8 for 80 % gets a message that says so", () =>
  expect(callCell(humidityAfter, 20, 0.8, 25)).toMatch(/humidity holds 0.8: .*; 80 for 80 %, not 0.8$/));
