import { readFileSync } from "node:fs";
import { join } from "node:path";
import { escape, op, table } from "arquero";
import fc from "fast-check";
import { serialOfIso } from "../../../functions/dates";

/** Hours of a year as two columns. Both records are of NOAA NCEI, works of the US Government. */
export interface Log {
  readonly times: readonly number[];
  readonly temperatures: readonly number[];
}

const linesOf = (path: string): string[][] =>
  readFileSync(path, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.trim().split(","));

/** NOAA hourly normals 1981-2010, Worcester MA; six hours are missing in the source. Set in 2026, a year of 365 days. */
export const worcester = (): Log => {
  const lines = linesOf(join(__dirname, "../../tables/noaaHourlyNormals.csv"));
  return {
    times: lines.map(([hour]) => serialOfIso(`2026-${hour}`) as number),
    temperatures: lines.map(([, temperature]) => Number(temperature)),
  };
};

/** Seattle hourly normals 1981-2010, °C, as the package vega-datasets 3.2.1 carries them. */
export const seattle = (): Log => {
  const lines = linesOf(join(__dirname, "../../tables/seattleHourlyNormals.csv"));
  return {
    times: lines.map(([date]) => serialOfIso(date as string) as number),
    temperatures: lines.map(([, , temperature]) => Number(temperature)),
  };
};

export interface GroupedDay {
  readonly day: number;
  readonly high: number;
  readonly low: number;
  readonly plainMean: number;
  readonly median: number;
  readonly readings: number;
}

/** The same days by arquero's group-by, which knows nothing of this project. */
export const grouped = ({ times, temperatures }: Log): readonly GroupedDay[] =>
  table({ time: [...times], temperature: [...temperatures] })
    .derive({ day: escape((row: { time: number }) => Math.floor(row.time + 1e-6)) })
    .groupby("day")
    .rollup({
      high: op.max("temperature"),
      low: op.min("temperature"),
      plainMean: op.mean("temperature"),
      median: op.median("temperature"),
      readings: op.count(),
    })
    .orderby("day")
    .objects() as GroupedDay[];

/** Readings of a few days: irregular, with gaps and moments that occur twice. Times are whole minutes. */
export const anyLog: fc.Arbitrary<Log> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 4 * 1440 }), fc.integer({ min: -50, max: 400 })), {
    minLength: 1,
    maxLength: 120,
  })
  .map((rows) => ({
    times: rows.map(([minute]) => 46_000 + minute / 1440),
    temperatures: rows.map(([, tenths]) => tenths / 10),
  }));

/** The rows of a log in another order. */
export const mixed = (log: Log, order: readonly number[]): Log => ({
  times: order.map((i) => log.times[i] as number),
  temperatures: order.map((i) => log.temperatures[i] as number),
});

/** A log and its rows in any other order. */
export const anyMixedLog = anyLog.chain((log) =>
  fc
    .shuffledSubarray([...log.times.keys()], { minLength: log.times.length })
    .map((order) => [log, mixed(log, order)] as const),
);
