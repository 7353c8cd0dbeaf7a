import fc from "fast-check";
import psychrolib from "psychrolib";
import { dewPoint } from "../../../functions/air/dewPoint";
import { cautions } from "../../../functions/cautions";
import { callCell } from "../../call";
import { saturation } from "../../tables/humidity.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (temperature: number, humidity: number): number => callCell(dewPoint, temperature, humidity) as number;

// PsychroLib uses ASHRAE's vapour pressure; the two differ by up to 0.3 %, which is 0.044 K of dew point at 0 °C and less above. Below 0 °C it
// answers the frost point over ice, so only dew points above 0 °C are held against it.
yardstick(dewPoint, { against: "PsychroLib", within: 0.045, unit: "K" }, () =>
  [1, 5, 10, 15, 20, 25, 30, 35, 40]
    .flatMap((t) => [20, 40, 60, 80, 95, 100].map((rh) => [at(t, rh), psychrolib.GetTDewPointFromRelHum(t, rh / 100)]))
    .filter((pair): pair is [number, number] => (pair[1] as number) > 0.05),
);

// IAPWS-IF97: air that is saturated at the colder of two temperatures must answer it. 0.045 K for the same reason.
yardstick(dewPoint, { against: "IAPWS-IF97", within: 0.045, unit: "K" }, () =>
  saturation.flatMap((warm, i) =>
    saturation
      .slice(0, i)
      .map((cold) => [at(warm.temperature, (100 * cold.pressure) / warm.pressure), cold.temperature] as const),
  ),
);

test("saturated air is at its dew point, and no dew point is above the air", () =>
  fc.assert(
    fc.property(
      fc.double({ min: -45, max: 60, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      (t, rh) => {
        expect(at(t, 100)).toBeCloseTo(t, 9);
        expect(at(t, rh)).toBeLessThanOrEqual(t + 1e-9);
      },
    ),
  ));

test("0.8 for 80 % gets a message that says so", () =>
  expect(callCell(dewPoint, 20, 0.8)).toBe(
    "#VALUE! humidity holds 0.8: give a number from 1 to 100 %; 80 for 80 %, not 0.8",
  ));

test("in Fahrenheit", () => expect(callCell(dewPoint, 77, 80, "imperial")).toBeCloseTo(at(25, 80) * 1.8 + 32, 9));

/**
 * The frost point by ASHRAE's vapour pressure over ice (PsychroLib), which the next test holds against a table; the air's
 * vapour is 80 % of that over water at -10 °C, as hygrometers and weather reports have it (WMO-No. 8).
 */
test("what the caution says of the frost point", () => {
  const dew = at(-10, 80);
  const overWater = (celsius: number): number => 100 * 6.112 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  const frost = psychrolib.GetTDewPointFromVapPres(-10, overWater(dew));
  expect(cautions.overWater).toContain(`by ${(frost - dew).toFixed(1)} K in air of -10 °C and 80 %`);
});

// Appendix of the manual of a humidity analyser, vapour pressure of water over ice, mm of mercury. 0.2 %: three decimals, and an older formula.
test("over ice, PsychroLib's vapour is that of a printed table; air saturated there is short of DEWPOINT's water", () => {
  const overIce = [
    [0, 4.579],
    [-2, 3.88],
    [-5, 3.013],
    [-10, 1.95],
    [-15, 1.241],
    [-20, 0.776],
  ] as const;
  for (const [celsius, mercury] of overIce) {
    expect(Math.abs(psychrolib.GetSatVapPres(celsius) / 133.322 / mercury - 1)).toBeLessThan(0.002);
    const humidity = (mercury * 133.322) / (6.112 * Math.exp((17.62 * celsius) / (243.12 + celsius)));
    if (celsius < 0) expect(at(celsius, Math.min(100, humidity))).toBeLessThan(celsius - 0.1);
  }
});
