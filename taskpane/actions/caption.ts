import { cautions, type CautionKey } from "../../functions/cautions";
import { isoOf, serialOf } from "../../functions/dates";
import { figure } from "../pictures/cells";
import type { DrawnYear } from "../pictures/year/drawnYear";
import { yearWords } from "../pictures/year/yearWords";
import { EXAMPLE } from "../sheets/shared/assemble";
import type { Chart, Series, Sheet, Told } from "../sheets/sheet";
import type { CellState, SheetContents } from "../workbook";
import { valuesOf } from "./template";

type Cells = readonly (readonly CellState[])[];

/** The words of a cell; an error has none. */
export const wordsOf = (cells: Cells, cell: string | undefined): string => {
  const [[value] = []] = cell === undefined ? [] : valuesOf(cells, cell);
  return typeof value === "string" && !value.startsWith("#") ? value.trim() : "";
};

/** The first sentence of the line that says what the example is made of, while it stands on the sheet. */
export const exampleIn = ({ cells }: Pick<SheetContents, "cells">): string => {
  const lines = cells.slice(0, 8).map(([first]) => (typeof first?.value === "string" ? first.value : ""));
  return (lines.find((line) => line.startsWith(EXAMPLE)) ?? "").split(/(?<=\.) /)[0] ?? "";
};

const rangesOf = (series: Series): readonly string[] =>
  series.draw === "band" ? [series.low, series.high] : [series.values];
const isDrawn = (series: Series, cells: Cells): boolean =>
  rangesOf(series).some((range) =>
    valuesOf(cells, range)
      .flat()
      .some((cell) => !Number.isNaN(figure(cell))),
  );

/** What a caption is made of, besides what the figures say themselves. */
export interface Captioned {
  readonly title: string;
  readonly said: readonly string[];
  /** What is told of the figures that are drawn, in words. */
  readonly told: readonly {
    readonly from: readonly string[];
    readonly credit: string;
    readonly caution?: CautionKey;
  }[];
  readonly cautions: readonly CautionKey[];
  /** Said after the cautions. */
  readonly sources?: readonly string[];
  readonly today: Date;
}

/**
 * What travels with a picture: what is drawn, from which stations, how corrected and whose records they are, what to be
 * careful of, and when. Nothing is said twice.
 */
export const caption = ({ title, said, told, cautions: keys, sources = [], today }: Captioned): string => {
  const parts: string[] = [];
  const say = (words: string): void => {
    const part = words.trim();
    if (part !== "" && !parts.some((before) => before.includes(part.replace(/\.$/, "")))) parts.push(part);
  };
  for (const words of [title, ...said]) say(words);
  for (const { from } of told) from.forEach(say);
  for (const { credit } of told) credit.split("; ").forEach(say);
  for (const key of [...told.flatMap(({ caution }) => caution ?? []), ...keys]) say(cautions[key]);
  sources.forEach(say);
  say(`Drawn ${isoOf(serialOf(today))}.`);
  return parts.map((part) => (/[.!?]\)?$/.test(part) ? part : `${part}.`)).join(" ");
};

/** What a sheet tells of figures, in words. */
export const toldIn = (
  cells: Cells,
  { from, credit, caution: key }: Told,
  ...more: readonly (string | undefined)[]
) => ({
  from: [from, ...more].map((cell) => wordsOf(cells, cell)),
  credit: wordsOf(cells, credit),
  ...(key === undefined ? {} : { caution: key }),
});

/** A year in a caption: what it is called, how it was come by, and its figures. */
export interface CaptionedYear {
  readonly name: string;
  readonly how: string;
  readonly drawn: DrawnYear;
}

/** The caption of a year, or of two side by side. */
export const yearCaption = (
  years: readonly CaptionedYear[],
  { said = [], ...rest }: Omit<Captioned, "title" | "said"> & { readonly said?: readonly string[] },
): string =>
  caption({
    title: years.map(({ name }) => name).join(" and "),
    said: [
      ...said,
      ...years.flatMap(({ name, how, drawn }) => [
        `${years.length > 1 ? `${name}, ` : ""}${how}`.replace(/, $/, ""),
        yearWords(drawn),
      ]),
    ],
    ...rest,
  });

/** What is told of a chart: of its series only what is drawn. */
export const toldOf = (chart: Pick<Chart, "series">, { cells }: Pick<SheetContents, "cells">): Captioned["told"] =>
  chart.series.filter((series) => isDrawn(series, cells)).map((series) => toldIn(cells, series));

/** The caption of a chart. */
export const captionOf = (
  chart: Pick<Chart, "title" | "summary" | "series" | "cautions">,
  template: Pick<Sheet, "cautions">,
  contents: Pick<SheetContents, "cells">,
  today: Date,
): string =>
  caption({
    title: chart.title,
    said: [exampleIn(contents), wordsOf(contents.cells, chart.summary)],
    told: toldOf(chart, contents),
    cautions: chart.cautions ?? template.cautions.slice(0, 1),
    today,
  });
