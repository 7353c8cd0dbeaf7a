import { cell, defineFunction, optional, quantity, unitsParameter } from "../define";
import { notUsable } from "../problem";
import { figures } from "../shared/figure";
import { TEMPERATURE } from "../shared/limits";
import { swapped } from "../shared/swapped";
import { aboveText, degreesAbove as above } from "./shared/singleSine";
import { refusedIf } from "../twin";

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
  twin: ({ high, low, base, ceiling }) => {
    const counted = ceiling(aboveText(base, high, low), (top) =>
      refusedIf(`${top}<=${base}`, `${aboveText(base, high, low)}-${aboveText(top, high, low)}`),
    );
    return refusedIf(`${low}>${high}`, counted);
  },
});
