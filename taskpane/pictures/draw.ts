import { axisX, axisY, gridY, plot, ruleY, type Markish } from "@observablehq/plot";
import type { Chart, Series } from "../sheets/sheet";
import { DAY, marked, shifted } from "./axis";
import { figure, word } from "./cells";
import { wrapped } from "./labels";
import { hatch, hatchId } from "./marks/hatch";
import { key } from "./marks/key";
import { marksOf } from "./marks/marksOf";
import { rowsOf } from "./rows";
import type { Plot } from "./marks/plot";
import type { Scale } from "./marks/scale";
import { stages } from "./marks/stages";
import { ticks } from "./marks/ticks";
import { LETTER, LINE, TEXT } from "./style";
import { introduced, newId, penOf } from "./svg";

type Read = (range: string) => readonly (readonly unknown[])[];

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
  const id = newId();
  const pen = penOf(document);
  const { says } = pen;
  const cells = (range: string): readonly unknown[] => read(range).flat();
  const nameOf = ({ name, nameFrom }: Series): string => {
    const said = nameFrom === undefined ? "" : word(cells(nameFrom)[0]);
    return said === "" ? name : said;
  };

  const { rows, numeric, dated } = rowsOf(cells(chart.along));
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

  const placed: Plot = { rows, numeric, cells, pixel, left, inner, right };
  /** Stages first, ticks below them, as they stand over the plot. */
  const over = [
    ...chart.series.flatMap((series) => (series.draw === "stages" ? [{ series, ...stages(series, placed) }] : [])),
    ...chart.series
      .flatMap((series) => (series.draw === "ticks" ? [series] : []))
      .map((series, k) => ({ series, ...ticks(series, k, placed) })),
  ];
  const title = wrapped(chart.title, Math.floor((width - 16) / (LETTER * 1.35))); // bold, and larger
  const head = 24 + title.length * (LINE + 4);
  const strips = over.reduce((sum, { tall }) => sum + tall, 0);
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
    fill: (i) => `url(#${hatchId(id, i)})`,
  };
  const all = chart.series.flatMap((series, i) => marksOf(series, i, scale).map((one) => ({ ...one, series, i })));
  const marks = all.flatMap((one) => one.marks);
  const any = all.some(({ isSeen }) => isSeen);

  // Of words under the axis so many are left out that none touches the next.
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
  introduced(
    picture,
    pen,
    { id, title: chart.title, summary: word(read(chart.summary)[0]?.[0]) },
    ...chart.series.map((_, i) => hatch(pen, id, i)),
  );

  const words = pen.make("g", { "data-part": "words" });
  words.append(
    ...title.map((text, n) => says(8, 16 + n * (LINE + 4), text, { "font-weight": 600, "font-size": TEXT + 2 })),
    says(8, head - 8, chart.axis),
  );
  if (!any)
    words.append(
      says(left + inner / 2, (marginTop + height - marginBottom) / 2, "No figures yet", { "text-anchor": "middle" }),
    );

  let top = head;
  for (const { series, tall, draw } of over) {
    words.append(...draw(pen, top, height - marginBottom, nameOf(series)));
    top += tall;
  }
  const named = all
    .filter(({ isSeen }) => isSeen)
    .map(({ series, i, label }) => ({ series, i, y: yOf(label), lines: wrapped(nameOf(series), letters) }));
  words.append(...key(pen, id, named, { x: left + inner + 8, top: marginTop - 6, bottom: height - 4 }));
  picture.append(words);
  return picture;
};
