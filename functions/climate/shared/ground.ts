import { serial } from "../../dates";
import { curveThrough } from "./monthlyCurve";

/**
 * Thermal diffusivity of grounds, mm²/s: how fast warmth goes through. All are rows of Moene & van Dam
 * (2014), Table 2.2. Dry and wet are its pores without water and full of it.
 */
export const grounds = {
  /** Dry peat: loose dead plants with air between them. */
  litter: 0.16,
  /** Peat soil, wet. */
  peat: 0.12,
  /** Clay soil, a fifth of its volume water. */
  clay: 0.4,
  /** Loose sandy soil, dry. */
  "dry sand": 0.19,
  /** Loose sandy soil, a fifth of its volume water. */
  sand: 0.99,
  /** Rock. */
  stone: 1.4,
} as const;

export type Ground = keyof typeof grounds;
/** Moist soil neither of sand nor of peat. */
export const USUAL_GROUND: Ground = "clay";

const DAY = 86_400; // s
const YEAR = 365.2425 * DAY;
const MM_PER_CM = 10;
/** Any year of 365 days. */
const NEW_YEAR = serial(2027, 1, 1);
/** Of a wave that is so many damping depths down a billionth is left. */
const NOTHING_LEFT = 21;

/** The depth in cm at which a wave of this period is down to 37 %: √(κ·P/π). */
export const dampingDepth = (diffusivity: number, seconds: number): number =>
  Math.sqrt((diffusivity * seconds) / Math.PI) / MM_PER_CM;

const DAYS = 365;
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** One turn in 365 steps, whose cosines every wave of the year shares. */
const COSINES = Array.from({ length: DAYS }, (_, day) => Math.cos((2 * Math.PI * day) / DAYS));
const SINES = Array.from({ length: DAYS }, (_, day) => Math.sin((2 * Math.PI * day) / DAYS));

/**
 * Twelve monthly means at a depth in cm, from those at the surface. The smooth curve through the months is taken apart into
 * its waves of a year, half a year and so on down to two days; each sinks by itself, e^(−z/d) of it late by z/d radians.
 */
export const monthsAtDepth = (months: readonly number[], depth: number, diffusivity: number): readonly number[] => {
  const curve = curveThrough(months);
  const surface = Array.from({ length: DAYS }, (_, day) => curve(NEW_YEAR + day));
  const below = new Float64Array(DAYS).fill(surface.reduce((sum, value) => sum + value, 0) / DAYS);
  for (let wave = 1; wave <= (DAYS - 1) / 2; wave++) {
    const lag = depth / dampingDepth(diffusivity, YEAR / wave);
    if (lag > NOTHING_LEFT) break; // shorter waves sink less deep
    let [cosine, sine] = [0, 0];
    for (const [day, value] of surface.entries()) {
      cosine += (2 / DAYS) * value * (COSINES[(wave * day) % DAYS] as number);
      sine += (2 / DAYS) * value * (SINES[(wave * day) % DAYS] as number);
    }
    const [inPhase, late] = [Math.exp(-lag) * Math.cos(lag), Math.exp(-lag) * Math.sin(lag)];
    for (let day = 0; day < DAYS; day++) {
      const at = (wave * day) % DAYS;
      below[day] =
        (below[day] as number) +
        (cosine * inPhase - sine * late) * (COSINES[at] as number) +
        (cosine * late + sine * inPhase) * (SINES[at] as number);
    }
  }
  let first = 0;
  return LENGTHS.map((length) => {
    const days = below.subarray(first, (first += length));
    return days.reduce((sum, value) => sum + value, 0) / length;
  });
};

/** The share of the day's swing that is left at a depth in cm. */
export const dailyShare = (depth: number, diffusivity: number): number =>
  Math.exp(-depth / dampingDepth(diffusivity, DAY));
