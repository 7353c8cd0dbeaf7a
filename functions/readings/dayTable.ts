import { defineFunction, table, unitsParameter, type Answer } from "../define";
import { Problem } from "../problem";
import { daysOf, FEWEST_HOURS } from "./shared/days";
import { dayOf, joinedUpTo, readingTemperatures, readingTimes } from "./shared/readingRange";
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
  0,
];

/**
 * High and low are of what was read, and stay where a day is half covered: what a probe showed must not be hidden. What is
 * said of the whole day is blank then.
 */
export const dayTable = defineFunction({
  name: "DAYTABLE",
  summary:
    "A row a day from a logger's readings: high, low, mid-point, true mean, how many were read and skipped, hours covered.",
  parameters: { times: readingTimes, temperatures: readingTemperatures, units: unitsParameter, longestGap: joinedUpTo },
  forEach: "sensor",
  result: table(
    { name: "Date", unit: "date", about: 'The day; "no time" for temperatures beside no time that can be read' },
    { name: "High", unit: "celsius", about: "Highest reading" },
    { name: "Low", unit: "celsius", about: "Lowest reading" },
    { name: "Fluctuation", unit: "kelvin", about: `High less low; blank under ${FEWEST_HOURS} hours covered` },
    { name: "Mid-point", unit: "celsius", about: "Half-way between high and low; blank likewise" },
    { name: "Mean", unit: "celsius", about: "Weighted by time, over the hours covered; blank likewise" },
    { name: "Readings", unit: "none", about: "Readings of the day" },
    { name: "Skipped", unit: "none", about: "Rows of the day whose temperature is blank or cannot be read" },
    { name: "Hours covered", unit: "hour", about: "Hours of the day between readings that are joined" },
  ),
  sources: ["definition", "practice"],
  cautions: ["probePlace", "skippedReadings"],
  examples: [
    {
      given: [
        [["2026-11-02T00:00"], ["2026-11-02T12:00"], ["2026-11-03T00:00"], ["2026-11-03T12:00"]],
        [[22], [18], [21], ["lost"]],
        "metric",
        720,
      ],
      gives: [
        ["2026-11-02", 22, 18, 4, 20, 19.75, 2, 0, 24],
        ["2026-11-03", 21, 21, "", "", "", 1, 1, 0],
      ],
      within: 1e-9,
    },
  ],
  calculate({ times, temperatures, longestGap }) {
    const series = seriesOf(times, temperatures);
    if (series instanceof Problem) return series;
    const skipped = new Map<number, number>();
    for (const time of series.skipped) skipped.set(dayOf(time), (skipped.get(dayOf(time)) ?? 0) + 1);

    const rows = new Map<number, readonly Answer[]>();
    for (const [day, count] of skipped) rows.set(day, nothingRead(day, count));
    for (const { day, high, low, mean, readings, hoursCovered } of daysOf(series, longestGap)) {
      const ofTheDay = mean === undefined ? ["", "", ""] : [high - low, (high + low) / 2, mean];
      rows.set(day, [day, high, low, ...ofTheDay, readings, skipped.get(day) ?? 0, hoursCovered]);
    }
    const inOrder = [...rows].sort(([a], [b]) => a - b).map(([, row]) => row);
    return series.untimed > 0 ? [...inOrder, nothingRead(NO_TIME, series.untimed)] : inOrder;
  },
});
