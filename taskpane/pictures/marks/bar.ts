import { barY, rectY } from "@observablehq/plot";
import { shifted } from "../axis";
import { tones } from "../tones";
import { isFigure, lastOf, type Drawn, type Of, type Scale } from "./scale";

/** Nothing where there is no figure, so that the others have its room. */
export const bar = (series: Of<"line" | "bar">, i: number, scale: Scale): readonly Drawn[] => {
  const { xs, numeric, half, bars } = scale;
  const values = scale.column(series.values);
  if (!values.some(isFigure)) return [];
  // Bars of several places stand beside one another in the room of one.
  const room = numeric ? 0 : scale.barRoom;
  const place = bars.indexOf(series);
  const look = {
    fill: scale.fill(i),
    stroke: tones[i % tones.length] as string,
    strokeWidth: 1,
    insetLeft: place * room,
    insetRight: (bars.length - 1 - place) * room,
  };
  const mark = numeric
    ? rectY(values, {
        x1: xs.map((x) => shifted(x, -half)),
        x2: xs.map((x) => shifted(x, half)),
        y1: 0,
        y2: values,
        ...look,
      })
    : barY(values, { x: [...xs], y1: 0, y2: values, ...look });
  return [{ marks: [mark], label: lastOf(values) / 2, isSeen: true }];
};
