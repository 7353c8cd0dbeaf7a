import { escape, op, table } from "arquero";

/** A log of many animals, invented: mixed rows, names in several spellings, a few blank masses, a few days twice. */
export interface Row {
  readonly day: number;
  readonly mass: number | null;
  readonly animal: string;
}

const START = 45_000;

/** A sequence that looks like chance and is the same on every machine (Park and Miller's minimal standard). */
const numbers = (seed: number) => {
  let state = seed;
  return (below: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
};

export const keepersLog = (animals: number, rows: number): readonly Row[] => {
  const below = numbers(7);
  return Array.from({ length: rows }, (_, row) => {
    const animal = below(animals);
    const name = `Animal ${animal}`;
    return {
      day: START + Math.floor((row * 1500) / rows) - below(20),
      mass: below(50) === 0 ? null : 100 + animal + below(200) / 10,
      animal: [name, name, name.toUpperCase(), ` ${name} `][below(4)] as string,
    };
  });
};

export interface Rolled {
  readonly key: string;
  readonly days: readonly number[];
  readonly masses: readonly number[];
}

/** Each animal's weighings up to a day, in order, by arquero's group-by, which knows nothing of this project. */
export const grouped = (log: readonly Row[], on: number): readonly Rolled[] =>
  table({
    row: log.map((_, row) => row),
    day: log.map(({ day }) => day),
    mass: log.map(({ mass }) => mass),
    key: log.map(({ animal }) => animal.trim().toLowerCase()),
  })
    .filter(escape(({ day, mass }: { day: number; mass: number | null }) => mass !== null && day <= on))
    .orderby("key", "day", "row")
    .reify()
    .groupby("key")
    .rollup({ days: op.array_agg("day"), masses: op.array_agg("mass") })
    .objects({ limit: Infinity }) as Rolled[];
