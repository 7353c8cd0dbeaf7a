import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "papaparse";

/** Climate normals of NOAA (US Government work), °C, as the tests use them. */
const rowsOf = (file: string): readonly Record<string, string>[] =>
  parse<Record<string, string>>(readFileSync(join(__dirname, file), "utf8"), { header: true, skipEmptyLines: true })
    .data;

const elements = (rows: readonly Record<string, string>[]) => {
  const of = (column: string): readonly number[] => rows.map((row) => Number(row[column]));
  return { high: of("tmax_c"), low: of("tmin_c"), mean: of("tavg_c") };
};

const daily = rowsOf("tables/noaaDailyNormals.csv");
/** Lebanon NH 1991-2020: the twelve months, and 366 days with their "01-01". */
export const lebanonMonths = elements(
  rowsOf("tables/noaaMonthlyNormals.csv").filter(({ station }) => station === "USW00094765"),
);
export const lebanonDays = { dates: daily.map(({ month_day }) => month_day), ...elements(daily) };

/** The days of a table of hours that have all their 24, each with its "01-01". */
const wholeDays = (
  file: string,
  read: (row: Record<string, string>) => readonly [moment: string | undefined, value: string | undefined],
): readonly (readonly [day: string, hours: readonly number[]])[] => {
  const days = new Map<string, number[]>();
  for (const row of rowsOf(file)) {
    const [moment = "", value] = read(row);
    const day = moment.replace(/T.*/, "").slice(-5);
    days.set(day, [...(days.get(day) ?? []), Number(value)]);
  }
  return [...days].filter(([, hours]) => hours.length === 24);
};

/** Worcester MA 1981-2010, 42.27° N. */
export const worcesterDays = wholeDays("tables/noaaHourlyNormals.csv", (row) => [row.month_day_hour, row.temp_c]);
/** Seattle 1981-2010, as the npm package vega-datasets has it. */
export const seattleDays = wholeDays("tables/seattleHourlyNormals.csv", (row) => [row.date, row.temperature]);
