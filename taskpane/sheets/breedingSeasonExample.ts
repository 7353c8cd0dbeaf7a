/** What the example's keeper has seen to before the first pairing, and what is still open. */
export const checks = [
  ["yes", "She is back to her weight, and eats"],
  ["yes", "Both came well through the winter and have fed since"],
  ["yes", "Droppings checked, no mites, skin and mouth clean"],
  ["no", "A reptile vet asked where anything is in doubt"],
  ["yes", "Laying box ready: damp, dark, warm"],
  ["yes", "Incubator held steady for a week"],
  ["no", "Homes for the young, and what the law here asks"],
] as const;

/** Juniper and Rowan in the spring of 2026: invented. */
export const pairings = [
  { iso: "2026-05-03", seen: "together" },
  { iso: "2026-05-05", seen: "mated" },
  { iso: "2026-05-09", seen: "mated" },
  { iso: "2026-05-14", seen: "nothing" },
] as const;
