/**
 * Plausibility limits that several functions share, in metric, both ends included.
 * Each is wide enough for any place on land; none is a limit of a method.
 */

/** °C. Around the extremes ever measured near the ground, with room for both ends. */
export const TEMPERATURE = [-90, 60] as const;
/** m. From the lowest shore on land to above the highest summit. */
export const ELEVATION = [-430, 9000] as const;
/** g. From a small hatchling to the heaviest snakes. Above 0, because a share of no body means nothing. */
export const BODY_MASS = [0.1, 200_000] as const;
/** g. A meal, or what is left of one. */
export const PREY_MASS = [0, 100_000] as const;
