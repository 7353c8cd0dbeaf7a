import type { Series } from "../../sheets/sheet";
import { band } from "./band";
import { bar } from "./bar";
import { line } from "./line";
import type { Drawn, Scale } from "./scale";
import { threshold } from "./threshold";

/** What is drawn of a series in the plot; stages and ticks stand above it. */
export const marksOf = (series: Series, i: number, scale: Scale): readonly Drawn[] => {
  switch (series.draw) {
    case "band":
      return [band(series, i, scale)];
    case "line":
      return [line(series, i, scale)];
    case "bar":
      return bar(series, i, scale);
    case "threshold":
      return [threshold(series, scale)];
    case "stages":
    case "ticks":
      return [];
  }
};
