import { feature } from "topojson-client";
import type { GeometryCollection, Topology, MultiLineString, MultiPolygon } from "topojson-specification";
import type { Spot } from "../readPlace";
import { northingOf, RADIANS, type View } from "./view";

/** A line in Mercator's plane, x and y by turns: longitude and, downwards, the negative northing, both in radians. */
interface Line {
  readonly points: Float64Array;
  /** West, north, east and south end of each run of points. */
  readonly runs: Float64Array;
}

export interface World {
  /** Rings: outer ones and lakes. */
  readonly land: readonly Line[];
  readonly borders: readonly Line[];
}

const RUN = 64;
const SOUTHERNMOST = -85;

type Position = readonly number[];

/** Goes on over the date line instead of jumping back, and closes below the map what goes round the pole. */
const projected = (positions: readonly Position[]): Line => {
  const points: number[] = [];
  let shift = 0;
  positions.forEach(([longitude = 0, latitude = 0], i) => {
    const before = positions[i - 1]?.[0] ?? longitude;
    if (longitude - before > 180) shift -= 360;
    if (longitude - before < -180) shift += 360;
    points.push((longitude + shift) * RADIANS, -northingOf(Math.max(SOUTHERNMOST, latitude)));
  });
  if (shift !== 0 && points.length > 2) {
    const below = -northingOf(SOUTHERNMOST);
    points.push(points[points.length - 2] as number, below, points[0] as number, below);
  }
  const runs: number[] = [];
  for (let from = 0; from < points.length; from += 2 * RUN) {
    // With the first point of the next run: the way to it belongs to this one.
    const run = points.slice(from, from + 2 * RUN + 2);
    const xs = run.filter((_, i) => i % 2 === 0);
    const ys = run.filter((_, i) => i % 2 === 1);
    runs.push(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
  }
  return { points: Float64Array.from(points), runs: Float64Array.from(runs) };
};

/** The coast and the borders from the file that ships, projected once: a view moves and scales them. */
export const readWorld = (topology: Topology): World => {
  const { land, borders } = topology.objects as unknown as {
    readonly land: MultiPolygon | GeometryCollection;
    readonly borders: MultiLineString;
  };
  const ground = feature(topology, land as MultiPolygon).geometry;
  return {
    land: ground.coordinates.flat().map(projected),
    borders: feature(topology, borders).geometry.coordinates.map(projected),
  };
};

/** Copies of the world to the west and east, where the view reaches over the date line. */
const TURNS = [-2 * Math.PI, 0, 2 * Math.PI] as const;

/** Half a pixel of the canvas: what is nearer to the point before cannot be seen. */
const NEAR = 0.5;

/**
 * Adds lines to the canvas's path, `density` canvas pixels a pixel. A run that lies wholly outside the view is drawn as one
 * straight line: that stays within the run's own box, so nothing in view changes, and a coast of continents costs no more
 * than what is seen of it.
 */
export const trace = (context: CanvasRenderingContext2D, lines: readonly Line[], view: View, density: number): void => {
  const { scale, width, height } = view;
  const by = scale * density;
  const top = -view.northing - height / 2 / scale;
  const bottom = top + height / scale;
  for (const turn of TURNS) {
    const left = view.longitude * RADIANS - width / 2 / scale - turn;
    const right = left + width / scale;
    for (const { points, runs } of lines) {
      const inView = (run: number): boolean =>
        (runs[run] as number) <= right &&
        (runs[run + 2] as number) >= left &&
        (runs[run + 1] as number) <= bottom &&
        (runs[run + 3] as number) >= top;
      let isSeen = false;
      for (let run = 0; run < runs.length && !isSeen; run += 4) isSeen = inView(run);
      if (!isSeen) continue;
      let [lastX, lastY] = [NaN, NaN];
      for (let run = 0; run < runs.length; run += 4) {
        const from = (run / 4) * 2 * RUN;
        const to = inView(run) ? Math.min(points.length, from + 2 * RUN) : from + 2;
        for (let i = from; i < to; i += 2) {
          const x = ((points[i] as number) - left) * by;
          const y = ((points[i + 1] as number) - top) * by;
          if (i === 0) context.moveTo(x, y);
          else if (Math.abs(x - lastX) + Math.abs(y - lastY) >= NEAR || i === points.length - 2) context.lineTo(x, y);
          else continue;
          [lastX, lastY] = [x, y];
        }
      }
    }
  }
};

/** Whether a place lies on land: how often a line to the east of it crosses the coast. */
export const isLand = ({ land }: World, { latitude, longitude }: Spot): boolean => {
  const y = -northingOf(Math.max(SOUTHERNMOST, Math.min(-SOUTHERNMOST, latitude)));
  let isIn = false;
  for (const turn of TURNS) {
    const x = longitude * RADIANS + turn;
    for (const { points } of land) {
      for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
        const [x1, y1] = [points[i] as number, points[i + 1] as number];
        const [x2, y2] = [points[j] as number, points[j + 1] as number];
        if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) isIn = !isIn;
      }
    }
  }
  return isIn;
};
