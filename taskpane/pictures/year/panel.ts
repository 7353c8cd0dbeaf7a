import { lanesOf } from "../labels";
import { widthOf } from "../style";
import type { Pen } from "../svg";
import { tones } from "../tones";
import {
  DAYS,
  degreesOf,
  gridOf,
  isFigure,
  MONTHS,
  rainFigure,
  rainUnitOf,
  STARTS,
  stageRuns,
  type Daily,
  type DrawnYear,
  type Reach,
} from "./drawnYear";
import { SOFT, type Sizes } from "./head";
import { BAND, COLD, isBand, lookOfLine } from "./key";
import { stageLook } from "./stageLook";

const AIR = 340; // px, the height of the temperatures
const WET = 84; // px, that of the rain
const STAGE = 40; // px, that of the stages

interface Place {
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly sizes: Sizes;
  /** The month that stands first. */
  readonly first: number;
  /** Rows of names under the stages, where pictures that stand side by side need as many. */
  readonly lanes?: number;
  readonly hasRain: boolean;
  readonly hasStages: boolean;
}

/** Runs of days that have figures, from one day on to the same a year later. */
const runs = (daily: readonly Daily[], first: number): readonly (readonly number[])[] => {
  const found: number[][] = [];
  for (let i = 0; i <= DAYS; i++) {
    const isThere = daily.every((values) => isFigure(values[(first + i) % DAYS] ?? NaN));
    const last = found.at(-1);
    if (isThere && last?.at(-1) === i - 1) last.push(i);
    else if (isThere) found.push([i]);
  }
  return found;
};

/** Where the names of the stages stand that do not fit into their own: rows of them below. */
const stageNames = (year: DrawnYear, { left, width, sizes, first }: Omit<Place, "lanes">) => {
  const start = STARTS[first] as number;
  const x = (day: number): number => left + (width * (day - start)) / DAYS;
  const placed = stageRuns(year.stages, start).map(({ stage, from, to }) => {
    const wide = widthOf(stage, sizes.words * 0.9, true) + 10;
    const fits = wide <= x(to) - x(from);
    const middle = (x(from) + x(to)) / 2;
    return {
      stage,
      from: x(from),
      to: x(to),
      wide,
      fits,
      middle: fits ? middle : Math.min(Math.max(middle, left + wide / 2), left + width - wide / 2),
    };
  });
  // What stands at both ends of the picture is named once, where it has the most room.
  const named = placed.filter(
    (one) =>
      one.fits || !placed.some((other) => other.stage === one.stage && other.to - other.from > one.to - one.from),
  );
  const outside = named.filter(({ fits }) => !fits);
  return { placed, named, outside, lanes: lanesOf(outside) };
};
export const lanesFor = (year: DrawnYear, place: Omit<Place, "lanes">): number => {
  const { outside, lanes } = stageNames(year, place);
  return outside.length === 0 ? 0 : Math.max(...lanes) + 1;
};

/** The year from left to right: temperatures, the months, the stages and the rain under the same months. */
export const panel = (
  { make, says }: Pen,
  year: DrawnYear,
  reach: Reach,
  place: Place,
): { readonly elements: readonly SVGElement[]; readonly bottom: number } => {
  const { sizes, first, top } = place;
  const axis = widthOf("−20 °C", sizes.words) + 8;
  const left = place.left + axis;
  const width = place.width - axis;
  const inner = { ...place, left, width };
  const start = STARTS[first] as number;
  const tone = (i: number): string => tones[i] as string;
  const text = { "font-size": sizes.words };
  const x = (i: number): number => left + (width * i) / DAYS;
  const y = (celsius: number): number => top + (AIR * (reach.warmest - celsius)) / (reach.warmest - reach.coldest);
  const at = (i: number, values: Daily): string =>
    `${x(i).toFixed(1)},${y(values[(start + i) % DAYS] as number).toFixed(1)}`;
  const elements: SVGElement[] = [];
  const grid = gridOf(reach);
  for (const celsius of grid) {
    const label = `${celsius < 0 ? `−${-celsius}` : celsius}${celsius === grid.at(-1) ? ` ${degreesOf(year)}` : ""}`;
    elements.push(
      make("line", {
        x1: left,
        x2: left + width,
        y1: y(celsius),
        y2: y(celsius),
        stroke: "currentColor",
        "stroke-opacity": celsius === 0 ? 0.5 : 0.18,
        "stroke-width": 2,
      }),
      says(left - 8, y(celsius) + sizes.words * 0.35, label, { ...text, ...SOFT, "text-anchor": "end" }),
    );
  }

  // What lies between the cold and the colder line.
  const lows = year.lines.at(-1)?.likely ?? [];
  if (isFigure(year.cold)) {
    const under = lows.map((low) => (low < year.cold ? low : NaN));
    for (const days of runs([under], start)) {
      if (days.length < 2) continue;
      const [from, to] = [days[0] as number, days.at(-1) as number];
      elements.push(
        make("path", {
          d: `M${x(from).toFixed(1)},${y(year.cold).toFixed(1)}L${days.map((i) => at(i, under)).join("L")}L${x(to).toFixed(1)},${y(year.cold).toFixed(1)}Z`,
          fill: tone(0),
          "fill-opacity": COLD,
          "data-part": "cold",
        }),
      );
    }
  }
  year.lines.forEach((line, i) => {
    const look = lookOfLine(year.lines.length, i, sizes.words / 5);
    if (isBand(line))
      for (const days of runs([line.least, line.most], start))
        elements.push(
          make("path", {
            d: `M${days.map((day) => at(day, line.most)).join("L")}L${[...days]
              .reverse()
              .map((day) => at(day, line.least))
              .join("L")}Z`,
            fill: tone(look.tone),
            "fill-opacity": BAND,
            "data-part": "band",
          }),
        );
    for (const days of runs([line.likely], start))
      elements.push(
        make("path", {
          d: `M${days.map((day) => at(day, line.likely)).join("L")}`,
          fill: "none",
          stroke: tone(look.tone),
          "stroke-width": 5,
          "stroke-linejoin": "round",
          "stroke-dasharray": look.dash,
          "data-part": "line",
        }),
      );
  });
  if (isFigure(year.cold))
    elements.push(
      make("line", {
        x1: left,
        x2: left + width,
        y1: y(year.cold),
        y2: y(year.cold),
        stroke: "currentColor",
        "stroke-width": 3.5,
        "stroke-dasharray": "3 8",
        "stroke-linecap": "round",
      }),
    );

  // The months, and everything that stands under them.
  let bottom = top + AIR + sizes.words * 1.5;
  const months = MONTHS.map((_, i) => (first + i) % 12);
  const begin = (month: number): number => ((STARTS[month] as number) - start + DAYS) % DAYS;
  const long = (month: number): number => (STARTS[month + 1] as number) - (STARTS[month] as number);
  const column = (width * 30) / DAYS;
  for (const month of months) {
    const name = MONTHS[month] as string;
    const shown = widthOf(name, sizes.words) < column - 4 ? name : (name[0] as string);
    elements.push(
      says(x(begin(month) + long(month) / 2), bottom, shown, { ...text, ...SOFT, "text-anchor": "middle" }),
    );
  }
  bottom += sizes.words * 0.5;

  if (place.hasStages) {
    const { placed, named, outside, lanes } = stageNames(year, inner);
    const size = sizes.words * 0.9;
    for (const { stage, from, to } of placed)
      elements.push(
        make("rect", {
          x: from + 1,
          y: bottom,
          width: Math.max(to - from - 2, 1),
          height: STAGE,
          rx: 4,
          ...stageLook(stage, placed),
        }),
      );
    for (const { stage, middle, fits } of named)
      if (fits)
        elements.push(
          says(middle, bottom + STAGE / 2 + size * 0.35, stage, {
            "font-size": size,
            "font-weight": 600,
            "text-anchor": "middle",
          }),
        );
    outside.forEach(({ stage, from, to, middle }, k) => {
      const line = bottom + STAGE + size * 1.15 * ((lanes[k] ?? 0) + 1);
      elements.push(
        make("line", {
          x1: (from + to) / 2,
          x2: (from + to) / 2,
          y1: bottom + STAGE,
          y2: line - size * 0.8,
          stroke: "currentColor",
          "stroke-opacity": 0.5,
        }),
        says(middle, line, stage, { "font-size": size, "text-anchor": "middle" }),
      );
    });
    bottom += STAGE + (place.lanes ?? lanesFor(year, inner)) * size * 1.15 + 14;
  }

  if (place.hasRain && reach.wettest > 0) {
    const figureSize = Math.min(20, (column - 6) / 2.2);
    const most = Math.max(...year.rain.filter(isFigure));
    const wettest = MONTHS[year.rain.indexOf(most)];
    const told = !year.rain.some(isFigure)
      ? "rain is not reported"
      : figureSize < 12
        ? `rain, most ${rainFigure(most, year)} ${rainUnitOf(year)} in ${wettest}`
        : `rain and melted snow, ${rainUnitOf(year)} a month`;
    elements.push(
      says(left, bottom + sizes.words, told, {
        ...text,
        ...SOFT,
      }),
    );
    const base = bottom + sizes.words * 1.5 + figureSize + WET;
    for (const month of months) {
      const mm = year.rain[month] ?? NaN;
      if (!isFigure(mm)) continue;
      const tall = (WET * mm) / reach.wettest;
      const from = x(begin(month));
      elements.push(
        make("rect", {
          x: from + column * 0.12,
          y: base - tall,
          width: column * 0.8,
          height: tall,
          fill: tone(0),
          "fill-opacity": 0.75,
          "data-part": "rain",
        }),
        ...(figureSize < 12
          ? []
          : [
              says(x(begin(month) + long(month) / 2), base - tall - 5, rainFigure(mm, year), {
                "font-size": figureSize,
                "text-anchor": "middle",
              }),
            ]),
      );
    }
    if (year.rain.some(isFigure))
      elements.push(make("line", { x1: left, x2: left + width, y1: base, y2: base, stroke: "currentColor" }));
    bottom = base + 12;
  }
  return { elements, bottom };
};
