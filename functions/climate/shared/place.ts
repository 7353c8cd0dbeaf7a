import { quantity } from "../../define";

export const latitude = quantity("degree", "Latitude, south negative", [-90, 90], { plausibility: false });
export const longitude = quantity("degree", "Longitude, west negative", [-180, 180], { plausibility: false });

/** m. From the shores of the Dead Sea to where no snake is found. */
const SITE_ELEVATION = [-450, 6000] as const;

/** A place for which the year is estimated. */
export const site = {
  latitude,
  longitude,
  elevation: quantity("metre", "Elevation of the place", SITE_ELEVATION, { plausibility: false }),
} as const;
