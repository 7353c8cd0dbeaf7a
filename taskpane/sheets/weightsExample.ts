import { animals, day, junipersWeights } from "./shared/scenario";

/** What two of the animals weighed in 2026, oldest first; Rowan's figures of the summer are invented, as all are. */
const { juniper, rowan } = animals;
const rowans: readonly (readonly [iso: string, mass: number])[] = [
  ["2026-04-19", 236],
  ["2026-07-20", 255],
  ["2026-08-17", 261],
  ["2026-09-21", rowan.mass],
];

export const weighings: readonly {
  readonly on: number;
  readonly animal: string;
  readonly mass: number;
  readonly length: number | null;
  readonly seen: string | null;
}[] = [
  ...junipersWeights.map(([iso, mass, length, seen]) => ({
    on: day(iso),
    animal: juniper.label,
    mass,
    length,
    seen: seen ?? null,
  })),
  ...rowans.map(([iso, mass]) => ({ on: day(iso), animal: rowan.label, mass, length: null, seen: null })),
].sort((a, b) => a.on - b.on);
