import { areaY } from "@observablehq/plot";
import { stroke } from "./line";
import { isFigure, lastOf, type Drawn, type Of, type Scale } from "./scale";

export const band = (series: Of<"band">, i: number, scale: Scale): Drawn => {
  const [low, high] = [scale.column(series.low), scale.column(series.high)];
  const isBoth = low.map((value, k) => isFigure(value) && isFigure(high[k] ?? NaN));
  const both = (values: readonly number[]): number[] => values.map((value, k) => (isBoth[k] ? value : NaN));
  const area = areaY(low, { x: [...scale.xs], y1: both(low), y2: both(high), fill: scale.fill(i) });
  const edges =
    series.likely === undefined
      ? [...stroke(low, i, scale, 1.25), ...stroke(high, i, scale, 2)]
      : [...stroke(low, i, scale, 0.75), ...stroke(high, i, scale, 0.75)];
  const middle = series.likely === undefined ? [] : stroke(scale.column(series.likely), i, scale, 2.5);
  return {
    marks: [area, ...edges, ...middle],
    label: (lastOf(low) + lastOf(high)) / 2,
    isSeen: [...low, ...high].some(isFigure),
  };
};
