import { quantity } from "../../define";
import type { Problem } from "../../problem";
import { TEMPERATURE } from "../../shared/limits";
import { swapped } from "../../shared/swapped";
import type { System } from "../../units";

/** The two temperatures of a day, or of a month's average day. */
export const dailyExtremes = {
  high: quantity("celsius", "Daily high, or a month's mean of them", TEMPERATURE),
  low: quantity("celsius", "Daily low, or a month's mean of them", TEMPERATURE),
} as const;

/** A low above its high: most likely the two columns are swapped. */
export const lowAboveHigh = (high: number, low: number, units: System | undefined): Problem | undefined =>
  swapped(["low", low], ["high", high], "celsius", units);
