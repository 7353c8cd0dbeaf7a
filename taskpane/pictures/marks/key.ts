import type { Series } from "../../sheets/sheet";
import { apart } from "../labels";
import { dashes, LINE } from "../style";
import type { Pen } from "../svg";
import { hatchId, toneOf } from "./hatch";

/** A series beside the plot: the height of its figures, its number, and its name in lines. */
export interface Named {
  readonly series: Series;
  readonly i: number;
  readonly y: number;
  readonly lines: readonly string[];
}

/** Every name beside its own figures, with a sample of its dash or hatching. */
export const key = (
  { make, says }: Pen,
  id: string,
  named: readonly Named[],
  { x, top, bottom }: { readonly x: number; readonly top: number; readonly bottom: number },
): readonly SVGElement[] => {
  const places = apart(
    named.map(({ y, lines }) => ({ y, tall: lines.length * LINE + 2 })),
    top,
    bottom,
  );
  return named.flatMap(({ series, i, lines }, k) => {
    const middle = places[k] ?? 0;
    return [
      series.draw === "band" || series.draw === "bar"
        ? make("rect", { x, y: middle - 6, width: 18, height: 12, fill: `url(#${hatchId(id, i)})`, stroke: toneOf(i) })
        : make("line", {
            x1: x,
            x2: x + 18,
            y1: middle,
            y2: middle,
            "stroke-width": 2,
            stroke: series.draw === "threshold" ? "currentColor" : toneOf(i),
            "stroke-dasharray": series.draw === "threshold" ? "4 3" : (dashes[i % dashes.length] as string),
          }),
      ...lines.map((text, n) => says(x + 23, middle + 4 + (n - (lines.length - 1) / 2) * LINE, text)),
    ];
  });
};
