import { quantity } from "../../define";
import { notUsable, type Problem } from "../../problem";
import { figure } from "../../shared/figure";
import { TEMPERATURE } from "../../shared/limits";
import type { System } from "../../units";

/** The two temperatures of a day, or of a month's average day. */
export const dailyExtremes = {
  high: quantity("celsius", "Daily high, or a month's mean of them", TEMPERATURE),
  low: quantity("celsius", "Daily low, or a month's mean of them", TEMPERATURE),
} as const;

/** A low above its high: most likely the two columns are swapped. */
export const swapped = (high: number, low: number, units: System | undefined): Problem | undefined =>
  low > high
    ? notUsable(
        `low holds ${figure(low, "celsius", units)}, above high ${figure(high, "celsius", units)}: are they swapped?`,
      )
    : undefined;
