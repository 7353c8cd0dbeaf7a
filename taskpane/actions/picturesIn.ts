import type { CautionKey } from "../../functions/cautions";
import { figure } from "../pictures/cells";
import { readYear } from "../pictures/year/readYear";
import { sheets as templates } from "../sheets/catalogue";
import type { Sheet, Year } from "../sheets/sheet";
import type { SheetContents } from "../workbook";
import { caption, captionOf, exampleIn, toldIn, toldOf, wordsOf, yearCaption, type Captioned } from "./caption";
import { recognise, valuesOf } from "./template";

/** A picture that a sheet offers. */
export interface Offered {
  /** What it is called among the pictures of its sheet. */
  readonly name: string;
  readonly draw: (document: Document) => Promise<SVGSVGElement>;
  readonly caption: (today: Date) => string;
  /** What its figures are told by. */
  readonly told?: Captioned["told"];
}

const STRIP = "The year as a strip";
const RING = "The year as a ring";

/** The stages of a sheet's winter plan: they may stand under the year of another sheet. */
export interface Staged {
  readonly sheet: string;
  /** The stage on each day of the year. */
  readonly stages: readonly string[];
  readonly cautions: readonly CautionKey[];
}

/** The winter plans of a workbook, each once. */
export const plansIn = (all: readonly SheetContents[]): readonly Staged[] => {
  const found = all.flatMap((contents): Staged[] => {
    const known = recognise(contents, templates);
    const year = known?.inPlace ? known.template.years?.find(({ plan }) => plan !== undefined) : undefined;
    if (!known || !year) return [];
    const { stages } = readYear(year, (range) => valuesOf(contents.cells, range), known.template.system);
    return stages.length === 0 ? [] : [{ sheet: contents.name, stages, cautions: year.cautions ?? [] }];
  });
  const words = found.map(({ stages }) => stages.join());
  return found.filter((_, i) => words.indexOf(words[i] as string) === i);
};

/** px of a chart that is saved. */
const CHART = { width: 960, height: 540 };

const yearsIn = (template: Sheet, contents: SheetContents, plans: readonly Staged[]): readonly Offered[] => {
  const { cells } = contents;
  const read = (range: string): readonly (readonly unknown[])[] => valuesOf(cells, range);
  const isThere = ({ lines }: Year): boolean =>
    lines.every(({ likely }) => read(likely).some((row) => row.some((cell) => !Number.isNaN(figure(cell)))));
  const [main, ...others] = (template.years ?? []).filter(isThere);
  if (!main) return [];
  const nameOf = (year: Year): string => wordsOf(cells, year.nameFrom) || year.title;
  /** The year's figures; a ring has no room for rain. */
  const figuresOf = (year: Year, form?: "ring", plan?: Staged) => ({
    ...readYear(year, read, template.system),
    ...(form ? { rain: [] } : {}),
    ...(plan ? { stages: plan.stages } : {}),
  });
  const captioned = (years: readonly Year[], form?: "ring", plan?: Staged) => (today: Date) =>
    yearCaption(
      years.map((year) => ({
        name: nameOf(year),
        how: wordsOf(cells, year.subtitle),
        drawn: figuresOf(year, form, plan),
      })),
      {
        said: [exampleIn(contents)],
        told: years.map((year) => toldOfYear(year, form)),
        cautions: [
          ...years.flatMap((year) => year.cautions ?? template.cautions.slice(0, 1)),
          ...(plan?.cautions ?? []),
        ],
        today,
      },
    );
  const toldOfYear = (year: Year, form?: "ring") =>
    toldIn(cells, year, figuresOf(year, form).rain.length > 0 ? year.rainFrom : undefined);
  const drawing = () => import("../pictures/year/strip");
  const drawRing = async (document: Document, plan?: Staged) =>
    (await import("../pictures/year/ring")).ring(figuresOf(main, "ring", plan), document);
  // A climate has no plan of its own.
  const staged = main.plan === undefined ? plans : [];
  return [
    {
      name: STRIP,
      draw: async (document) => (await drawing()).strip(figuresOf(main), document),
      caption: captioned([main]),
      told: [toldOfYear(main)],
    },
    {
      name: RING,
      draw: (document) => drawRing(document),
      caption: captioned([main], "ring"),
    },
    ...staged.flatMap((plan): Offered[] => [
      {
        name: `${STRIP}, with the stages of ${plan.sheet}`,
        draw: async (document) => (await drawing()).strip(figuresOf(main, undefined, plan), document),
        caption: captioned([main], undefined, plan),
      },
      {
        name: `${RING}, with the stages of ${plan.sheet}`,
        draw: (document) => drawRing(document, plan),
        caption: captioned([main], "ring", plan),
      },
    ]),
    ...others.map((other): Offered => ({
      name: `Side by side: ${nameOf(main)} and ${nameOf(other)}`,
      draw: async (document) => (await drawing()).pair([figuresOf(main), figuresOf(other)], document),
      caption: captioned([main, other]),
    })),
  ];
};

/** Whose records and which papers a sheet rests on, as it stands at its foot. */
const sourcesIn = ({ blocks }: Sheet): readonly string[] =>
  blocks.flatMap(({ role, rows }) => (role === "source" ? rows.flat().map(String) : []));

/** The sheet as one page, with its picture, for a post or for print. */
const pageIn = (template: Sheet, contents: SheetContents, pictures: readonly Offered[]): Offered => {
  const { cells } = contents;
  const picture = pictures.find(({ name }) => name === STRIP) ?? pictures[0];
  return {
    name: "The sheet as a page",
    draw: async (document) => {
      const { readPage } = await import("../pictures/page/readPage");
      const { sheetPage } = await import("../pictures/page/sheetPage");
      const told = { title: contents.name, sentence: template.sentence, summary: template.sentence };
      return sheetPage(readPage(template, cells), await picture?.draw(document), told, document);
    },
    caption: (today) =>
      caption({
        title: contents.name,
        said: [exampleIn(contents)],
        told: picture?.told ?? [],
        cautions: template.cautions,
        sources: sourcesIn(template),
        today,
      }),
  };
};

/** The pictures that can be drawn of a sheet; none where its cells have been moved about, and so hold other things. */
export const picturesIn = (contents: SheetContents, plans: readonly Staged[] = []): readonly Offered[] => {
  const known = recognise(contents, templates);
  if (!known?.inPlace) return [];
  const { template } = known;
  const pictures = [
    ...template.charts.map((chart): Offered => ({
      name: chart.title,
      draw: async (document) =>
        (await import("../pictures/draw")).draw(chart, (range) => valuesOf(contents.cells, range), document, CHART),
      caption: (today) => captionOf(chart, template, contents, today),
      told: toldOf(chart, contents),
    })),
    ...yearsIn(template, contents, plans),
  ];
  return [...pictures, pageIn(template, contents, pictures)];
};
