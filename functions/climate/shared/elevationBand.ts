import { quantity } from "../../define";
import type { Problem } from "../../problem";
import { ELEVATION } from "../../shared/limits";
import { swapped } from "../../shared/swapped";
import type { System } from "../../units";

/** The elevations between which the animal lives. */
export const elevationBand = {
  bandLow: quantity("metre", "Lower end of the animal's elevation band", ELEVATION),
  bandHigh: quantity("metre", "Upper end of the band", ELEVATION),
} as const;

/** A band that ends below its beginning: most likely the two are swapped. */
export const upsideDown = (bandLow: number, bandHigh: number, system?: System): Problem | undefined =>
  swapped(["bandLow", bandLow], ["bandHigh", bandHigh], "metre", system);

/** Metres from an elevation to the band: 0 inside, negative below, positive above. */
export const gapTo = (elevation: number, bandLow: number, bandHigh: number): number =>
  elevation < bandLow ? elevation - bandLow : elevation > bandHigh ? elevation - bandHigh : 0;
