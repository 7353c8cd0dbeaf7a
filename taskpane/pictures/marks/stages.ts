import { word } from "../cells";
import { lanesOf } from "../labels";
import { LETTER, LINE } from "../style";
import type { Pen } from "../svg";
import type { Of, Plot } from "./plot";

/** Rows of one stage that follow one another. */
export interface Run {
  readonly stage: string;
  readonly from: number;
  readonly to: number;
}

export const runsOf = (stages: readonly string[]): readonly Run[] => {
  const runs: { stage: string; from: number; to: number }[] = [];
  for (const [i, stage] of stages.entries()) {
    const last = runs.at(-1);
    if (last?.to === i - 1 && last.stage === stage) last.to = i;
    else if (stage) runs.push({ stage, from: i, to: i });
  }
  return runs;
};

/** A strip of named stages over the plot; where one begins, a thin line leads down through the figures. */
export const stages = (series: Of<"stages">, { rows, cells, numeric, pixel, left, inner, right }: Plot) => {
  const words = cells(series.values);
  // A stage lasts until the next row begins.
  const edges = runsOf(rows.map(({ index }) => word(words[index]))).map(({ stage, from, to }) => {
    const [since, until] = numeric ? [pixel(from), pixel(to + 1)] : [pixel(from - 0.5), pixel(to + 0.5)];
    return { stage, begin: since, end: until, middle: (since + until) / 2, wide: stage.length * LETTER };
  });
  const lanes = lanesOf(edges);
  const tall = (edges.length > 0 ? Math.max(...lanes) + 1 : 0) * LINE + 12;
  return {
    tall: tall + 4,
    draw: ({ make, says }: Pen, top: number, bottom: number, name: string): readonly SVGElement[] => {
      const bar = top + tall - 10;
      return [
        ...edges.flatMap(({ stage, begin, end, middle, wide }, k) => [
          says(
            Math.min(Math.max(middle, left + wide / 2), left + inner - wide / 2 + right / 2),
            bar - 4 - (lanes[k] ?? 0) * LINE,
            stage,
            { "text-anchor": "middle" },
          ),
          make("rect", {
            x: begin,
            y: bar,
            width: Math.max(end - begin, 1),
            height: 8,
            stroke: "currentColor",
            fill: "currentColor",
            "fill-opacity": k % 2 === 0 ? 0.35 : 0.08,
          }),
          make("line", {
            x1: begin,
            x2: begin,
            y1: bar + 8,
            y2: bottom,
            stroke: "currentColor",
            "stroke-opacity": 0.35,
            "stroke-dasharray": "1 3",
          }),
        ]),
        says(left + inner + 10, bar + 8, name),
      ];
    },
  };
};
