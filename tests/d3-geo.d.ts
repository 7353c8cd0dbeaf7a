/** What the tests use of d3-geo, which comes with @observablehq/plot and has no types of its own. */
declare module "d3-geo" {
  type Point = [longitude: number, latitude: number];
  interface Projection {
    (point: Point): [x: number, y: number] | null;
    scale(scale: number): Projection;
    rotate(angles: [number, number]): Projection;
    translate(offset: [number, number]): Projection;
  }
  export const geoMercator: () => Projection;
  /** Radians. */
  export const geoDistance: (one: Point, other: Point) => number;
}
