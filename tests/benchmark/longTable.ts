import { op, table } from "arquero";
import { evaluate } from "../../addin/boundary/evaluate";
import { massTrend } from "../../functions/condition/massTrend";
import type { AnyDefinition } from "../../functions/define";
import { latest } from "../../functions/tables/latest";
import { rollCall } from "../../functions/tables/rollCall";
import { agree, race, type Table } from "./race";

const ANIMALS = 1000;
const ROWS = 100_000;
const START = 45_000;

/** An invented log of years: every animal is weighed in its turn, three weeks apart. */
const name = (animal: number): string => `Animal ${animal}`;
const animalOf = (row: number): number => (row * 7) % ANIMALS;
const dayOf = (row: number): number => START + Math.floor(row / ANIMALS) * 21 + (row % 3);
const massOf = (row: number): number => 100 + animalOf(row) / 10 + row / 1000 + ((row * 7919) % 11) / 10;

const rows = Array.from({ length: ROWS }, (_, row) => row);
const columns = {
  animals: rows.map((row) => [name(animalOf(row))]),
  days: rows.map((row) => [dayOf(row)]),
  masses: rows.map((row) => [massOf(row)]),
};
const asked = Array.from({ length: ANIMALS }, (_, animal) => [name(animal)]);
const cellsOf = (definition: AnyDefinition, ...given: readonly unknown[]): unknown[][] =>
  evaluate(definition, given).cells;

const latestOfEach = () => cellsOf(latest, columns.days, columns.masses, null, columns.animals, asked);
const roll = () => cellsOf(rollCall, columns.animals, columns.days, columns.masses);
const trendOfEach = () => cellsOf(massTrend, columns.days, columns.masses, 7, columns.animals, asked);

/** From the same arrays, as ours are: a table of columns, grouped. */
const log = () =>
  table({
    animal: columns.animals.map(([one]) => one),
    day: columns.days.map(([day]) => day),
    mass: columns.masses.map(([mass]) => mass),
  });

/** The day and the number of rows of each animal, and its mass on that day: a group-by and a look-up. */
const rolledByArquero = () => {
  const rows = log();
  const ends = rows.groupby("animal").rollup({ first: op.min("day"), last: op.max("day"), entries: op.count() });
  return rows
    .join(ends, ["animal", "animal"])
    .filter((row: { day: number; last: number }) => row.day === row.last)
    .objects({ limit: Infinity }) as Rolled[];
};

interface Rolled {
  readonly mass: number;
  readonly last: number;
  readonly entries: number;
}

/** The bare group-by, and of each animal its days and masses in a list, from which a slope can be worked out. */
const listsByArquero = () =>
  log()
    .groupby("animal")
    .rollup({ days: op.array_agg("day"), masses: op.array_agg("mass") })
    .objects({ limit: Infinity }) as { days: number[]; masses: number[] }[];

/** The same slopes from those lists without a check: every pair, and the middle of them. */
const trendByArquero = () =>
  listsByArquero().map(({ days, masses }) => {
    const slopes = new Float64Array((days.length * (days.length - 1)) / 2);
    let pairs = 0;
    for (let i = 1; i < days.length; i++) {
      for (let j = 0; j < i; j++) {
        slopes[pairs++] = ((masses[i] as number) - (masses[j] as number)) / ((days[i] as number) - (days[j] as number));
      }
    }
    slopes.sort();
    return 7 * (((slopes[(pairs - 1) >> 1] as number) + (slopes[pairs >> 1] as number)) / 2);
  });

const ALLOWED = 2;

export const tables = async (): Promise<Table[]> => {
  const [latestOnes, rolled, trends] = [latestOfEach(), roll(), trendOfEach()];
  const byArquero = { rolled: rolledByArquero(), trends: trendByArquero() };
  for (let animal = 0; animal < ANIMALS; animal += 37) {
    const at = asked.findIndex(([one]) => one === rolled[animal]?.[0]);
    agree("mass of LATEST", latestOnes[at]?.[0] as number, rolled[animal]?.[4] as number, 0);
    agree("entries of ROLLCALL", rolled[animal]?.[1] as number, byArquero.rolled[animal]?.entries as number, 0);
    agree("MASSTREND", trends[at]?.[0] as number, byArquero.trends[animal] as number, 1e-9);
  }
  const [first, second, third] = [
    "arquero group-by and join",
    "arquero group-by into lists",
    "the same slopes, unchecked",
  ];
  const lines = [
    ...(await race([
      { what: first, run: rolledByArquero },
      { what: "LATEST of each animal", run: latestOfEach, against: first, allowed: ALLOWED },
      { what: "ROLLCALL", run: roll, against: first, allowed: ALLOWED },
    ])),
    ...(await race(
      [
        { what: second, run: listsByArquero, note: "without the slopes" },
        { what: third, run: trendByArquero, note: "from those lists" },
        { what: "MASSTREND of each animal", run: trendOfEach, against: third, allowed: ALLOWED },
      ],
      9,
      3,
    )),
  ];
  return [{ title: `Long table, ${ROWS.toLocaleString("en")} rows of ${ANIMALS.toLocaleString("en")} animals`, lines }];
};
