import { slopes } from "../style";
import type { Pen } from "../svg";
import { tones } from "../tones";

export const toneOf = (i: number): string => tones[i % tones.length] as string;
export const hatchId = (id: string, i: number): string => `${id}-hatch-${i}`;

/** The hatching of the i-th series: areas are told apart without colour. */
export const hatch = ({ make }: Pen, id: string, i: number, wide = 6): SVGPatternElement =>
  make(
    "pattern",
    {
      id: hatchId(id, i),
      width: wide,
      height: wide,
      patternUnits: "userSpaceOnUse",
      patternTransform: `rotate(${slopes[i % slopes.length]})`,
    },
    [
      make("rect", { width: wide, height: wide, fill: toneOf(i), "fill-opacity": 0.16 }),
      make("line", { x1: 0, y1: 0, x2: 0, y2: wide, stroke: toneOf(i), "stroke-width": 1.5 }),
    ],
  );
