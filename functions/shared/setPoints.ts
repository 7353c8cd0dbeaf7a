import { quantity } from "../define";
import type { Problem } from "../problem";
import { TEMPERATURE } from "./limits";
import { swapped } from "./swapped";
import type { System } from "../units";

/** The two ends of a winter plan's temperatures, as parameters. */
export const setPoints = {
  warm: quantity("celsius", "Normal set-point, before and after", TEMPERATURE),
  cold: quantity("celsius", "Set-point in the cold", TEMPERATURE),
};

/** The problem with two set-points that were given the wrong way round; equal ones pass. */
export const coldAboveWarm = (warm: number, cold: number, units: System | undefined): Problem | undefined =>
  swapped(["cold", cold], ["warm", warm], "celsius", units);
