import type { Spot } from "../readPlace";

/**
 * What part of the world the map shows, in the Mercator projection: columns depend on the longitude alone and rows on
 * the latitude alone, which is what makes the relief quick to paint.
 */
export interface View {
  /** ° at the middle. */
  readonly longitude: number;
  /** Mercator's northing at the middle, radians. */
  readonly northing: number;
  /** px a radian of longitude. */
  readonly scale: number;
  /** px */
  readonly width: number;
  readonly height: number;
}

export const RADIANS = Math.PI / 180;
const EARTH = 6371.0088; // km
/** km across the map at the closest zoom: a cell of the relief measures 37 km. */
const NARROWEST = 200;
/** Nothing beyond is shown: no snake lives there, and Mercator has no poles. */
const [NORTH, SOUTH] = [83, -70];

export const northingOf = (latitude: number): number => Math.log(Math.tan(Math.PI / 4 + (latitude * RADIANS) / 2));
export const latitudeOf = (northing: number): number => (2 * Math.atan(Math.exp(northing)) - Math.PI / 2) / RADIANS;
/** From -180 to 180. */
export const aroundGlobe = (longitude: number): number => ((((longitude + 180) % 360) + 360) % 360) - 180;
const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const scaleFor = (km: number, latitude: number, width: number): number =>
  (width * EARTH * Math.cos(latitude * RADIANS)) / km;

/** The nearest view that is allowed: not beyond the poles, not wider than the world, not closer than the relief can show. */
const allowed = (view: View): View => {
  const { width, height } = view;
  const [top, bottom] = [northingOf(NORTH), northingOf(SOUTH)];
  const within = clamp(view.northing, bottom, top);
  const scale = clamp(view.scale, width / (2 * Math.PI), scaleFor(NARROWEST, latitudeOf(within), width));
  const half = height / 2 / scale;
  const northing = top - bottom < 2 * half ? (top + bottom) / 2 : clamp(within, bottom + half, top - half);
  return { ...view, longitude: aroundGlobe(view.longitude), northing, scale };
};

export const wholeWorld = (width: number, height: number): View =>
  allowed({ longitude: 15, northing: northingOf(33), scale: 0, width, height });

/** So many kilometres around a place. */
export const around = ({ longitude, latitude }: Spot, km: number, { width, height }: View): View =>
  allowed({ longitude, northing: northingOf(latitude), scale: scaleFor(km, latitude, width), width, height });

export const resized = (view: View, width: number, height: number): View =>
  allowed({ ...view, scale: (view.scale * width) / view.width, width, height });

/** px from the top left corner. */
export const toMap = (view: View, { latitude, longitude }: Spot): readonly [x: number, y: number] => [
  view.width / 2 + aroundGlobe(longitude - view.longitude) * RADIANS * view.scale,
  view.height / 2 - (northingOf(latitude) - view.northing) * view.scale,
];

export const toWorld = (view: View, x: number, y: number): Spot => ({
  longitude: aroundGlobe(view.longitude + (x - view.width / 2) / view.scale / RADIANS),
  latitude: latitudeOf(view.northing - (y - view.height / 2) / view.scale),
});

/** The ground moves with the hand. */
export const dragged = (view: View, dx: number, dy: number): View =>
  allowed({
    ...view,
    longitude: view.longitude - dx / view.scale / RADIANS,
    northing: view.northing + dy / view.scale,
  });

/** Closer by a factor; what lies at x, y stays there. */
export const zoomed = (view: View, factor: number, x = view.width / 2, y = view.height / 2): View => {
  const { longitude, latitude } = toWorld(view, x, y);
  const { scale } = allowed({ ...view, scale: view.scale * factor, northing: northingOf(latitude) });
  return allowed({
    ...view,
    scale,
    longitude: longitude - (x - view.width / 2) / scale / RADIANS,
    northing: northingOf(latitude) + (y - view.height / 2) / scale,
  });
};

export const isInView = (view: View, spot: Spot, margin = 0): boolean => {
  const [x, y] = toMap(view, spot);
  return x >= margin && y >= margin && x <= view.width - margin && y <= view.height - margin;
};

export const kmPerPixel = ({ northing, scale }: View): number =>
  (EARTH * Math.cos(latitudeOf(northing) * RADIANS)) / scale;
