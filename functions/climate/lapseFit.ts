import { column, defineFunction, quantity, table } from "../define";
import { EntryProblem, notAvailable, notUsable } from "../problem";
import { leastSquares } from "../shared/leastSquares";
import { ELEVATION, TEMPERATURE } from "../shared/limits";

const LEAST_STATIONS = 3;

export const lapseFit = defineFunction({
  name: "LAPSEFIT",
  summary: "Fall of temperature with elevation from three or more stations of your own, by least squares.",
  parameters: {
    temperatures: column(quantity("celsius", "Temperatures of the stations, one kind and month", TEMPERATURE), {
      blank: "keep",
    }),
    elevations: column(quantity("metre", "Elevations of the same stations", ELEVATION), { blank: "keep" }),
  },
  result: table(
    { name: "what", unit: "text", about: "What the figure is" },
    { name: "value", unit: "none", about: "K/km, °C, share, count, K" },
  ),
  sources: ["definition"],
  cautions: ["fewStations", "proxy"],
  examples: [
    {
      given: [
        [[14.2], [11], [8.5], [5.1]],
        [[200], [700], [1100], [1700]],
      ],
      gives: [
        ["Rate, K/km", 6.0704],
        ["Temperature at sea level, °C", 15.3151],
        ["r²", 0.999],
        ["Stations used", 4],
        ["Residual standard deviation, K", 0.1484],
      ],
      within: 1e-3,
    },
  ],
  calculate({ temperatures, elevations }) {
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
    if (!line)
      return notUsable(`elevations holds ${points[0]?.[0]} m throughout: give stations at different elevations`);
    return [
      ["Rate, K/km", -1000 * line.slope],
      ["Temperature at sea level, °C", line.intercept],
      ["r²", line.r2],
      ["Stations used", points.length],
      ["Residual standard deviation, K", line.residual],
    ];
  },
});
