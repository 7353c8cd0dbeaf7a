const RADIANS = Math.PI / 180;
/** km. Mean radius of the earth (IUGG). On the ellipsoid a distance differs by at most 0.56 %. */
const EARTH = 6371.0088;

/** Kilometres between two places along a great circle, from latitudes and longitudes in degrees (haversine formula). */
export const greatCircle = (latitude1: number, longitude1: number, latitude2: number, longitude2: number): number => {
  const half = (degrees: number): number => Math.sin((degrees * RADIANS) / 2) ** 2;
  const h =
    half(latitude2 - latitude1) +
    Math.cos(latitude1 * RADIANS) * Math.cos(latitude2 * RADIANS) * half(longitude2 - longitude1);
  return 2 * EARTH * Math.asin(Math.min(1, Math.sqrt(h)));
};
