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

/** A matrix in a formula, of twelve months in a ring: of each row its own column, the one before it and the one after it. */
const ring = (own: readonly number[], before: readonly number[], after: readonly number[]): string => {
  const rows = own.map((_, i) =>
    own.map((_, j) => (j === i ? own[i] : j === (i + 11) % 12 ? before[i] : j === (i + 1) % 12 ? after[i] : 0)),
  );
  return `{${rows.map((row) => row.join(",")).join(";")}}`;
};
const twelve = (value: number): number[] => LENGTHS.map(() => value);
/** In a column, what each month has more than the one before, and the one after it more. */
const rise = (column: string): string => `MMULT(${ring(twelve(1), twelve(-1), twelve(0))},${column})`;
const riseAfter = (column: string): string => `MMULT(${ring(twelve(-1), twelve(0), twelve(1))},${column})`;

/**
 * `monthsAtDepth` in a formula, for one month. The running sum of the days is a cubic spline with knots where months begin,
 * so that its waves are sums over twelve knots instead of 365 days. At each knot its third derivative turns; a wave of these
 * turns, divided by the fourth power of 2 sin(πw/365), which is what four differences from day to day do to a wave, and
 * times (2 + cos(2πw/365))/3, which a cubic spline's own three days sum to (1, 4 and 1 sixth), is that of the running
 * sum. Over a month the sum grows by as much as the days have together.
 */
export const monthAtDepthText = (
  means: readonly string[],
  month: number,
  depth: string,
  diffusivity: string,
): string => {
  const waves = `{${Array.from({ length: (DAYS - 1) / 2 }, (_, i) => i + 1).join(";")}}`;
  const length = LENGTHS[month] as number;
  const before = LENGTHS.map((_, i) => LENGTHS[(i + 11) % 12] as number);
  const begins = LENGTHS.map((_, i) => LENGTHS.slice(0, i).reduce<number>((sum, one) => sum + one, 0));
  const toMiddle = begins.map((begin) => (begins[month] as number) + length / 2 - begin);
  // Arrays stand first: the preview's engine multiplies no cell by an array.
  const lag = (sign: string): string => `${waves}^0.5*${lagText(depth, diffusivity, YEAR, sign)}`;
  const size = `((3/SIN(${waves}*PI()/${DAYS})^2-1)^2-1)`; // 3 (2 + cos)/sin⁴, with one sine
  const over = `SIN(${waves}*${length}*PI()/${DAYS})`;
  const bends = `MMULT(MINVERSE(${ring(
    LENGTHS.map((own, i) => 2 * (own + (before[i] as number))),
    before,
    LENGTHS,
  )}),${rise(`CHOOSE({1;2;3;4;5;6;7;8;9;10;11;12},${means.join(",")})`)})`;
  const turns = rise(`${riseAfter(bends)}/{${LENGTHS.join(";")}}`);
  const late = `MMULT(SIN(${waves}*(2*PI()/${DAYS})*{${toMiddle.join(",")}}-${lag("")}),${turns})`;
  const mean = means.map((one, i) => `${LENGTHS[i]}*${one}`).join("+");
  // Of a wave's size 1/144, of two in 365 days, of the two sines 2, and of a bend 6.
  const share = (144 * DAYS * length) / (2 * 2 * 6);
  return `(${mean})/${DAYS}-SUMPRODUCT(${size}*${over}*EXP(${lag("-")})*${late})/${share}`;
};

const lagText = (depth: string, diffusivity: string, seconds: number, sign = ""): string =>
  `(${sign}${MM_PER_CM}*${depth}*SQRT(PI()/${seconds}/${diffusivity}))`;

/** `dailyShare` in a formula. */
export const dailyShareText = (depth: string, diffusivity: string): string =>
  `EXP${lagText(depth, diffusivity, DAY, "-")}`;

/** The share of the day's swing that is left at a depth in cm. */
export const dailyShare = (depth: number, diffusivity: number): number =>
  Math.exp(-depth / dampingDepth(diffusivity, DAY));
