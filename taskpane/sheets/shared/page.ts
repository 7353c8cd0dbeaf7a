import { systems } from "../../../functions/units";
import type { Sheet } from "../sheet";
import { areaOf, block, columnLetters, columnNumber } from "./address";
import { assemble, GUIDE, neededOf, warnedOf, type About as Told } from "./assemble";
import { linesOf } from "./linesOf";
import { addressIn, withAddresses, type Places } from "./names";
import { together, type Part } from "./part";
import type { Gap, Region } from "./region";
import { drawnOf } from "./systems";

/** What is said of a page, and the long tables whose headings stay in view. */
type About = Omit<Told, "guide"> & { readonly inView?: readonly Region[] };

/** Regions and gaps, one below the other. */
type Stack = readonly (Region | Gap)[];
/** What stands below one another on a page: a region in column A, a gap, or stacks side by side by their first columns. */
type Band = Region | Gap | Readonly<Record<string, Stack>>;

interface Placed {
  readonly at: string;
  readonly region: Region["region"];
}

const isRegion = (band: Band): band is Region => "region" in band && !Array.isArray(band.region);
const isGap = (band: Band): band is Gap => "gap" in band && typeof band.gap === "number";

const regionsIn = (band: Band): readonly Region[] =>
  isRegion(band) ? [band] : isGap(band) ? [] : Object.values(band).flat().filter(isRegion);

/** The first row of the parts where the sentence, the example and the legend take a row each; one stays free. */
const BODY = 6;

/** The regions of a stack with their places, and the first row below it. */
const stacked = (
  column: string,
  top: number,
  stack: Stack,
): { readonly placed: readonly Placed[]; readonly next: number } => {
  const placed: Placed[] = [];
  let next = top;
  for (const one of stack) {
    if (isGap(one)) next += one.gap;
    else {
      placed.push({ at: `${column}${next}`, region: one.region });
      next += one.region.rows;
    }
  }
  return { placed, next };
};

/** Data with its names replaced by addresses, whatever the texts are for: only names are written between such brackets. */
const withRanges = <T>(data: T, range: (text: string) => string): T =>
  typeof data === "string"
    ? (range(data) as T)
    : Array.isArray(data)
      ? (data.map((one: unknown) => withRanges(one, range)) as T)
      : typeof data === "object" && data !== null
        ? (Object.fromEntries(Object.entries(data).map(([key, value]) => [key, withRanges(value, range)])) as T)
        : data;

/** Small letters: that much more stands in a column. */
const SMALL = 0.9;

/** The headings of tables in the row under the title, over their own columns; as tall as the longest of them needs. */
const guideOf = (inView: readonly Region[], placed: readonly Placed[], { widths }: Told): Part => {
  const headings = inView.flatMap(({ region }) => {
    const left = areaOf(placed.find((one) => one.region === region)?.at ?? "A1").left;
    return (region.headings ?? []).map((one) => ({ words: one.words, column: left + one.left }));
  });
  const lines = Math.max(1, ...headings.map(({ words, column }) => linesOf(words, (widths[column - 1] ?? 8) / SMALL)));
  return together(
    ...headings
      .filter(({ words }) => words !== "")
      .map(({ words, column }, i) => {
        const at = `${columnLetters(column)}${GUIDE}`;
        return {
          blocks: [{ at, role: "guide" as const, rows: [[words]] }],
          notes: i === 0 ? [{ at, text: "Headings of the long table below: they stay in view." }] : [],
        };
      }),
    lines > 1 ? { lines: [{ row: GUIDE, lines }] } : {},
  );
};

/** Every text of a part with its names replaced: formulas keep their dollar signs, ranges have none. */
const resolved = (part: Required<Part>, places: Places): Required<Part> => {
  const range = (text: string): string => withAddresses(text, places, true);
  const formula = (text: string): string => withAddresses(text, places);
  return {
    ...part,
    blocks: part.blocks.map((one) => ({
      ...one,
      rows: one.rows.map((row) => row.map((content) => (typeof content === "string" ? formula(content) : content))),
    })),
    needed: part.needed.map((one) => (one.unless ? { ...one, unless: formula(one.unless) } : one)),
    links: part.links.map(({ by, ...link }) => (by ? { ...link, by: addressIn(places, by) } : link)),
    validation: part.validation.map((one) => (one.kind === "cells" ? { ...one, cells: formula(one.cells) } : one)),
    rules: part.rules.map((rule) => ({ ...rule, when: formula(rule.when) })),
    charts: withRanges(part.charts, range),
  };
};

/**
 * A sheet from regions: bands one below the other under the sheet's sentence and legend, each a region in column A, a
 * gap, or stacks side by side. A stack in the columns of the cautions begins below these.
 */
export const page = ({ inView = [], ...told }: About, ...bands: readonly Band[]): Sheet => {
  const about: Told = { ...told, guide: inView.length > 0 };
  const [first, last] = about.cautionColumns.map(columnNumber) as [number, number];
  const cautionsEnd = warnedOf(about).next;
  // Wherever they will stand: how tall the words under the title are follows from what there is.
  const { links, needed } = together(...bands.flatMap(regionsIn).map(({ region }) => region.build("A1")));
  let next = Math.max(BODY, neededOf(about, needed, links.length > 0).next);
  const placed: Placed[] = [];
  for (const band of bands) {
    const stacks: Readonly<Record<string, Stack>> = isRegion(band) || isGap(band) ? { A: [band] } : band;
    const from = next;
    for (const [column, stack] of Object.entries(stacks)) {
      const number = columnNumber(column);
      const top = number >= first && number <= last ? Math.max(from, cautionsEnd) : from;
      const laid = stacked(column, top, stack);
      placed.push(...laid.placed);
      next = Math.max(next, laid.next);
    }
  }
  const all = placed.map(({ at, region }) => Object.entries(region.places(at))).flat();
  const places: Places = Object.fromEntries(all);
  if (Object.keys(places).length < all.length) throw new Error(`${about.name} has two cells of one name`);
  const body = together(...placed.map(({ at, region }) => region.build(at)), guideOf(inView, placed, about));
  const sheet = assemble(about, resolved(body, places));
  const years = sheet.years && withRanges(sheet.years, (text) => withAddresses(text, places, true));
  return drawnOf({ ...sheet, places, ...(years ? { years } : {}) }, about.metricOnly ? ["metric"] : systems);
};

/** The address of a name on a sheet: "animal.start" is a cell, "log.mass" a column, "log.mass[3]" its third cell. */
export const cellOf = ({ places }: Pick<Sheet, "places">, name: string): string => addressIn(places, name);

/** Cells of a column from one row to another. */
export const rowsOf = (sheet: Pick<Sheet, "places">, column: string, from: number, to: number): string => {
  const { top, bottom } = areaOf(cellOf(sheet, column));
  if (from < 1 || top + to - 1 > bottom) throw new Error(`${column} has no rows ${from} to ${to}`);
  return block(cellOf(sheet, `${column}[${from}]`), to - from + 1);
};
