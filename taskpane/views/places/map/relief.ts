import type { Belt, Spot } from "../readPlace";
import { latitudeOf, RADIANS, type View } from "./view";

/**
 * Mean elevations on a grid of 20 arc-minutes, from 90° north and 180° west on, one signed byte a cell: metres / 50,
 * negative for sea.
 */
export type Relief = Int8Array;
const ROWS = 540;
const COLUMNS = 1080;
const PER_DEGREE = 3;
const METRES = 50;

/** The relief of a file, its sea as 0: what is sea the coast says. Undefined where the file is damaged. */
export const readRelief = (bytes: ArrayBuffer): Relief | undefined =>
  bytes.byteLength === ROWS * COLUMNS ? new Int8Array(bytes).map((cell) => Math.max(0, cell)) : undefined;

/** m. The mean of the cell in which the place lies. */
export const groundAt = (relief: Relief, { latitude, longitude }: Spot): number => {
  const row = Math.min(ROWS - 1, Math.max(0, Math.floor((90 - latitude) * PER_DEGREE)));
  const column = Math.floor((((longitude + 180) % 360) + 360) * PER_DEGREE) % COLUMNS;
  return (relief[row * COLUMNS + column] as number) * METRES;
};

type Rgb = readonly [red: number, green: number, blue: number];

export interface Palette {
  /** By the lower bounds of `CLASSES`. */
  readonly land: readonly Rgb[];
  readonly beltLow: Rgb;
  readonly beltHigh: Rgb;
  readonly beltEdge: Rgb;
  /** Colours for the canvas. */
  readonly sea: string;
  readonly coast: string;
  readonly border: string;
  /** The belt by hatching, where colours are the system's. */
  readonly isHatched: boolean;
  /** How much light and shadow change a tint, 0 to 1. */
  readonly shading: number;
}

/** m */
export const CLASSES = [0, 500, 1000, 2000, 3000, 4500] as const;

const SHADES = 33;
const FLAT = (SHADES - 1) / 2;
/** Every 10 m to 7,000 m. */
const STEP = 10;
const STEPS = 700;

const packed = ([red, green, blue]: Rgb): number =>
  (0xff000000 | (Math.round(blue) << 16) | (Math.round(green) << 8) | Math.round(red)) >>> 0;
const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** The colour of every step of elevation in every shade, so that a pixel costs one look. */
export interface Tints {
  readonly colours: Uint32Array;
  readonly inBelt: Uint8Array;
  readonly palette: Palette;
}

export const tintsOf = (belt: Belt | undefined, palette: Palette): Tints => {
  const colours = new Uint32Array(SHADES * STEPS);
  const inBelt = new Uint8Array(STEPS);
  for (let step = 0; step < STEPS; step++) {
    const metres = step * STEP;
    const isIn = belt !== undefined && metres >= belt.low && metres <= belt.high;
    inBelt[step] = isIn ? 1 : 0;
    const tint = isIn
      ? metres < (belt.low + belt.high) / 2
        ? palette.beltLow
        : palette.beltHigh
      : (palette.land[CLASSES.findLastIndex((least) => metres >= least)] as Rgb);
    for (let shade = 0; shade < SHADES; shade++) {
      const light = 1 + (shade / FLAT - 1) * palette.shading;
      colours[shade * STEPS + step] = packed(tint.map((part) => clamp(part * light, 0, 255)) as unknown as Rgb);
    }
  }
  return { colours, inBelt, palette };
};

/** Weights of four neighbours (Catmull-Rom): smooth between the cells' middles, and at each the cell's own figure. */
const weightsAt = (t: number): readonly [number, number, number, number] => [
  (((2 - t) * t - 1) * t) / 2,
  ((3 * t - 5) * t * t + 2) / 2,
  (((4 - 3 * t) * t + 1) * t) / 2,
  ((t - 1) * t * t) / 2,
];

/** Contours in close views, m. */
const CONTOUR = 250;

/**
 * Paints a view's relief into the pixels of an image, lit from the north-west. A row of the picture costs one blend of
 * four rows of the grid, and a pixel one of four of its columns.
 */
export const paintRelief = (
  pixels: Uint32Array,
  width: number,
  height: number,
  relief: Relief,
  view: View,
  { colours, inBelt, palette }: Tints,
): void => {
  const perPixel = view.width / width / view.scale; // radians
  const west = view.longitude - view.width / 2 / view.scale / RADIANS;
  const top = view.northing + view.height / 2 / view.scale;
  const columns = new Int16Array(width * 4);
  const weights = new Float32Array(width * 4);
  for (let x = 0; x < width; x++) {
    const at = (west + ((x + 0.5) * perPixel) / RADIANS + 180) * PER_DEGREE - 0.5;
    const whole = Math.floor(at);
    weightsAt(at - whole).forEach((weight, i) => {
      columns[4 * x + i] = (((whole - 1 + i) % COLUMNS) + COLUMNS) % COLUMNS;
      weights[4 * x + i] = weight;
    });
  }

  // px a cell: the belt's edge fades towards the world, and the shadows towards the closest view, where they would be guesses.
  const cell = RADIANS / PER_DEGREE / perPixel;
  const bold = palette.isHatched ? 1 : clamp((cell - 1) / 5, 0, 1);
  const edge = packed(
    palette.beltEdge.map((part, i) => bold * part + (1 - bold) * (palette.beltHigh[i] as number)) as unknown as Rgb,
  );
  const isClose = cell > 20;
  const slope = (FLAT / 250) * Math.min(cell, 5) * clamp(25 / cell, 0, 1);

  const row = new Float32Array(COLUMNS);
  let above = new Float32Array(width);
  let here = new Float32Array(width);
  const wasIn = new Uint8Array(width);
  for (let y = 0; y < height; y++) {
    const at = (90 - latitudeOf(top - (y + 0.5) * perPixel)) * PER_DEGREE - 0.5;
    const whole = Math.floor(at);
    const [w0, w1, w2, w3] = weightsAt(at - whole);
    const [r0 = 0, r1 = 0, r2 = 0, r3 = 0] = [-1, 0, 1, 2].map((by) => clamp(whole + by, 0, ROWS - 1) * COLUMNS);
    for (let c = 0; c < COLUMNS; c++) {
      row[c] =
        w0 * (relief[r0 + c] as number) +
        w1 * (relief[r1 + c] as number) +
        w2 * (relief[r2 + c] as number) +
        w3 * (relief[r3 + c] as number);
    }
    let left = 0;
    let leftIn = 0;
    for (let x = 0, i = 0; x < width; x++, i += 4) {
      const blended =
        (weights[i] as number) * (row[columns[i] as number] as number) +
        (weights[i + 1] as number) * (row[columns[i + 1] as number] as number) +
        (weights[i + 2] as number) * (row[columns[i + 2] as number] as number) +
        (weights[i + 3] as number) * (row[columns[i + 3] as number] as number);
      const metres = blended > 0 ? blended * METRES : 0; // the curve may swing below the sea
      here[x] = metres;
      const step = Math.min(STEPS - 1, (metres / STEP) | 0);
      const isIn = inBelt[step] as number;
      const isInner = x > 0 && y > 0;
      const over = above[x] as number;
      let shade = isInner ? (FLAT + (metres - left + metres - over) * slope + 0.5) | 0 : FLAT;
      if (isClose && isInner) {
        const level = (metres / CONTOUR) | 0;
        if (level !== ((left / CONTOUR) | 0) || level !== ((over / CONTOUR) | 0)) shade -= 6;
      }
      shade = shade < 0 ? 0 : shade >= SHADES ? SHADES - 1 : shade;
      const isEdge = isInner && (isIn !== leftIn || isIn !== wasIn[x]);
      const isStripe = isIn === 1 && palette.isHatched && (x + y) % 12 < 3;
      pixels[y * width + x] = isEdge || isStripe ? edge : (colours[shade * STEPS + step] as number);
      left = metres;
      leftIn = isIn;
      wasIn[x] = isIn;
    }
    [above, here] = [here, above];
  }
};
