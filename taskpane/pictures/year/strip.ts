import { introduced, newId, penOf } from "../svg";
import { tones } from "../tones";
import { firstMonthOf, isFigure, reachOf, type DrawnYear } from "./drawnYear";
import { head, NARROW, WIDE } from "./head";
import { key } from "./key";
import { lanesFor, panel } from "./panel";
import { yearWords } from "./yearWords";

const WIDTH = 1000; // px
const EDGE = 24;
const CAPTION = 18; // px

const framed = (
  document: Document,
  title: string,
  summary: string,
  height: number,
  elements: readonly SVGElement[],
) => {
  const pen = penOf(document);
  const picture = pen.make("svg", { width: WIDTH, height, viewBox: `0 0 ${WIDTH} ${height}`, "data-edge": EDGE });
  picture.append(...elements);
  return introduced(picture, pen, { id: newId(), title, summary, size: CAPTION });
};

const spoken = (years: readonly DrawnYear[]) => ({
  hasRain: years.some(({ rain }) => rain.some(isFigure)),
  hasStages: years.some(({ stages }) => stages.some((stage) => stage !== "")),
});

/** The year from left to right, the winter whole in the middle; stages and rain under the same months. */
export const strip = (year: DrawnYear, document: Document): SVGSVGElement => {
  const pen = penOf(document);
  const place = { left: EDGE, width: WIDTH - 2 * EDGE, sizes: WIDE };
  const top = head(pen, year, place);
  const keys = key(pen, year, tones, { ...place, top: top.bottom, size: WIDE.words });
  const body = panel(pen, year, reachOf([year]), {
    ...place,
    top: keys.bottom + 24,
    first: firstMonthOf(year),
    ...spoken([year]),
  });
  const elements = [...top.elements, ...keys.elements, ...body.elements];
  return framed(document, year.title, yearWords(year), Math.ceil(body.bottom + 8), elements);
};

/** Two years side by side at one scale, each with its own winter in the middle. */
export const pair = (years: readonly [DrawnYear, DrawnYear], document: Document): SVGSVGElement => {
  const pen = penOf(document);
  const width = (WIDTH - 3 * EDGE) / 2;
  const reach = reachOf(years);
  const told = spoken(years);
  const places = years.map((year, i) => ({
    left: EDGE + i * (width + EDGE),
    width,
    sizes: NARROW,
    first: firstMonthOf(year),
    top: 0,
    ...told,
  }));
  const heads = years.map((year, i) => head(pen, year, places[i] as (typeof places)[number]));
  const under = Math.max(...heads.map(({ bottom }) => bottom));
  const keys = years.map((year, i) =>
    key(pen, year, tones, { ...(places[i] as (typeof places)[number]), top: under, size: NARROW.words }),
  );
  const top = Math.max(...keys.map(({ bottom }) => bottom)) + 24;
  const lanes = Math.max(...years.map((year, i) => lanesFor(year, places[i] as (typeof places)[number])));
  const bodies = years.map((year, i) =>
    panel(pen, year, reach, { ...(places[i] as (typeof places)[number]), top, lanes }),
  );
  const elements = [...heads, ...keys, ...bodies].flatMap((one) => one.elements);
  const title = years.map((year) => year.title).join(" and ");
  const summary = years.map((year) => `${year.title}: ${yearWords(year)}`).join(" ");
  return framed(document, title, summary, Math.ceil(Math.max(...bodies.map(({ bottom }) => bottom)) + 8), elements);
};
