import type { Belt, Spot } from "./readPlace";

/** How the pane speaks of places, elevations and directions. */
export const metres = (value: number): string => `${Math.round(value)} m`;

export const degrees = ({ latitude, longitude }: Spot): string =>
  `${Math.abs(latitude).toFixed(2)}° ${latitude < 0 ? "S" : "N"}, ${Math.abs(longitude).toFixed(2)}° ${longitude < 0 ? "W" : "E"}`;

export type Standing = "below" | "inside" | "above";

/** Where an elevation stands to the band. */
export const standing = (elevation: number, { low, high }: Belt): Standing =>
  elevation < low ? "below" : elevation > high ? "above" : "inside";

export const standingWords = (elevation: number, { low, high }: Belt): string =>
  elevation < low
    ? `${metres(low - elevation)} below the band`
    : elevation > high
      ? `${metres(elevation - high)} above the band`
      : "in the band";

const RADIANS = Math.PI / 180;
const POINTS = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"] as const;

/** The direction in which one sets out along the great circle, in words. */
export const direction = (from: Spot, to: Spot): string => {
  const east = (to.longitude - from.longitude) * RADIANS;
  const [here, there] = [from.latitude * RADIANS, to.latitude * RADIANS];
  const bearing = Math.atan2(
    Math.sin(east) * Math.cos(there),
    Math.cos(here) * Math.sin(there) - Math.sin(here) * Math.cos(there) * Math.cos(east),
  );
  return POINTS[Math.round(bearing / RADIANS / 45 + 8) % 8] as string;
};
