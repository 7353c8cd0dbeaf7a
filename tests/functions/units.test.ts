import { hasSystems, fromMetric, toMetric, units, type Unit } from "../../functions/units";

/**
 * What a figure is in the other system, by the definitions of the international yard and pound (recalled): the inch is 2.54
 * cm, the foot 0.3048 m, the mile 1.609344 km, the avoirdupois ounce 28.349523125 g; a degree Fahrenheit is 5/9 K, and 0 °C
 * is 32 °F. A row: so much metric is so much in the other system; nothing is nothing, but for 0 °C.
 */
const exact: Partial<Record<Unit, readonly [metric: number, other: number]>> = {
  celsius: [100, 212],
  kelvin: [5, 9],
  kelvinPerKilometre: [5 / 0.3048, 9],
  metre: [0.3048, 1],
  kilometre: [1.609344, 1],
  millimetre: [25.4, 1],
  centimetre: [2.54, 1],
  gram: [28.349523125, 1],
  gramPerPeriod: [28.349523125, 1],
  degreeDay: [5, 9],
  degreeHour: [5, 9],
};

test("every unit of two systems is held here", () =>
  expect(Object.keys(exact).sort()).toEqual(
    Object.keys(units)
      .filter((unit) => hasSystems(unit as Unit))
      .sort(),
  ));

test.each(Object.entries(exact) as [Unit, readonly [number, number]][])("%s", (unit, [metric, other]) => {
  const nothing = unit === "celsius" ? 32 : 0;
  expect(fromMetric(0, unit, "imperial")).toBe(nothing);
  expect(fromMetric(metric, unit, "imperial")).toBeCloseTo(other, 12);
  expect(toMetric(other, unit, "imperial")).toBeCloseTo(metric, 12);
  expect(toMetric(nothing, unit, "imperial")).toBe(0);
});
