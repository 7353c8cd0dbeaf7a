import { axisX, axisY, gridY, plot, ruleY, type Markish } from "@observablehq/plot";
import { FIRST_DAY } from "../../functions/dates";
import type { Chart, Series } from "../sheets/sheet";
import { DAY, marked, momentOf, shifted } from "./axis";
import { figure, isTicked, word } from "./cells";
import { apart, lanesOf, wrapped } from "./labels";
import { marksOf } from "./marks/marksOf";
import type { Scale } from "./marks/scale";
import { dashes, LETTER, LINE, signs, slopes, TEXT } from "./style";
import { tones } from "./tones";

type Read = (range: string) => readonly (readonly unknown[])[];

/** Ids in a page must differ, and the same chart may be drawn twice. */
let drawn = 0;

/** One row of the chart: its place on the axis, and its cell of every range. */
interface Row {
  readonly x: Date | number;
  readonly label: string;
  readonly index: number;
}

/**
 * A sheet's chart as a picture that stands by itself: it needs no style sheet, takes its text colour from where it is
 * put (`currentColor`), and can be read without colour. `read` answers the rows of a range of the chart's own sheet.
 * A row without an entry on the axis is left out; a cell without a figure is a gap.
 */
export const draw = (
  chart: Chart,
  read: Read,
  document: Document,
  { width = 640, height = 360 }: { readonly width?: number; readonly height?: number } = {},
): SVGSVGElement => {
  const id = `picture-${++drawn}`;
  const cells = (range: string): readonly unknown[] => read(range).flat();
  const nameOf = ({ name, nameFrom }: Series): string => {
    const said = nameFrom === undefined ? "" : word(cells(nameFrom)[0]);
    return said === "" ? name : said;
  };
  const make = <K extends keyof SVGElementTagNameMap>(
    tag: K,
    attributes: Readonly<Record<string, string | number>> = {},
    content: string | readonly SVGElement[] = [],
  ): SVGElementTagNameMap[K] => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    if (typeof content === "string") element.textContent = content;
    else element.append(...content);
    return element;
  };

  // The axis: days where every entry is a day's serial number, plain numbers (weeks), or words, which may come twice.
  const along = cells(chart.along);
  const entries = along
    .map((cell, index) => ({ cell, index }))
    .filter(({ cell }) => cell !== null && cell !== undefined && cell !== "");
  const numeric = entries.length > 0 && entries.every(({ cell }) => Number.isFinite(figure(cell)));
  const dated = numeric && entries.every(({ cell }) => figure(cell) >= FIRST_DAY);
  const rows: readonly Row[] = entries
    .map(({ cell, index }, i) => ({
      x: dated ? momentOf(figure(cell)) : numeric ? figure(cell) : i,
      label: numeric ? "" : String(cell),
      index,
    }))
    .sort((a, b) => Number(a.x) - Number(b.x));
  const xs = rows.map(({ x }) => x);
  const column = (range: string): number[] => {
    const values = cells(range);
    return rows.map(({ index }) => figure(values[index]));
  };
  const step = Math.min(
    ...xs
      .slice(1)
      .map((x, i) => Number(x) - Number(xs[i]))
      .filter((gap) => gap > 0),
  );
  const half = Number.isFinite(step) ? step * 0.4 : dated ? 43_200_000 : 0.4;
  // What stands beside and above the plot decides its margins.
  const right = Math.min(150, width * 0.3);
  const letters = Math.floor((right - 34) / LETTER);
  const left = 44;
  const inner = width - left - right;
  // The first and the last bar need room beside them; the last stage lasts as long as a row.
  const draws = (kind: Series["draw"]): boolean => chart.series.some(({ draw }) => draw === kind);
  const begin = shifted(xs[0] ?? 0, draws("bar") ? -half : 0);
  const end = shifted(xs.at(-1) ?? 1, draws("stages") ? half * 2.5 : draws("bar") ? half : 0);
  const pixelOf = (x: number): number => left + (inner * (x - Number(begin))) / (Number(end) - Number(begin) || 1);
  const pixel = (i: number): number =>
    numeric ? pixelOf(Number(xs[i] ?? end)) : left + (inner * (i + 0.5)) / Math.max(rows.length, 1);

  const stages = chart.series
    .filter((series) => series.draw === "stages")
    .map((series) => {
      const words = cells(series.values);
      const runs: { stage: string; from: number; to: number }[] = [];
      for (const [i, { index }] of rows.entries()) {
        const stage = word(words[index]);
        const last = runs.at(-1);
        if (last?.to === i - 1 && last.stage === stage) last.to = i;
        else if (stage) runs.push({ stage, from: i, to: i });
      }
      // A stage lasts until the next row begins.
      const edges = runs.map(({ stage, from, to }) => {
        const [since, until] = numeric ? [pixel(from), pixel(to + 1)] : [pixel(from - 0.5), pixel(to + 0.5)];
        return { stage, begin: since, end: until, middle: (since + until) / 2, wide: stage.length * LETTER };
      });
      const lanes = lanesOf(edges);
      return { series, edges, lanes, tall: (edges.length > 0 ? Math.max(...lanes) + 1 : 0) * LINE + 12 };
    });
  const ticked = chart.series.filter((series) => series.draw === "ticks");
  const title = wrapped(chart.title, Math.floor((width - 16) / (LETTER * 1.35))); // bold, and larger
  const head = 24 + title.length * (LINE + 4);
  const strips = stages.reduce((sum, { tall }) => sum + tall + 4, 0) + ticked.length * LINE;
  const marginTop = head + strips + 6;
  const marginBottom = dated ? 40 : 28;

  const bars = chart.series.filter(
    (series) => series.draw === "bar" && !column(series.values).every((value) => Number.isNaN(value)),
  );
  const scale: Scale = {
    xs,
    numeric,
    half,
    column,
    cells: (range) => cells(range).map(figure),
    barRoom: ((inner / rows.length) * 0.85) / bars.length,
    bars,
    fill: (i) => `url(#${id}-hatch-${i})`,
  };
  const all = chart.series.flatMap((series, i) => marksOf(series, i, scale).map((one) => ({ ...one, series, i })));
  const marks = all.flatMap((one) => one.marks);
  const any = all.some(({ isSeen }) => isSeen);

  // Where a stage begins, a thin line leads from the strip down through the figures.
  const every = numeric
    ? 1
    : Math.max(
        1,
        Math.ceil((Math.max(0, ...rows.map(({ label }) => label.length)) * LETTER + 6) / (inner / rows.length)),
      );
  const most = Math.max(2, Math.floor(inner / (dated ? 40 : 60)));
  const frame: Markish[] = any
    ? [
        gridY({ stroke: "currentColor", strokeOpacity: 0.15 }),
        axisY({ label: null, tickSize: 0, fontSize: TEXT, fill: "currentColor" }),
        axisX({
          label: null,
          fontSize: TEXT,
          fill: "currentColor",
          stroke: "currentColor",
          ...(numeric
            ? {
                ticks:
                  begin instanceof Date && end instanceof Date && +end - +begin >= 2 * DAY
                    ? marked(begin, end, most)
                    : most,
              }
            : { ticks: xs.filter((_, i) => i % every === 0), tickFormat: (i: number) => rows[i]?.label ?? "" }),
        }),
      ]
    : [];

  const picture = plot({
    document,
    width,
    height,
    marginTop,
    marginBottom,
    marginLeft: left,
    marginRight: right,
    x: numeric ? { type: dated ? "utc" : "linear", domain: [begin, end] } : { type: "band", domain: xs, padding: 0.15 },
    y: { nice: true, ...(any ? {} : { domain: [0, 1], axis: null }) },
    marks: [...frame, ...(any ? marks : []), ...(any && draws("bar") ? [ruleY([0], { stroke: "currentColor" })] : [])],
  }) as unknown as SVGSVGElement & { scale(name: "y"): { apply(value: number): number } | undefined };
  const yOf = (value: number): number =>
    Number.isNaN(value) ? marginTop : (picture.scale("y")?.apply(value) ?? marginTop);

  // Plot brings a style sheet, which a page with a strict policy would refuse and a saved file would not need.
  for (const style of picture.querySelectorAll("style")) style.remove();
  picture.removeAttribute("class");
  const look = {
    "font-family": "system-ui, 'Segoe UI', sans-serif",
    "font-size": TEXT,
    fill: "currentColor",
    role: "img",
    "aria-labelledby": `${id}-title`,
    "aria-describedby": `${id}-summary`,
  };
  for (const [key, value] of Object.entries(look)) picture.setAttribute(key, String(value));
  picture.style.setProperty("max-width", "100%");
  picture.style.setProperty("height", "auto");

  const hatches = chart.series.map((_, i) => {
    const tone = tones[i % tones.length] as string;
    return make(
      "pattern",
      {
        id: `${id}-hatch-${i}`,
        width: 6,
        height: 6,
        patternUnits: "userSpaceOnUse",
        patternTransform: `rotate(${slopes[i % slopes.length]})`,
      },
      [
        make("rect", { width: 6, height: 6, fill: tone, "fill-opacity": 0.16 }),
        make("line", { x1: 0, y1: 0, x2: 0, y2: 6, stroke: tone, "stroke-width": 1.5 }),
      ],
    );
  });
  const summary = word(read(chart.summary)[0]?.[0]);
  picture.prepend(
    make("title", { id: `${id}-title` }, chart.title),
    make("desc", { id: `${id}-summary` }, summary || chart.title),
    make("defs", {}, hatches),
  );

  const says = (x: number, y: number, text: string, more: Readonly<Record<string, string | number>> = {}) =>
    make("text", { x, y, "text-anchor": "start", ...more }, text);
  const over = make("g", { "data-part": "words" });
  over.append(
    ...title.map((text, n) => says(8, 16 + n * (LINE + 4), text, { "font-weight": 600, "font-size": TEXT + 2 })),
    says(8, head - 8, chart.axis),
  );
  if (!any)
    over.append(
      says(left + inner / 2, (marginTop + height - marginBottom) / 2, "No figures yet", { "text-anchor": "middle" }),
    );

  let top = head;
  for (const { series, edges, lanes, tall } of stages) {
    const bar = top + tall - 10;
    for (const [k, { stage, begin, end, middle, wide }] of edges.entries()) {
      const at = Math.min(Math.max(middle, left + wide / 2), left + inner - wide / 2 + right / 2);
      over.append(
        says(at, bar - 4 - (lanes[k] ?? 0) * LINE, stage, { "text-anchor": "middle" }),
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
          y2: height - marginBottom,
          stroke: "currentColor",
          "stroke-opacity": 0.35,
          "stroke-dasharray": "1 3",
        }),
      );
    }
    over.append(says(left + inner + 10, bar + 8, nameOf(series)));
    top += tall + 4;
  }
  for (const [k, series] of ticked.entries()) {
    const values = cells(series.values);
    const base = top + LINE - 3;
    for (const [i, { index }] of rows.entries()) {
      if (isTicked(values[index]))
        over.append(
          says(pixel(i), base, signs[k % signs.length] as string, { "text-anchor": "middle", "font-size": TEXT - 3 }),
        );
    }
    over.append(says(left + inner + 10, base, `${signs[k % signs.length]} ${nameOf(series)}`));
    top += LINE;
  }

  // Every name stands beside its own figures, with a sample of its dash or hatching.
  const named = any ? all.map((one) => ({ ...one, lines: wrapped(nameOf(one.series), letters) })) : [];
  const places = apart(
    named.map(({ label, lines }) => ({ y: yOf(label), tall: lines.length * LINE + 2 })),
    marginTop - 6,
    height - 4,
  );
  for (const [k, { series, i, lines }] of named.entries()) {
    const middle = places[k] ?? 0;
    const x = left + inner + 8;
    const tone = tones[i % tones.length] as string;
    over.append(
      series.draw === "band" || series.draw === "bar"
        ? make("rect", { x, y: middle - 6, width: 18, height: 12, fill: `url(#${id}-hatch-${i})`, stroke: tone })
        : make("line", {
            x1: x,
            x2: x + 18,
            y1: middle,
            y2: middle,
            "stroke-width": 2,
            stroke: series.draw === "threshold" ? "currentColor" : tone,
            "stroke-dasharray": series.draw === "threshold" ? "4 3" : (dashes[i % dashes.length] as string),
          }),
      ...lines.map((text, n) => says(x + 23, middle + 4 + (n - (lines.length - 1) / 2) * LINE, text)),
    );
  }
  picture.append(over);
  return picture;
};
