import * as formulajs from "@formulajs/formulajs";
import fc from "fast-check";
import { lapseFit } from "../../../functions/climate/lapseFit";
import { call, callCell, down } from "../../call";
import { uniform } from "../../statistics";
import { yardstick, yardstickOf } from "../../yardstick";
import { rows as pairs } from "../../tables/stationPairs.json";
import norris from "../../tables/norris.json";

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
  if (stations < 5) expect(r2).toBe(`#N/A too few to tell: ${stations} stations, a fit needs 5`);
  else expect(r2).toBeCloseTo(Number(formulajs.RSQ(temperatures, elevations)), 7);
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
    ["r²", "#N/A too few to tell: 3 stations, a fit needs 5"],
    ["Stations used", 3],
    ["Residual standard deviation, K", 0],
    ["Rate, least, K/km", 6.5],
    ["Rate, most, K/km", 6.5],
  ]));

/**
 * r = stats.linregress(elevations in km, temperatures); -r.slope -+ stats.t.ppf(0.95, n - 2) * r.stderr. 1e-3 of the rate:
 * Student's t is that near from three degrees of freedom up, and exact below.
 */
yardstick(
  lapseFit,
  { against: "scipy 1.17.1 linregress and t, 90 % range of the rate", within: 2e-3, unit: "share" },
  () =>
    (
      [
        [
          [14.2, 11, 8.5, 5.1],
          [200, 700, 1100, 1700],
          [5.676181045, 6.464605705],
        ],
        [
          [14.2, 10.4, 7.7],
          [200, 700, 1300],
          [0.274595208, 11.450679517],
        ],
        [
          [15.1, 12.2, 9.9, 7.4, 4.2, 3.9],
          [100, 600, 900, 1400, 1900, 2050],
          [5.468899088, 6.225573274],
        ],
      ] as const
    ).flatMap(([temperatures, elevations, wanted]) => {
      const answer = values(call(lapseFit, down(temperatures), down(elevations)));
      return wanted.map((outside, i) => [answer[5 + i] as number, outside] as const);
    }),
);

/** Stations that truly fall by 6.5 K/km, each 1 K off by chance: nine ranges in ten hold the rate, of three stations too. */
for (const stations of [3, 5, 8]) {
  const random = uniform(stations);
  const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const against = `600 simulated mountains of ${stations} stations`;
  yardstickOf(
    lapseFit,
    { against, figure: "share of the rates inside", least: 0.87, most: 0.93, unit: "share" },
    () => {
      const inside = Array.from({ length: 600 }, () => {
        const elevations = Array.from({ length: stations }, () => 2000 * random());
        const answer = values(
          call(lapseFit, down(elevations.map((one) => 15 - 0.0065 * one + gauss())), down(elevations)),
        );
        return (answer[5] as number) <= 6.5 && 6.5 <= (answer[6] as number);
      });
      return { figure: inside.filter(Boolean).length / inside.length, values: inside.length };
    },
  );
}

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

/**
 * The certified line of NIST's Norris data: its y, times 0.05 so that they are temperatures, as °C and its x as metres. The
 * fit is linear in y, so that what is certified scales alike. 1e-8 of each:
 * the intercept is a small difference of large figures.
 */
yardstick(lapseFit, { against: "NIST StRD Norris, certified values", within: 1e-8, unit: "share" }, () => {
  const scale = 0.05;
  const [rate, seaLevel, r2, stations, residual] = values(
    call(lapseFit, down(norris.y.map((one) => one * scale)), down(norris.x)),
  ) as [number, number, number, number, number];
  expect(stations).toBe(36);
  const { slope, intercept, r2: fit, residual: left } = norris.certified;
  return [
    [rate, -1000 * scale * slope],
    [seaLevel, scale * intercept],
    [r2, fit],
    [residual, scale * left],
  ];
});

// By definition: the standard atmosphere loses 6.5 K a kilometre, 1.8 · 6.5 · 0.3048 = 3.56616 °F each 1000 ft; 15 °C are 59 °F.
test("in °F and feet, and says so", () => {
  const feet = [0, 1000, 3000];
  const answer = call(lapseFit, down(feet.map((one) => 59 - 0.00356616 * one)), down(feet), "imperial");
  expect(answer[0]?.[0]).toBe("Rate, °F per 1000 ft");
  expect(answer[0]?.[1]).toBeCloseTo(3.56616, 9);
  expect(answer[1]).toEqual(["Temperature at sea level, °F", expect.closeTo(59, 9)]);
});
