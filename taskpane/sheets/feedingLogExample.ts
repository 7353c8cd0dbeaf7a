/** Juniper, from her clutch to the last meal before the winter: invented. Masses in g. */
export const meals: readonly {
  readonly iso: string;
  readonly body: number;
  readonly prey: string;
  readonly items: number;
  readonly mass: number;
  readonly outcome: "taken" | "refused" | "regurgitated";
}[] = (
  [
    ["2026-06-29", 264, "Weaned mouse", 14, "taken"],
    ["2026-07-06", 269, "Adult mouse", 24, "taken"],
    ["2026-07-13", 275, "Adult mouse", 26, "taken"],
    ["2026-07-20", 281, "Adult mouse", 25, "taken"],
    ["2026-07-27", 289, "Adult mouse", 26, "refused"],
    ["2026-08-03", 286, "Adult mouse", 25, "refused"],
    ["2026-08-10", 284, "Weaned mouse", 15, "taken"],
    ["2026-08-17", 289, "Adult mouse", 26, "taken"],
    ["2026-08-24", 296, "Adult mouse", 27, "taken"],
    ["2026-08-31", 303, "Adult mouse", 26, "taken"],
    ["2026-09-07", 307, "Adult mouse", 25, "taken"],
    ["2026-09-14", 310, "Adult mouse", 26, "taken"],
    ["2026-09-21", 312, "Weaned mouse", 15, "taken"],
  ] as const
).map(([iso, body, prey, mass, outcome]) => ({ iso, body, prey, items: 1, mass, outcome }));
