import { cell, defineFunction, optional, quantity, unitsParameter } from "../define";
import { notUsable } from "../problem";
import { figures } from "../shared/figure";
import { TEMPERATURE } from "../shared/limits";
import { swapped } from "../shared/swapped";

/** Degree-days above a level in a day whose temperature runs as one sine between its high and its low. */
const above = (level: number, high: number, low: number): number => {
  const middle = (high + low) / 2;
  if (low >= level) return middle - level;
  if (high <= level) return 0;
  const swing = (high - low) / 2;
  // A level a hair inside the high or the low may come out a hair outside the sine.
  const crossing = Math.asin(Math.min(Math.max((level - middle) / swing, -1), 1));
  return ((middle - level) * (Math.PI / 2 - crossing) + swing * Math.cos(crossing)) / Math.PI;
};

/** Horizontal cutoff: warmth above the ceiling counts as the ceiling. */
export const degreeDays = defineFunction({
  name: "DEGREEDAYS",
  summary: "Warmth of one day above a base temperature, from its high and low, by the single-sine method.",
  parameters: {
    high: quantity("celsius", "Highest temperature of the day", TEMPERATURE),
    low: quantity("celsius", "Lowest temperature of the day", TEMPERATURE),
    base: quantity("celsius", "Temperature above which warmth counts", TEMPERATURE),
    ceiling: optional(quantity("celsius", "Temperature above which more warmth adds nothing", TEMPERATURE), "none"),
    units: unitsParameter,
  },
  result: cell("degreeDay", "Degree-days"),
  sources: ["singleSine"],
  cautions: ["hatchingSuccess"],
  examples: [
    { given: [20, 5, 10], gives: 3.77122, within: 1e-5 },
    { given: [30, 0, 10, 25], gives: 6.66084, within: 1e-5 },
  ],
  calculate({ high, low, base, ceiling, units = "metric" }) {
    const fault = swapped(["low", low], ["high", high], "celsius", units);
    if (fault) return fault;
    if (ceiling === undefined) return above(base, high, low);
    if (ceiling <= base) {
      const [top, bottom] = figures([ceiling, base], "celsius", units);
      return notUsable(`ceiling holds ${top}: give more than base, ${bottom}`);
    }
    return above(base, high, low) - above(ceiling, high, low);
  },
});
