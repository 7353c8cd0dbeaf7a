import { defineFunction, table, unitsParameter, type Answer } from "../define";
import { Problem } from "../problem";
import { daysOf } from "./shared/days";
import { dayOf, readingTemperatures, readingTimes } from "./shared/readingRange";
import { seriesOf } from "./shared/series";

/** What stands for the date of temperatures that have no time. */
const NO_TIME = "no time";

/** What a day answers that has rows, but no reading. */
const nothingRead = (date: number | string, skipped: number): readonly Answer[] => [
  date,
  "",
  "",
  "",
  "",
  "",
  0,
  skipped,
];

export const dayTable = defineFunction({
  name: "DAYTABLE",
  summary: "A row a day from a logger's readings: high, low, mid-point, true mean, and how many were read and skipped.",
  parameters: { times: readingTimes, temperatures: readingTemperatures, units: unitsParameter },
  forEach: "sensor",
  result: table(
    { name: "Date", unit: "date", about: 'The day; "no time" for temperatures beside no time that can be read' },
    { name: "High", unit: "celsius", about: "Highest reading" },
    { name: "Low", unit: "celsius", about: "Lowest reading" },
    { name: "Fluctuation", unit: "kelvin", about: "High less low" },
    { name: "Mid-point", unit: "celsius", about: "Half-way between high and low" },
    {
      name: "Mean",
      unit: "celsius",
      about: "Weighed by time; not over gaps of more than 180 minutes. Under 8 readings a day: their plain mean",
    },
    { name: "Readings", unit: "none", about: "Readings of the day" },
    { name: "Skipped", unit: "none", about: "Rows of the day whose temperature is blank or cannot be read" },
  ),
  sources: ["definition", "practice"],
  cautions: ["probePlace", "skippedReadings"],
  examples: [
    {
      given: [
        [["2026-11-02T08:00"], ["2026-11-02T20:00"], ["2026-11-03T08:00"], ["2026-11-03T20:00"]],
        [[22], [18], [21], ["lost"]],
      ],
      gives: [
        ["2026-11-02", 22, 18, 4, 20, 20, 2, 0],
        ["2026-11-03", 21, 21, 0, 21, 21, 1, 1],
      ],
      within: 1e-9,
    },
  ],
  calculate({ times, temperatures }) {
    const series = seriesOf(times, temperatures);
    if (series instanceof Problem) return series;
    const skipped = new Map<number, number>();
    for (const time of series.skipped) skipped.set(dayOf(time), (skipped.get(dayOf(time)) ?? 0) + 1);

    const rows = new Map<number, readonly Answer[]>();
    for (const [day, count] of skipped) rows.set(day, nothingRead(day, count));
    for (const { day, high, low, mean, readings } of daysOf(series)) {
      rows.set(day, [day, high, low, high - low, (high + low) / 2, mean, readings, skipped.get(day) ?? 0]);
    }
    const inOrder = [...rows].sort(([a], [b]) => a - b).map(([, row]) => row);
    return series.untimed > 0 ? [...inOrder, nothingRead(NO_TIME, series.untimed)] : inOrder;
  },
});
