import { animals, clutch } from "./shared/scenario";

/** Sizes of prey with the mass of one, g: invented. */
export const prey: readonly (readonly [size: string, mass: number])[] = [
  ["Pinky mouse", 1.2],
  ["Fuzzy mouse", 3.5],
  ["Hopper mouse", 7],
  ["Weaned mouse", 14],
  ["Adult mouse", 26],
];

const { juniper, rowan, heather, bracken, sorrel } = animals;
const one = (
  { label, mass, interval }: { readonly label: string; readonly mass: number; readonly interval: number },
  size: string,
  winters: "yes" | "no",
) => ({ who: label, size, many: 1, body: mass, days: interval, winters });

export const eaters = [
  one(juniper, "Adult mouse", "yes"),
  one(rowan, "Adult mouse", "yes"),
  one(heather, "Weaned mouse", "yes"),
  one(bracken, "Weaned mouse", "yes"),
  one(sorrel, "Hopper mouse", "no"),
  { who: "J1 to J6", size: "Pinky mouse", many: clutch.hatchlings, body: 8.8, days: 5, winters: "no" },
] as const;

interface Move {
  readonly iso: string;
  readonly size: string;
  readonly into?: number;
  readonly out?: number;
}

export const moves: readonly Move[] = [
  { iso: "2026-09-12", size: "Adult mouse", into: 50 },
  { iso: "2026-09-12", size: "Weaned mouse", into: 40 },
  { iso: "2026-09-12", size: "Hopper mouse", into: 30 },
  { iso: "2026-09-12", size: "Pinky mouse", into: 100 },
  { iso: "2026-09-14", size: "Adult mouse", out: 2 },
  { iso: "2026-09-14", size: "Weaned mouse", out: 1 },
  { iso: "2026-09-16", size: "Pinky mouse", out: 6 },
  { iso: "2026-09-17", size: "Hopper mouse", out: 1 },
  { iso: "2026-09-19", size: "Weaned mouse", out: 1 },
  { iso: "2026-09-21", size: "Weaned mouse", out: 2 },
];
