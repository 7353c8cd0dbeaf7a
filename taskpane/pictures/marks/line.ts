import { dot, lineY, type Markish } from "@observablehq/plot";
import { dashes } from "../style";
import { tones } from "../tones";
import { isFigure, lastOf, type Drawn, type Of, type Scale } from "./scale";

/** A figure between two gaps has no line to either side: it is shown as a point. */
const lonely = (values: readonly number[]): number[] =>
  values.map((value, i) => (Number.isNaN(values[i - 1] ?? NaN) && Number.isNaN(values[i + 1] ?? NaN) ? value : NaN));

export const stroke = (values: number[], i: number, { xs }: Scale, strokeWidth: number): readonly Markish[] => {
  const tone = tones[i % tones.length] as string;
  const dash = dashes[i % dashes.length] as string;
  const x = [...xs];
  return [
    lineY(values, { x, y: values, stroke: tone, strokeWidth, strokeDasharray: dash, strokeLinejoin: "round" }),
    dot(values, { x, y: lonely(values), fill: tone, r: 3 }),
  ];
};

export const line = (series: Of<"line" | "bar">, i: number, scale: Scale): Drawn => {
  const values = scale.column(series.values);
  return { marks: stroke(values, i, scale, 2), label: lastOf(values), isSeen: values.some(isFigure) };
};
