import * as formulajs from "@formulajs/formulajs";
import { op, table } from "arquero";
import { evaluate } from "../../addin/boundary/evaluate";
import { dayTable } from "../../functions/readings/dayTable";
import { cells, START, YEAR, type Cells } from "./logs";
import { agree, race, type Line, type Table } from "./race";

const answer = ({ times, temperatures }: Cells): unknown[][] => evaluate(dayTable, [times, temperatures]).cells;

/** High, low, count and area under the lines of each day, in one pass; it checks nothing, and trusts order and spacing. */
const loop = ({ times, temperatures }: Cells): number[][] => {
  const days: number[][] = [];
  let day = -1;
  let high = 0;
  let low = 0;
  let count = 0;
  let area = 0;
  let covered = 0;
  let before = times[0]?.[0] as number;
  let last = temperatures[0]?.[0] as number;
  for (let i = 0; i < times.length; i++) {
    const time = (times[i] as readonly [number])[0];
    const temperature = (temperatures[i] as readonly [number])[0];
    const now = Math.floor(time + 1e-6);
    if (now !== day) {
      if (count > 0) days.push([day, high, low, area / covered, count]);
      day = now;
      high = low = temperature;
      count = area = covered = 0;
    }
    if (temperature > high) high = temperature;
    if (temperature < low) low = temperature;
    area += ((last + temperature) / 2) * (time - before);
    covered += time - before;
    count++;
    before = time;
    last = temperature;
  }
  days.push([day, high, low, area / covered, count]);
  return days;
};

const columnsOf = ({ times, temperatures }: Cells) => ({
  time: Float64Array.from(times, ([time]) => time),
  temperature: Float64Array.from(temperatures, ([temperature]) => temperature),
});

type Grouped = readonly { readonly day: number; readonly high: number; readonly low: number; readonly count: number }[];

const arqueroOf = (log: ReturnType<typeof table>): Grouped =>
  log
    .groupby({ day: (row: { time: number }) => op.floor(row.time + 1e-6) })
    .rollup({
      high: op.max("temperature"),
      low: op.min("temperature"),
      mean: op.mean("temperature"),
      count: op.count(),
    })
    .objects({ limit: Infinity }) as Grouped;

/**
 * The most that a reading may cost in the longest log, times its cost in the shortest. Were every reading compared with
 * every other it would be 20, and one more sort 1.3; the rest is for the processor's cache, in which the cells of a short
 * log lie and those of a long one do not.
 */
const GROWTH = 2.5;

const growth = async (): Promise<Line[]> => {
  const sizes = [50_000, 100_000, 250_000, 500_000, 1_000_000] as const;
  const [shortest, longest] = [sizes[0], sizes[4]];
  const named = (minutes: number): string => `${minutes.toLocaleString("en")} readings`;
  const lines = await race(
    sizes.map((minutes) => {
      const log = cells(minutes);
      const held = minutes === longest ? { against: named(shortest), allowed: GROWTH } : {};
      return { what: named(minutes), run: () => answer(log), ...held };
    }),
  );
  return lines.map((line, i) => ({
    ...line,
    // Of the whole calls, per reading.
    ...(line.ratio === undefined ? {} : { ratio: (line.ratio * shortest) / longest }),
    note: [
      `${(((line.milliseconds ?? NaN) * 1e6) / (sizes[i] as number)).toFixed(0)} ns a reading`,
      ...(line.ratio === undefined ? [] : [`the ratio is of these, against ${named(shortest)}`]),
    ].join("; "),
  }));
};

export const tables = async (): Promise<Table[]> => {
  const year = cells(YEAR);
  const log = table(columnsOf(year));

  const [ours, bare, byArquero] = [answer(year), loop(year), arqueroOf(log)];
  for (const [i, row] of ours.entries()) {
    for (const [what, high, low] of [
      ["loop", bare[i]?.[1], bare[i]?.[2]],
      ["arquero", byArquero[i]?.high, byArquero[i]?.low],
    ] as const) {
      agree(`high of day ${i + 1}, ${what}`, row[1] as number, Number(high), 0);
      agree(`low of day ${i + 1}, ${what}`, row[2] as number, Number(low), 0);
    }
    if (i > 0) agree(`mean of day ${i + 1}`, row[5] as number, bare[i]?.[3] as number, 1e-2); // cut at midnight or not
  }

  const bareLoop = "bare one-pass loop over the same arrays";
  const readyTable = "arquero group-by, its table ready";
  const lines = await race([
    { what: bareLoop, run: () => loop(year), note: "no checks; trusts order and spacing" },
    { what: "DAYTABLE", run: () => answer(year), against: bareLoop, allowed: 4 },
    { what: readyTable, run: () => arqueroOf(log), note: "plain mean" },
    { what: "arquero group-by, from the same arrays", run: () => arqueroOf(table(columnsOf(year))) },
  ]);
  const held = await race([
    { what: readyTable, run: () => arqueroOf(log) },
    { what: "DAYTABLE against arquero", run: () => answer(year), against: readyTable, allowed: 1 },
  ]);

  const [times, temperatures] = [year.times.map(([time]) => time), year.temperatures.map(([one]) => one)];
  const oneDay = await race(
    [
      {
        what: "@formulajs/formulajs MAXIFS, MINIFS, AVERAGEIFS, one day",
        run: () =>
          [formulajs.MAXIFS, formulajs.MINIFS, formulajs.AVERAGEIFS].map((of): unknown =>
            of(temperatures, times, `>=${START + 1}`, times, `<${START + 2}`),
          ),
        note: "a year takes 365 of these",
      },
    ],
    3,
    1,
  );
  return [
    {
      title: "DAYTABLE, a year of minutes (525 600 readings)",
      lines: [...lines, ...held.slice(1), ...oneDay],
    },
    { title: "DAYTABLE, growth", lines: await growth() },
  ];
};
