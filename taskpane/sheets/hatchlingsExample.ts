/** Juniper's young: day of the first shed, mass when hatched and now, the meals offered since, and its first winter. */
export const young: readonly {
  readonly label: string;
  readonly shed: string | null;
  readonly then: number;
  readonly now: number;
  readonly meals: readonly ("yes" | "no")[];
  readonly winters: "no" | null;
}[] = [
  { label: "J1", shed: "2026-08-29", then: 8.4, now: 10.1, meals: ["yes", "yes", "yes"], winters: "no" },
  { label: "J2", shed: "2026-08-30", then: 8.1, now: 9.3, meals: ["no", "yes", "yes"], winters: "no" },
  { label: "J3", shed: "2026-08-29", then: 8.6, now: 10.4, meals: ["yes", "yes", "yes"], winters: null },
  { label: "J4", shed: "2026-08-31", then: 7.9, now: 7.4, meals: ["no", "no", "no"], winters: "no" },
  { label: "J5", shed: "2026-08-30", then: 8.2, now: 9.0, meals: ["no", "yes", "no"], winters: "no" },
  { label: "J6", shed: "2026-09-01", then: 7.6, now: 6.7, meals: ["no", "no", "no"], winters: "no" },
];
