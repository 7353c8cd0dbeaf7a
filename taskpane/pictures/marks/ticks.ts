import { isTicked } from "../cells";
import { LINE, signs, TEXT } from "../style";
import type { Pen } from "../svg";
import type { Of, Plot } from "./plot";

/** A line of signs over the plot, one at each row that is ticked; `k` counts such lines. */
export const ticks = (series: Of<"ticks">, k: number, { rows, cells, pixel, left, inner }: Plot) => {
  const sign = signs[k % signs.length] as string;
  return {
    tall: LINE,
    draw: ({ says }: Pen, top: number, _bottom: number, name: string): readonly SVGElement[] => {
      const values = cells(series.values);
      const base = top + LINE - 3;
      return [
        ...rows.flatMap(({ index }, i) =>
          isTicked(values[index])
            ? [says(pixel(i), base, sign, { "text-anchor": "middle", "font-size": TEXT - 3 })]
            : [],
        ),
        says(left + inner + 10, base, `${sign} ${name}`),
      ];
    },
  };
};
