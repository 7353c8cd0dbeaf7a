import { lettersIn, widthOf } from "../style";
import { wrapped } from "../labels";
import { introduced, newId, penOf } from "../svg";
import { tones } from "../tones";
import {
  coldDays,
  degreesOf,
  DAYS,
  gridOf,
  isFigure,
  MONTHS,
  reachOf,
  STARTS,
  stageRuns,
  type Daily,
  type DrawnYear,
} from "./drawnYear";
import { head, SOFT, WIDE } from "./head";
import { BAND, COLD, isBand, key, lookOfLine } from "./key";
import { stageLook } from "./stageLook";
import { countedWords, yearWords } from "./yearWords";

const WIDTH = 1000; // px
const EDGE = 24;
const CAPTION = 18; // px
/** px from the middle: the coldest and the warmest figure, the names of the months, the stages. */
const INNER = 150;
const OUTER = 350;
const NAMES = 376;
const STAGES = [404, 448] as const;
const OUTSIDE = 466;

/**
 * The year as a ring: a cover for a post. January begins at the top; the stages lie round the months. It is looked at
 * more than it is read: figures can be read along one spoke alone.
 */
export const ring = (year: DrawnYear, document: Document): SVGSVGElement => {
  const pen = penOf(document);
  const { make, says } = pen;
  const place = { left: EDGE, width: WIDTH - 2 * EDGE, sizes: WIDE };
  const { counted: _, ...plain } = year;
  const top = head(pen, plain, place);
  const keys = key(pen, year, tones, { ...place, top: top.bottom, size: WIDE.words });
  const hasStages = year.stages.some((stage) => stage !== "");
  const around = hasStages ? OUTSIDE + 24 : NAMES + 24;
  const [cx, cy] = [WIDTH / 2, keys.bottom + 16 + around];
  const reach = reachOf([year]);
  const tone = (i: number): string => tones[i % tones.length] as string;
  const elements: SVGElement[] = [...top.elements, ...keys.elements];

  const radius = (celsius: number): number =>
    INNER + ((OUTER - INNER) * (celsius - reach.coldest)) / (reach.warmest - reach.coldest);
  const angle = (day: number): number => (2 * Math.PI * day) / DAYS;
  const at = (day: number, r: number): string =>
    `${(cx + r * Math.sin(angle(day))).toFixed(1)},${(cy - r * Math.cos(angle(day))).toFixed(1)}`;
  const days = Array.from({ length: DAYS + 1 }, (_, day) => day);
  const valueOn = (values: Daily, day: number): number => values[day % DAYS] ?? NaN;
  const circle = (r: number, look: Readonly<Record<string, string | number>>): SVGElement =>
    make("circle", { cx, cy, r: r.toFixed(1), fill: "none", stroke: "currentColor", ...look });
  /** Words that follow the ring, turned so that they are never upside down. */
  const turned = (
    day: number,
    r: number,
    words: string,
    look: Readonly<Record<string, string | number>>,
  ): SVGElement => {
    const [x, y] = at(day, r).split(",").map(Number) as [number, number];
    const degrees = (360 * (day % DAYS)) / DAYS;
    const flipped = degrees > 90 && degrees < 270 ? degrees - 180 : degrees;
    return says(x, y, words, {
      "text-anchor": "middle",
      "dominant-baseline": "central",
      transform: `rotate(${flipped.toFixed(1)} ${x.toFixed(1)} ${y.toFixed(1)})`,
      ...look,
    });
  };

  for (const celsius of gridOf(reach))
    elements.push(circle(radius(celsius), { "stroke-opacity": 0.18, "stroke-width": 2 }));
  for (const [month, name] of MONTHS.entries()) {
    const [from, to] = [STARTS[month] as number, STARTS[month + 1] as number];
    elements.push(
      make("path", { d: `M${at(from, INNER)}L${at(from, OUTER)}`, stroke: "currentColor", "stroke-opacity": 0.18 }),
      turned((from + to) / 2, NAMES, name, { "font-size": 26, ...SOFT }),
    );
  }

  /** Runs of days on which all have figures; the last day of the year meets the first. */
  const runs = (...daily: readonly Daily[]): readonly (readonly number[])[] => {
    const found: number[][] = [];
    for (const day of days) {
      const isThere = daily.every((values) => isFigure(valueOn(values, day)));
      const last = found.at(-1);
      if (isThere && last?.at(-1) === day - 1) last.push(day);
      else if (isThere) found.push([day]);
    }
    return found;
  };
  const along = (run: readonly number[], values: Daily): string =>
    run.map((day) => at(day, radius(valueOn(values, day)))).join("L");
  const between = (
    run: readonly number[],
    outer: Daily,
    inner: Daily,
    look: Readonly<Record<string, string | number>>,
  ) => make("path", { d: `M${along(run, outer)}L${along([...run].reverse(), inner)}Z`, ...look });

  const lows = year.lines.at(-1)?.likely ?? [];
  if (isFigure(year.cold)) {
    const under = lows.map((low) => (low < year.cold ? low : NaN));
    const cold = lows.map(() => year.cold);
    for (const run of runs(under))
      elements.push(between(run, cold, under, { fill: tone(0), "fill-opacity": COLD, "data-part": "cold" }));
  }
  year.lines.forEach((line, i) => {
    const look = lookOfLine(year.lines.length, i);
    if (isBand(line))
      for (const run of runs(line.least, line.most))
        elements.push(
          between(run, line.most, line.least, { fill: tone(look.tone), "fill-opacity": BAND, "data-part": "band" }),
        );
    for (const run of runs(line.likely))
      elements.push(
        make("path", {
          d: `M${along(run, line.likely)}`,
          fill: "none",
          stroke: tone(look.tone),
          "stroke-width": 5,
          "stroke-dasharray": look.dash,
          "data-part": "line",
        }),
      );
  });
  if (isFigure(year.cold))
    elements.push(
      circle(radius(year.cold), { "stroke-width": 3.5, "stroke-dasharray": "3 8", "stroke-linecap": "round" }),
    );
  // The scale, along the spoke of midsummer's month where the lines lie far apart from it: the top.
  const grid = gridOf(reach);
  for (const celsius of grid) {
    const label = `${celsius < 0 ? `−${-celsius}` : celsius}${celsius === grid.at(-1) ? ` ${degreesOf(year)}` : ""}`;
    const y = cy - radius(celsius);
    elements.push(
      make("rect", {
        x: cx - widthOf(label, 22) / 2 - 3,
        y: y - 13,
        width: widthOf(label, 22) + 6,
        height: 26,
        rx: 6,
        "data-part": "paper",
        fill: "none",
      }),
      says(cx, y, label, { "font-size": 22, "text-anchor": "middle", "dominant-baseline": "central" }),
    );
  }

  if (hasStages) {
    const [inside, outside] = STAGES;
    const stages = stageRuns(year.stages, 0);
    // What runs over the new year is one.
    const [first, last] = [stages[0], stages.at(-1)];
    const whole =
      first && last && first !== last && first.stage === last.stage && first.from === 0 && last.to === DAYS
        ? [...stages.slice(1, -1), { ...last, to: first.to + DAYS }]
        : stages;
    for (const { stage, from, to } of whole) {
      const isLarge = (to - from) / DAYS > 0.5 ? 1 : 0;
      const [a, b] = [from + 0.4, to - 0.4];
      elements.push(
        make("path", {
          d: `M${at(a, outside)}A${outside},${outside} 0 ${isLarge} 1 ${at(b, outside)}L${at(b, inside)}A${inside},${inside} 0 ${isLarge} 0 ${at(a, inside)}Z`,
          ...stageLook(stage, whole),
        }),
      );
      const size = 24;
      const arc = (2 * Math.PI * inside * (to - from)) / DAYS;
      const fits = widthOf(stage, size, true) + 12 < arc && widthOf(stage, size, true) < 200;
      elements.push(
        turned((from + to) / 2, fits ? (inside + outside) / 2 : OUTSIDE, stage, {
          "font-size": fits ? size : 22,
          ...(fits ? { "font-weight": 600 } : {}),
        }),
      );
    }
  }

  const count = coldDays(year);
  if (count !== undefined) {
    const told = wrapped(countedWords(year), lettersIn(2 * INNER - 70, 22));
    elements.push(
      says(cx, cy - 20, String(count), { "font-size": 60, "font-weight": 700, "text-anchor": "middle" }),
      ...told.map((text, i) => says(cx, cy + 14 + i * 26, text, { "font-size": 22, "text-anchor": "middle" })),
    );
  }
  const height = Math.ceil(cy + around + 8);
  const picture = make("svg", { width: WIDTH, height, viewBox: `0 0 ${WIDTH} ${height}`, "data-edge": EDGE });
  picture.append(...elements);
  return introduced(picture, pen, { id: newId(), title: year.title, summary: yearWords(year), size: CAPTION });
};
