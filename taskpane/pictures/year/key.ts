import { widthOf } from "../style";
import type { Pen } from "../svg";
import { degreesOf, isFigure, type DrawnYear, type YearLine } from "./drawnYear";

/** The last line is the colder one, dashed in the cold tone; what is warmer is solid. */
export const lookOfLine = (count: number, i: number, size = 5) =>
  i === count - 1 && count > 1 ? { tone: 0, dash: `${size * 2.6} ${size * 1.2}` } : { tone: 1, dash: "none" };

export const isBand = ({ least, most }: YearLine): boolean =>
  most.some((value, day) => value - (least[day] ?? NaN) > 0.05);

/** What the lines and areas are, in rows of words with samples; answers where it ends. */
export const key = (
  { make, says }: Pen,
  year: DrawnYear,
  tones: readonly string[],
  {
    left,
    width,
    top,
    size,
  }: { readonly left: number; readonly width: number; readonly top: number; readonly size: number },
): { readonly elements: readonly SVGElement[]; readonly bottom: number } => {
  const tone = (i: number): string => tones[i] as string;
  const sample = { height: size * 0.8, width: size * 2 };
  const entries: { readonly words: string; readonly sample: (x: number, y: number) => SVGElement }[] = [];
  const stroke = (x: number, y: number, look: Readonly<Record<string, string | number>>): SVGElement =>
    make("line", { x1: x, x2: x + sample.width, y1: y, y2: y, "stroke-width": 5, ...look });
  year.lines.forEach((line, i) => {
    if (!line.likely.some(isFigure)) return;
    const look = lookOfLine(year.lines.length, i);
    entries.push({
      words: line.name,
      sample: (x, y) => stroke(x, y, { stroke: tone(look.tone), "stroke-dasharray": look.dash }),
    });
  });
  const area = (x: number, y: number, opacity: number, at: number): SVGElement =>
    make("rect", {
      x,
      y: y - sample.height / 2,
      width: sample.width / 2,
      height: sample.height,
      fill: tone(at),
      "fill-opacity": opacity,
    });
  if (year.lines.some(isBand))
    entries.push({
      words: "nine months in ten",
      sample: (x, y) => make("g", {}, [area(x, y, BAND, 1), area(x + sample.width / 2, y, BAND, 0)]),
    });
  if (isFigure(year.cold))
    entries.push({
      words: `cold, below ${year.cold} ${degreesOf(year)}`,
      sample: (x, y) => stroke(x, y, { stroke: "currentColor", "stroke-dasharray": "2 6", "stroke-linecap": "round" }),
    });

  const elements: SVGElement[] = [];
  let [x, y] = [left, top + size];
  for (const { words, sample: drawnAt } of entries) {
    const wide = sample.width + 8 + widthOf(words, size) + 22;
    if (x > left && x + wide > left + width) {
      x = left;
      y += size * 1.35;
    }
    elements.push(drawnAt(x, y - size * 0.35), says(x + sample.width + 8, y, words, { "font-size": size }));
    x += wide;
  }
  return { elements, bottom: y + size * 0.5 };
};

/** How dark a band is, and what lies below the cold. */
export const BAND = 0.26;
export const COLD = 0.34;
