import { lineY, ruleY } from "@observablehq/plot";
import { isFigure, lastOf, type Drawn, type Of, type Scale } from "./scale";

const look = { stroke: "currentColor", strokeWidth: 1.5, strokeDasharray: "4 3" };

/** One cell is a level across the picture; several follow the axis. */
export const threshold = (series: Of<"threshold">, scale: Scale): Drawn => {
  const values = scale.cells(series.values);
  const isSeen = values.some(isFigure);
  const [level, ...more] = values;
  if (level !== undefined && more.length === 0) {
    return { marks: [ruleY(values.filter(isFigure), look)], label: level, isSeen };
  }
  const along = scale.column(series.values);
  return { marks: [lineY(values, { x: [...scale.xs], y: along, ...look })], label: lastOf(along), isSeen };
};
