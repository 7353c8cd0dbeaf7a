import { quantity } from "../define";
import { type Problem, notUsable } from "../problem";
import { figure } from "./figure";
import { TEMPERATURE } from "./limits";
import type { System } from "../units";

/** The two ends of a winter plan's temperatures, as parameters. */
export const setPoints = {
  warm: quantity("celsius", "Normal set-point, before and after", TEMPERATURE),
  cold: quantity("celsius", "Set-point in the cold", TEMPERATURE),
};

/** The problem with two set-points that were given the wrong way round; equal ones pass. */
export const swapped = (warm: number, cold: number, system: System = "metric"): Problem | undefined =>
  warm < cold
    ? notUsable(
        `warm holds ${figure(warm, "celsius", system)} and cold ${figure(cold, "celsius", system)}: give warm the higher one`,
      )
    : undefined;
