import * as formulajs from "@formulajs/formulajs";
import fc from "fast-check";
import { lapseFit } from "../../../functions/climate/lapseFit";
import { call, callCell, down } from "../../call";
import { rows as pairs } from "../../tables/stationPairs.json";

const values = (answer: unknown[][]): number[] => answer.map(([, value]) => value as number);

/** SLOPE, INTERCEPT, RSQ and STEYX of Formula.js (MIT) on the same figures: the arithmetic is the same, so 1e-9. */
const expectAsFormulaJs = (temperatures: number[], elevations: number[]): void => {
  const [rate, seaLevel, r2, stations, residual] = values(call(lapseFit, down(temperatures), down(elevations))) as [
    number,
    number,
    number,
    number,
    number,
  ];
  expect(rate).toBeCloseTo(-1000 * Number(formulajs.SLOPE(temperatures, elevations)), 7);
  expect(seaLevel).toBeCloseTo(Number(formulajs.INTERCEPT(temperatures, elevations)), 7);
  expect(r2).toBeCloseTo(Number(formulajs.RSQ(temperatures, elevations)), 7);
  expect(stations).toBe(temperatures.length);
  expect(residual).toBeCloseTo(Number(formulajs.STEYX(temperatures, elevations)), 7);
};

// Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt. The Alpine stations of the pairs, each once.
const alpine = new Map(
  pairs
    .filter(({ country }) => country === "Germany" || country === "Switzerland")
    .flatMap((pair) => [
      [pair.low, { elevation: pair.lowElevation, means: pair.lowMeans }] as const,
      [pair.high, { elevation: pair.highElevation, means: pair.highMeans }] as const,
    ]),
);

test.each([0, 3, 6, 9])("Alpine stations, month index %i, as Formula.js", (month) => {
  const stations = [...alpine.values()];
  expect(stations.length).toBeGreaterThanOrEqual(6);
  expectAsFormulaJs(
    stations.map(({ means }) => means[month] as number),
    stations.map(({ elevation }) => elevation),
  );
});

test("any stations, as Formula.js", () =>
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: -400, max: 5000 }), { minLength: 3, maxLength: 30 }),
      fc.array(fc.integer({ min: -400, max: 400 }), { minLength: 30, maxLength: 30 }),
      (elevations, tenths) => {
        const temperatures = elevations.map((_, i) => (tenths[i] as number) / 10);
        fc.pre(new Set(temperatures).size > 1);
        expectAsFormulaJs(temperatures, elevations);
      },
    ),
  ));

test("an exact line is found again", () =>
  expect(call(lapseFit, [[15, 8.5, 2]], [[0, 1000, 2000]])).toEqual([
    ["Rate, K/km", 6.5],
    ["Temperature at sea level, °C", 15],
    ["r²", 1],
    ["Stations used", 3],
    ["Residual standard deviation, K", 0],
  ]));

test("a blank row is left out, half a row is asked for", () => {
  expect(values(call(lapseFit, down([15, null, 8.5, 2]), down([0, null, 1000, 2000])))[3]).toBe(3);
  expect(callCell(lapseFit, down([15, null, 8.5, 2]), down([0, 500, 1000, 2000]))).toBe(
    "#N/A row 2 of temperatures is blank",
  );
  expect(callCell(lapseFit, down([15, 12, 8.5, 2]), down([0, null, 1000, 2000]))).toBe(
    "#N/A row 2 of elevations is blank",
  );
});

test("too few, unequal lists, one elevation only", () => {
  expect(callCell(lapseFit, [[15, 8.5]], [[0, 1000]])).toBe("#N/A temperatures holds 2 stations: give three or more");
  expect(callCell(lapseFit, [[15, 8.5, 3]], [[0, 1000]])).toBe(
    "#VALUE! elevations holds 2 stations and temperatures 3: give one of each a station",
  );
  expect(callCell(lapseFit, [[15, 8.5, 3]], [[700, 700, 700]])).toBe(
    "#VALUE! elevations holds 700 m throughout: give stations at different elevations",
  );
});
