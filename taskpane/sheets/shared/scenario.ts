import { serialOfIso } from "../../../functions/dates";

/**
 * The one example that runs through all sheets: an invented keeper near Lebanon, New Hampshire, with invented montane
 * snakes whose kind is said to live between 1300 and 1600 m on a Spanish mountain, in the winter of 2026/27.
 * The animals, their figures and the place where they live are invented. The records of stations are real.
 */

/** A day as the serial number that a date cell holds. */
export const day = (iso: string): number => {
  const serial = serialOfIso(iso);
  if (serial === undefined) throw new Error(`${iso} is no date`);
  return serial;
};

export interface Animal {
  readonly label: string;
  readonly sex: "female" | "male" | "unknown";
  readonly born: number;
  /** g, at the last weighing. */
  readonly mass: number;
  /** Total length, cm. */
  readonly length: number;
  /** Days between two meals. */
  readonly interval: number;
  /** Days of the last meal and of the last weighing. */
  readonly fed: number;
  readonly weighed: number;
}

export const TODAY = day("2026-09-21");

export const animals = {
  juniper: {
    label: "Juniper",
    sex: "female",
    born: day("2021-06-18"),
    mass: 312,
    length: 104,
    interval: 7,
    fed: day("2026-09-21"),
    weighed: day("2026-09-21"),
  },
  rowan: {
    label: "Rowan",
    sex: "male",
    born: day("2021-07-02"),
    mass: 268,
    length: 101,
    interval: 7,
    fed: day("2026-09-21"),
    weighed: day("2026-09-21"),
  },
  heather: {
    label: "Heather",
    sex: "female",
    born: day("2022-06-25"),
    mass: 241,
    length: 96,
    interval: 7,
    fed: day("2026-09-19"),
    weighed: day("2026-09-21"),
  },
  bracken: {
    label: "Bracken",
    sex: "male",
    born: day("2023-06-30"),
    mass: 176,
    length: 86,
    interval: 7,
    fed: day("2026-09-14"),
    weighed: day("2026-08-22"),
  },
  sorrel: {
    label: "Sorrel",
    sex: "unknown",
    born: day("2025-07-05"),
    mass: 58,
    length: 58,
    interval: 5,
    fed: day("2026-09-17"),
    weighed: day("2026-09-10"),
  },
} as const satisfies Record<string, Animal>;

/** A young animal feeds through its first winter, warm. */
export const wintersOf = ({ interval }: Animal): "yes" | "no" => (interval < 7 ? "no" : "yes");

/** The winter of 2026/27 for the adults: last meal, 14 days clear, 42 down, 84 cold, 42 up, 7 to settle. */
export const winter = {
  lastMeal: day("2026-09-21"),
  clear: 14,
  cool: 42,
  cold: 84,
  warm: 42,
  settle: 7,
  /** °C */
  warmSetPoint: 24,
  coldSetPoint: 8,
  /** The six dates that follow, as RAMPDATES answers them. */
  dates: ["2026-09-21", "2026-10-05", "2026-11-16", "2027-02-08", "2027-03-22", "2027-03-29"].map(day),
  /** Litres of the closed box in which an adult winters. */
  boxLitres: 24,
} as const;

/** Where the kind is said to live. */
export const home = {
  bandLow: 1300,
  bandHigh: 1600,
  elevation: 1500,
  latitude: 40.87,
  longitude: -4.06,
  coldThreshold: 10,
} as const;

/** The year there by the estimate of the built-in network, as the sheet Native climate works it out. */
export const homeYear = {
  high: [5.8, 6.3, 9.1, 12.0, 16.7, 22.5, 26.5, 26.1, 21.4, 15.4, 8.7, 6.7],
  low: [-1.7, -1.5, 0.2, 2.7, 5.9, 10.4, 13.0, 12.9, 9.8, 6.0, 1.5, -0.9],
  rain: [71, 76, 73, 87, 71, 40, 15, 25, 37, 105, 97, 71],
  /** At 30 cm in clay, lows. */
  groundLow: [3.1, 2.9, 4.4, 6.6, 9.8, 14.1, 17.5, 18.1, 15.5, 11.6, 6.8, 4.2],
} as const;

interface Station {
  readonly name: string;
  readonly elevation: number;
  readonly latitude: number;
  readonly longitude: number;
}

interface Record12 extends Station {
  readonly period: string;
  readonly high: readonly number[];
  readonly low: readonly number[];
  /** mm a month; empty where the record has none. */
  readonly rain: readonly number[];
}

/** Goes wherever the station records of Europe stand. */
export const STATION_TERMS =
  "Station records: monthly CLIMAT reports 2004-2020, means of the years. Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0).";
export const TOWN_TERMS = "Lebanon NH: U.S. Climate Normals 1991-2020, NOAA NCEI, US Government work.";

const placeOf = ({ name, elevation, latitude, longitude }: Station): Station => ({
  name,
  elevation,
  latitude,
  longitude,
});

/** The station above the animals' elevation. */
export const upper: Record12 = {
  name: "Navacerrada, Spain",
  elevation: 1888,
  latitude: 40.79,
  longitude: -4.01,
  period: "2004-2020",
  high: [3.25, 2.77, 5.31, 8.57, 13.34, 18.99, 23.49, 23.11, 18.32, 12.32, 5.55, 4.13],
  low: [-2.65, -3.25, -1.76, 0.73, 4.28, 8.84, 12.04, 11.9, 8.79, 4.96, 0.11, -1.71],
  rain: [139.1, 150.4, 144.1, 140.1, 106.7, 50.6, 13.9, 33.0, 49.4, 173.8, 176.2, 130.9],
};

/** The station below it. Its rain is not in the record that was used. */
export const lower: Record12 = {
  name: "Segovia, Spain",
  elevation: 1005,
  latitude: 40.95,
  longitude: -4.13,
  period: "2004-2020",
  high: [8.32, 9.71, 12.84, 15.96, 20.55, 26.28, 30.27, 29.62, 25.21, 19.45, 12.02, 9.42],
  low: [0.54, 0.8, 2.62, 5.31, 8.31, 12.48, 15.18, 14.85, 12.07, 8.54, 3.73, 1.26],
  rain: [],
};

/** The keeper's own town. */
export const town: Record12 = {
  name: "Lebanon NH, USA",
  elevation: 182.3,
  latitude: 43.63,
  longitude: -72.3,
  period: "1991-2020",
  high: [-0.94, 1.06, 6.11, 13.67, 20.94, 25.5, 28.17, 27.28, 22.72, 15.44, 8.22, 1.94],
  low: [-12.61, -11.67, -6.28, -0.06, 6.5, 11.33, 14.33, 13.44, 9.22, 3.0, -2.39, -7.72],
  rain: [58.2, 53.3, 68.6, 75.9, 84.3, 96.5, 101.3, 91.9, 87.4, 101.6, 75.7, 72.1],
};

/** The station of the built-in network nearest to the keeper's town. */
export const TOWN_STATION = "Hanover, NH";

/** Stations that a keeper might weigh up, from the same records. The year's mean stands with those of one mountain. */
export const candidates: readonly (Station & { readonly mean: number | null })[] = [
  { name: "Madrid Retiro, Spain", elevation: 667, latitude: 40.41, longitude: -3.68, mean: 15.6 },
  { ...placeOf(lower), mean: 12.7 },
  { ...placeOf(upper), mean: 7.6 },
  { name: "Garmisch, Germany", elevation: 720, latitude: 47.48, longitude: 11.06, mean: null },
  { name: "Säntis, Switzerland", elevation: 2494, latitude: 47.25, longitude: 9.34, mean: null },
  { name: "Bjelašnica, Bosnia", elevation: 2070, latitude: 43.72, longitude: 18.27, mean: null },
];

/** The year that the plan of weeks shows, from the height of one summer to the next. */
export const planYear = { firstWeek: day("2026-07-06") } as const;

/** Juniper's clutch of 2026, from Rowan. Masses in g; `before` is her mass when the two were put together. */
export const clutch = {
  label: "Juniper 2026",
  laid: day("2026-06-20"),
  eggs: 7,
  mass: 78,
  before: 303,
  after: 262,
  /** °C, and the days that her clutch of the year before took there. */
  incubator: 26,
  baseDays: 60,
  hatched: day("2026-08-19"),
  hatchlings: 6,
} as const;

/** What Juniper weighed in 2026, g: the weekly figures of the feeding log are some of these and lie between them. */
export const junipersWeights: readonly (readonly [iso: string, mass: number, length: number | null, seen?: string])[] =
  [
    ["2026-04-05", 278, 103],
    ["2026-04-19", 291, null],
    ["2026-05-03", 303, null, "With Rowan"],
    ["2026-05-24", 322, null],
    ["2026-06-07", 340, null, "Off food, eggs felt"],
    ["2026-06-20", 262, null, "Laid 7 eggs, 78 g"],
    ["2026-07-06", 269, null],
    ["2026-07-20", 281, null],
    ["2026-08-03", 286, null, "In shed"],
    ["2026-08-17", 289, null],
    ["2026-08-31", 303, null],
    ["2026-09-14", 310, null],
    ["2026-09-21", 312, 104, "Last meal"],
  ];

/** What is right in Juniper's box in the second week of cooling, °C. */
export const boxLimits = { low: 18, high: 23 } as const;

/**
 * A logger in that box, every two hours from 2026-10-12 on for six days: invented. It follows the plan's ramp and warms
 * by day; it was silent for ten hours on the third day, once wrote no temperature, and a door stayed shut on the fifth.
 */
export const boxReadings: readonly (readonly [time: number, temperature: number | null])[] = Array.from(
  { length: 72 },
  (_, i) => {
    const time = day("2026-10-12") + i / 12;
    const ramp =
      winter.warmSetPoint - ((winter.warmSetPoint - winter.coldSetPoint) * (time - day("2026-10-05"))) / winter.cool;
    const swing = 0.9 * Math.sin(((i % 12) / 12 - 0.375) * 2 * Math.PI);
    const shutDoor = i >= 54 && i <= 57 ? 3.4 : 0;
    return [
      time,
      i === 40 ? null : Math.round((ramp + swing + shutDoor + 0.1 * ((i * 7) % 5) - 0.2) * 10) / 10,
    ] as const;
  },
).filter((_, i) => i < 28 || i > 31);
