import type { Chart } from "../../taskpane/sheets/sheet";

/** Charts of invented figures that use every kind of series; cells by range. */
export interface Case {
  readonly chart: Chart;
  readonly cells: Readonly<Record<string, readonly (readonly unknown[])[]>>;
}

const down = (values: readonly unknown[]) => values.map((value) => [value]);
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** 7 August has a blank high, and its row a gap; November's rain is blank. */
export const climate: Case = {
  chart: {
    title: "Highs and lows at the animal's elevation",
    area: "H2:P20",
    along: "A2:A13",
    axis: "°C",
    series: [
      { draw: "band", name: "Lower site, low to high", low: "B2:B13", high: "C2:C13" },
      { draw: "line", name: "Median", values: "D2:D13" },
      { draw: "line", name: "Upper site median", values: "F2:F13" },
      { draw: "threshold", name: "Cold below 10 °C", values: "E2" },
    ],
    summary: "A20",
  },
  cells: {
    "A2:A13": down(months),
    "B2:B13": down([-4, -3, 0, 4, 9, 13, 15, 14, 10, 5, 1, -3]),
    "C2:C13": down([4, 6, 10, 15, 20, 25, 28, null, 22, 16, 9, 5]),
    "D2:D13": down([0, 1.5, 5, 9.5, 14.5, 19, 21.5, 20.5, 16, 10.5, 5, 1]),
    "F2:F13": down([-6, -5, -2, 2, 7, 12, 14, "", { error: "#N/A" }, 4, -1, -5]),
    E2: [[10]],
    A20: [["Highs run from 4 to 28 °C; five months are colder than 10 °C."]],
  },
};

export const rain: Case = {
  chart: {
    title: "Rain",
    area: "H22:P30",
    along: "A2:A13",
    axis: "mm a month",
    series: [{ draw: "bar", name: "Rain at the lower site", values: "G2:G13" }],
    summary: "A21",
  },
  cells: {
    "A2:A13": down(months),
    "G2:G13": down([60, 50, 55, 62, 80, 95, 110, 90, 70, 58, null, 64]),
    A21: [["Rain is heaviest in July."]],
  },
};

/** The ramp of a winter with weekly weighings; two rows are not in use. */
export const winter: Case = {
  chart: {
    title: "Into the cold and back",
    area: "H2:P20",
    along: "A2:A29",
    axis: "°C",
    series: [
      { draw: "stages", name: "Stage", values: "B2:B29" },
      { draw: "ticks", name: "Weigh", values: "D2:D29" },
      { draw: "ticks", name: "Meal", values: "E2:E29" },
      { draw: "line", name: "Set-point", values: "C2:C29" },
      { draw: "bar", name: "Box, measured", values: "F2:F29" },
    ],
    summary: "A40",
  },
  cells: {
    "A2:A29": down(Array.from({ length: 28 }, (_, i) => (i < 26 ? 46286 + 7 * i : i === 26 ? null : ""))),
    "B2:B29": down(
      Array.from({ length: 28 }, (_, i) =>
        i < 2 ? "Feeding" : i < 4 ? "Clearing" : i < 10 ? "Cooling" : i < 20 ? "Cold" : i < 25 ? "Warming" : "Settling",
      ),
    ),
    "C2:C29": down(
      Array.from({ length: 28 }, (_, i) =>
        i < 4 ? 24 : i < 10 ? 24 - ((i - 3) * 16) / 7 : i < 20 ? 8 : Math.min(24, 8 + (i - 19) * 3),
      ),
    ),
    "D2:D29": down(Array.from({ length: 28 }, (_, i) => i % 4 === 0)),
    "E2:E29": down(Array.from({ length: 28 }, (_, i) => (i < 2 ? 1 : 0))),
    "F2:F29": down(Array.from({ length: 28 }, (_, i) => (i > 10 && i < 18 ? 8.5 + (i % 3) * 0.4 : null))),
    A40: [["Cooling from 24 to 8 °C in six weeks."]],
  },
};

export const unfilled: Case = {
  ...rain,
  cells: { "A2:A13": down(months), "G2:G13": down(months.map(() => null)), A21: [[""]] },
};
