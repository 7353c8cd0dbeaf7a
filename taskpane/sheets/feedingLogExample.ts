/** Juniper, from her clutch to the last meal before the winter, and the last meals of the others: invented. Masses in g. */
export const meals: readonly {
  readonly iso: string;
  readonly animal: string;
  readonly body: number;
  readonly prey: string;
  readonly items: number;
  readonly mass: number;
  readonly outcome: "taken" | "refused" | "regurgitated";
}[] = (
  [
    ["2026-06-29", "Juniper", 264, "Weaned mouse", 14, "taken"],
    ["2026-07-06", "Juniper", 269, "Adult mouse", 24, "taken"],
    ["2026-07-13", "Juniper", 275, "Adult mouse", 26, "taken"],
    ["2026-07-20", "Juniper", 281, "Adult mouse", 25, "taken"],
    ["2026-07-27", "Juniper", 289, "Adult mouse", 26, "refused"],
    ["2026-08-03", "Juniper", 286, "Adult mouse", 25, "refused"],
    ["2026-08-10", "Juniper", 284, "Weaned mouse", 15, "taken"],
    ["2026-08-17", "Juniper", 289, "Adult mouse", 26, "taken"],
    ["2026-08-24", "Juniper", 296, "Adult mouse", 27, "taken"],
    ["2026-08-31", "Juniper", 303, "Adult mouse", 26, "taken"],
    ["2026-09-07", "Juniper", 307, "Adult mouse", 25, "taken"],
    ["2026-09-12", "Sorrel", 56, "Fuzzy mouse", 4, "taken"],
    ["2026-09-14", "Juniper", 310, "Adult mouse", 26, "taken"],
    ["2026-09-14", "Bracken", 176, "Weaned mouse", 14, "taken"],
    ["2026-09-17", "Sorrel", 58, "Fuzzy mouse", 4, "taken"],
    ["2026-09-19", "Heather", 241, "Weaned mouse", 15, "taken"],
    ["2026-09-21", "Juniper", 312, "Weaned mouse", 15, "taken"],
    ["2026-09-21", "Rowan", 268, "Weaned mouse", 15, "taken"],
  ] as const
).map(([iso, animal, body, prey, mass, outcome]) => ({ iso, animal, body, prey, items: 1, mass, outcome }));

/** °C of the coolest night after each of these meals: invented. */
export const NIGHT = 18;
