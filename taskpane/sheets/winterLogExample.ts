/** An invented winter, read and weighed once a week; the last row is an airing without a weighing; humidity in %. */
export const readings: readonly {
  readonly iso: string;
  /** °C */
  readonly box: number;
  /** g */
  readonly mass: number | null;
  /** % */
  readonly humidity: number;
  readonly seen?: string;
}[] = [
  { iso: "2026-11-16", box: 8.1, mass: 306, humidity: 78, seen: "Settled" },
  { iso: "2026-11-23", box: 7.9, mass: 305.5, humidity: 77 },
  { iso: "2026-11-30", box: 8.2, mass: 304.5, humidity: 80, seen: "Water changed" },
  { iso: "2026-12-07", box: 8.0, mass: 304, humidity: 79 },
  { iso: "2026-12-14", box: 7.6, mass: 303.5, humidity: 78 },
  { iso: "2026-12-21", box: 7.8, mass: 303.5, humidity: 76, seen: "Drank" },
  { iso: "2026-12-28", box: 8.3, mass: 303, humidity: 79 },
  { iso: "2027-01-04", box: 10.4, mass: 302, humidity: 74, seen: "Mild spell" },
  { iso: "2027-01-11", box: 8.4, mass: 301.5, humidity: 77 },
  { iso: "2027-01-18", box: 7.9, mass: 301, humidity: 78 },
  { iso: "2027-01-25", box: 8.0, mass: 300.5, humidity: 79 },
  { iso: "2027-01-28", box: 8.1, mass: null, humidity: 78, seen: "Airing only" },
];
