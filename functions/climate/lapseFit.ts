import { type Answer, column, defineFunction, quantity, table, unitsParameter } from "../define";
import { EntryProblem, notAvailable, notUsable } from "../problem";
import { figure } from "../shared/figure";
import { leastSquares } from "../shared/leastSquares";
import { ELEVATION, TEMPERATURE } from "../shared/limits";
import { studentT95, studentText } from "../shared/studentT";
import { symbol, type System, type Unit } from "../units";
import { MISSING, quoted, REFUSED, refusedIf } from "../twin";

const LEAST_STATIONS = 3;
/** Three or four stations lie near some line by chance: r² says nothing of them. */
const LEAST_FOR_FIT = 5;

const ROWS = [
  ["Rate", "kelvinPerKilometre"],
  ["Temperature at sea level", "celsius"],
  ["r²", "none"],
  ["Stations used", "none"],
  ["Residual standard deviation", "kelvin"],
  ["Rate, least", "kelvinPerKilometre"],
  ["Rate, most", "kelvinPerKilometre"],
] as const satisfies readonly (readonly [words: string, unit: Unit])[];

/** "Rate, K/km", "r²". */
const whatOf = ([words, unit]: (typeof ROWS)[number], system?: System): string =>
  [words, symbol(unit, system)].filter((one) => one !== "").join(", ");

export const lapseFit = defineFunction({
  name: "LAPSEFIT",
  summary: "Fall of temperature with elevation from three or more stations of your own, by least squares.",
  parameters: {
    temperatures: column(quantity("celsius", "Temperatures of the stations, one kind and month", TEMPERATURE), {
      blank: "keep",
    }),
    elevations: column(quantity("metre", "Elevations of the same stations", ELEVATION), { blank: "keep" }),
    units: unitsParameter,
  },
  result: table(
    { name: "what", unit: "text", about: "What the figure is" },
    { name: "value", unit: "none", about: "K/km, °C, share, count, K", rowUnits: ROWS.map(([, unit]) => unit) },
  ),
  sources: ["definition"],
  cautions: ["fewStations", "proxy"],
  examples: [
    {
      given: [
        [[15.1], [12.2], [9.9], [7.4], [4.2], [3.9]],
        [[100], [600], [900], [1400], [1900], [2050]],
      ],
      gives: [
        ["Rate, K/km", 5.847236],
        ["Temperature at sea level, °C", 15.556382],
        ["r²", 0.996329],
        ["Stations used", 6],
        ["Residual standard deviation, K", 0.302328],
        ["Rate, least, K/km", 5.4689],
        ["Rate, most, K/km", 6.2256],
      ],
      within: 1e-3,
    },
  ],
  calculate({ temperatures, elevations, units }) {
    if (temperatures.length !== elevations.length) {
      return notUsable(
        `elevations holds ${elevations.length} stations and temperatures ${temperatures.length}: give one of each a station`,
      );
    }
    const points: [number, number][] = [];
    for (const [i, temperature] of temperatures.entries()) {
      const elevation = elevations[i];
      if (temperature === undefined && elevation === undefined) continue;
      if (temperature === undefined) return new EntryProblem("#N/A", "temperatures", i, "is blank");
      if (elevation === undefined) return new EntryProblem("#N/A", "elevations", i, "is blank");
      points.push([elevation, temperature]);
    }
    if (points.length < LEAST_STATIONS) {
      return notAvailable(`temperatures holds ${points.length} stations: give three or more`);
    }
    const line = leastSquares(points);
    if (!line) {
      const same = figure(points[0]?.[0] as number, "metre", units);
      return notUsable(`elevations holds ${same} throughout: give stations at different elevations`);
    }
    const margin = 1000 * studentT95(points.length - 2) * line.slopeError;
    const fit =
      points.length < LEAST_FOR_FIT
        ? notAvailable(`too few to tell: ${points.length} stations, a fit needs ${LEAST_FOR_FIT}`)
        : line.r2;
    const rate = -1000 * line.slope;
    const values = [rate, line.intercept, fit, points.length, line.residual, rate - margin, rate + margin];
    return ROWS.map((row, i) => [whatOf(row, units), values[i] as Answer]);
  },
  twin: ({ temperatures: { whole: y, each: ys }, elevations: { whole: x, each: xs } }) => {
    if (xs.length !== ys.length) return ROWS.map(() => [REFUSED, REFUSED]);
    const of = (name: string): string => `${name}(${y},${x})`;
    const margin = `1000*${studentText(`(COUNT(${y})-2)`)}*${of("STEYX")}/SQRT(DEVSQ(${x}))`;
    const values = [
      `-1000*${of("SLOPE")}`,
      of("INTERCEPT"),
      `IF(COUNT(${y})<${LEAST_FOR_FIT},${MISSING},IF(DEVSQ(${y})=0,1,${of("RSQ")}))`,
      `COUNT(${y})`,
      of("STEYX"),
      `-1000*${of("SLOPE")}-${margin}`,
      `-1000*${of("SLOPE")}+${margin}`,
    ];
    const rows = ROWS.map((row, i) => [whatOf(row), values[i] as string] as const);
    const single = `SUMPRODUCT(--((${y}="")<>(${x}="")))>0`;
    // Problems stand in the first cell alone.
    return rows.map(([what, figure], row) =>
      [quoted(what), figure].map((text, column) => {
        const missing = row + column === 0 ? MISSING : '""';
        return `IF(OR(${single},COUNT(${y})<${LEAST_STATIONS}),${missing},${refusedIf(`MIN(${x})=MAX(${x})`, text)})`;
      }),
    );
  },
});
