import { cautions } from "../../functions/cautions";
import { coolSpell } from "../../functions/climate/coolSpell";
import { isoOf, serialOfIso } from "../../functions/dates";
import { creditOf, networkKeys } from "../../functions/network/networks";
import { sources } from "../../functions/sources";
import { captionOf } from "../../taskpane/actions/caption";
import { picturesIn, plansIn } from "../../taskpane/actions/picturesIn";
import { recognise, valuesOf } from "../../taskpane/actions/template";
import { figure, word } from "../../taskpane/pictures/cells";
import { readPage } from "../../taskpane/pictures/page/readPage";
import { sheets } from "../../taskpane/sheets/catalogue";
import { cleared } from "../../taskpane/sheets/clear";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { filled } from "../../taskpane/sheets/filled";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import { yearPlan } from "../../taskpane/sheets/yearPlan";
import type { Chart, Series, Sheet } from "../../taskpane/sheets/sheet";
import type { SheetContents } from "../../taskpane/workbook";
import { call } from "../call";
import { networkAsShipped } from "../network";
import { openWorkbook } from "../preview/engine";
import { typedInto } from "../sheets/fill";

jest.setTimeout(60_000);

/** Every caption of every template is read against the figures that its picture draws. */

const own = {
  "stations.name[1]": "own",
  "stations.name[2]": null,
  "ownPlace.name": "Ridge hut (invented)",
  "ownPlace.elevation": 1400,
  "ownPlace.latitude": 40.9,
  "ownPlace.longitude": -4.1,
  "ownPlace.years": "2024 and 2025",
  ...Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`own.high[${i + 1}]`, 8 + 12 * Math.sin(i / 4)])),
  ...Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`own.low[${i + 1}]`, 1 + 9 * Math.sin(i / 4)])),
};
const number = { "stations.name[1]": "08215", "stations.name[2]": null };
const noBand = { "place.bandLow": null, "place.bandHigh": null };
const noPlace = { "place.latitude": null, "place.longitude": null };
type Case = readonly [state: string, sheet: Sheet];
const climates: readonly Case[] = [
  ["a number for a name, no band, no second station", filled(nativeClimate, { ...noBand, ...number })],
  ["planned by a station", typedInto(nativeClimate, "choices.planBy", "first station")],
  ["a record of one's own", filled(nativeClimate, own)],
  // A station of another network than those that the estimate rests on.
  ["stations alone, one from elsewhere", filled(nativeClimate, { ...noPlace, "stations.name[2]": "Hanover, NH" })],
];
const drawnOn = sheets.filter(({ charts }) => charts.length > 0);
const cases: readonly Case[] = [
  ...drawnOn.map((sheet) => ["example", sheet] as const),
  ["example in °F", inSystem(coolingPlan, "imperial")],
  ...drawnOn.map((sheet) => ["cleared", cleared(sheet)] as const),
  ...climates,
];
/** So many in a workbook: one of all would be too slow to work out beside other work. */
const TOGETHER = 3;
const workbooks = cases.flatMap((_, i) => (i % TOGETHER === 0 ? [cases.slice(i, i + TOGETHER)] : []));

interface Read {
  readonly state: string;
  readonly chart: Chart;
  readonly contents: SheetContents;
  readonly caption: string;
}
const all: Read[] = [];
const sheetsRead: { readonly state: string; readonly contents: SheetContents }[] = [];
const TODAY = new Date(2026, 10, 26);
const HOLES = /#[A-Z]|undefined|NaN|\.\.| \.|,,| ,|  |\.;|(?:^|\. )own,/;
beforeAll(async () => {
  for (const cases of workbooks) {
    const { workbook, close } = openWorkbook();
    try {
      const read = await workbook.read(await workbook.insert(cases.map(([, sheet]) => sheet)));
      for (const [i, contents] of read.entries()) {
        sheetsRead.push({ state: `${contents.name}, ${cases[i]?.[0]}`, contents });
        const known = recognise(contents, sheets);
        for (const chart of known?.template.charts ?? []) {
          const caption = captionOf(chart, known?.template as Sheet, contents, TODAY);
          all.push({ state: `${contents.name}, ${cases[i]?.[0]}: ${chart.title}`, chart, contents, caption });
        }
      }
    } finally {
      close();
    }
  }
});

const cells = ({ contents }: Read, range: string): readonly unknown[] => valuesOf(contents.cells, range).flat();
const rangesOf = (series: Series): readonly string[] =>
  series.draw === "band"
    ? [series.low, series.high, ...(series.likely === undefined ? [] : [series.likely])]
    : series.draw === "stages" || series.draw === "ticks"
      ? []
      : [series.values];
const figuresOf = (read: Read, series: Series): readonly number[] =>
  rangesOf(series)
    .flatMap((range) => cells(read, range).map(figure))
    .filter((value) => !Number.isNaN(value));
const nameOf = (read: Read, { nameFrom, name }: Series): string =>
  (nameFrom === undefined ? "" : word(cells(read, nameFrom)[0])) || name;
const summaryOf = (read: Read): string => word(cells(read, read.chart.summary)[0]);
const near = (one: number, others: readonly number[]): boolean =>
  others.some((other) => Math.abs(one - other) <= 0.0501);

test("every picture of every template has been read", () =>
  expect(all).toHaveLength(workbooks.flat().reduce((sum, [, { charts }]) => sum + charts.length, 0)));

test("a caption is whole sentences with the title, a caution and the day, without errors or holes", () => {
  for (const { state, chart, caption } of all) {
    expect(`${state}: ${caption}`).toContain(`${chart.title}. `);
    expect(Object.values(cautions).some((caution) => caption.includes(caution))).toBe(true);
    expect(caption).toMatch(/ Drawn 2026-11-26\.$/);
    expect(`${state}: ${caption}`).not.toMatch(HOLES);
  }
});

test("it says that the example is invented, until that is cleared", () => {
  for (const { state, caption } of all) {
    expect([state, /Example: .*invented/.test(caption)]).toEqual([state, !state.includes("cleared")]);
  }
});

test("nothing is told of a picture without figures but its title, its cautions and the day", () => {
  const empty = all.filter((read) => read.chart.series.every((series) => figuresOf(read, series).length === 0));
  expect(empty.length).toBeGreaterThanOrEqual(drawnOn.length);
  for (const read of empty) expect([read.state, summaryOf(read)]).toEqual([read.state, ""]);
});

test("every figure in the axis' unit is one that is drawn, and every sum and difference is of those drawn", () => {
  let compared = 0;
  for (const read of all) {
    const { chart, state } = read;
    const summary = summaryOf(read);
    const figures = chart.series.flatMap((series) => figuresOf(read, series));
    const sums = chart.series.map((series) => figuresOf(read, series).reduce((sum, value) => sum + value, 0));
    const unit = chart.axis.split(" ")[0] as string;
    const told = [
      ...summary.matchAll(new RegExp(`(?<![\\d-])(-?[\\d.]+)(?: (?:to|down to) (-?[\\d.]+))? ${unit}(?! a week)`, "g")),
    ];
    for (const [words, ...numbers] of told) {
      for (const number of numbers.filter(Boolean).map(Number)) {
        compared++;
        const truth = words.includes("mm") ? sums.map(Math.round) : figures;
        expect([state, number, near(number, truth)]).toEqual([state, number, true]);
      }
    }
    const along = cells(read, chart.along).map(figure);
    for (const [iso] of chart.series.some(({ nameFrom }) => nameFrom) ? [] : summary.matchAll(/\d{4}-\d\d-\d\d/g)) {
      const day = serialOfIso(iso) ?? NaN;
      expect([state, iso, day >= Math.min(...along.filter((x) => x > 0))]).toEqual([state, iso, true]);
    }
  }
  expect(compared).toBeGreaterThan(25);
});

test("K between two lines are the differences that are drawn", () => {
  const plans = all.filter(({ chart, caption }) => chart.title.includes("the plan") && caption.includes(" K too warm"));
  expect(plans.length).toBeGreaterThan(0);
  for (const read of plans) {
    const [setPoint, mean] = read.chart.series.map((series) => cells(read, rangesOf(series)[0] as string).map(figure));
    const off = (mean ?? []).map((value, i) => value - (setPoint?.[i] ?? NaN)).filter((value) => !Number.isNaN(value));
    const [, warm, cold] = /up to ([\d.]+) K too warm and ([\d.]+) K too cold/.exec(read.caption) ?? [];
    expect(Math.abs(Number(warm) - Math.max(0, ...off))).toBeLessThan(0.06);
    expect(Math.abs(Number(cold) - Math.max(0, ...off.map((value) => -value)))).toBeLessThan(0.06);
  }
});

describe("a year as a strip, as a ring and beside another", () => {
  const offered = () =>
    sheetsRead.flatMap(({ state, contents }) =>
      picturesIn(contents)
        .filter(({ name }) => /^(The year as|Side by side)/.test(name))
        .map(({ name, caption }) => ({ state: `${state}: ${name}`, contents, caption: caption(TODAY) })),
    );

  test("is offered where there are figures, and never of a cleared sheet", () => {
    const names = new Set(offered().map(({ state }) => state));
    for (const sheet of ["Native climate, example", "Year plan, example", "Cooling plan, example"])
      for (const form of ["strip", "ring"]) expect(names).toContain(`${sheet}: The year as a ${form}`);
    expect([...names].filter((name) => name.includes("cleared"))).toEqual([]);
    expect(names).toContain("Native climate, example: Side by side: Where the animal lives and Navacerrada, Spain");
  });

  test("its caption is whole sentences with a caution and the day, and says that the example is invented", () => {
    for (const { state, caption } of offered()) {
      expect(`${state}: ${caption}`).not.toMatch(HOLES);
      expect([state, caption]).toEqual([state, expect.stringMatching(/^.* Example: .*invented.* Drawn 2026-11-26\.$/)]);
      const dangers = /^(Year|Cooling) plan/.test(state)
        ? [cautions.coldKills, cautions.noFoodInTheCold]
        : [cautions.proxy];
      for (const danger of dangers) expect(caption).toContain(danger);
    }
  });

  test("days are counted on average, and as COOLSPELL counts them", () => {
    const found = offered().find(({ state }) => state === "Native climate, example: The year as a strip");
    const lows = valuesOf(found?.contents.cells ?? [], cellOf(nativeClimate, "here.low")).flat() as number[];
    const [[, , days] = []] = call(
      coolSpell,
      lows.map((low) => [low]),
      10,
      2026,
    );
    expect(found?.caption).toContain(
      `${String(days)} days with lows below 10 °C on average; single days and nights differ.`,
    );
  });

  test("speaks of °F where its sheet does", () => {
    const found = offered().find(({ state }) => state.includes("in °F: The year as a ring"));
    expect(found?.caption).toContain("Set-point from 46.4 to 75.2 °F over the year."); // 8 and 24 °C
  });

  test("the stages of a plan stand under the climate's months and rain, with the plan's cautions", () => {
    const examples = sheetsRead.filter(({ state }) => state.endsWith(", example")).map(({ contents }) => contents);
    const plans = plansIn(examples);
    // Year plan and Cooling plan hold the same six dates.
    expect(plans.map(({ sheet }) => sheet)).toHaveLength(1);
    const climate = examples.find(({ name }) => name === nativeClimate.name) as SheetContents;
    const names = picturesIn(climate, plans).map(({ name }) => name);
    const both = picturesIn(climate, plans).find(({ name }) =>
      /strip, with the stages of (Year|Cooling) plan$/.test(name),
    );
    expect([names, both === undefined]).toEqual([names, false]);
    const caption = both?.caption(TODAY) ?? "";
    for (const words of [
      "Cold from 16 Nov to 7 Feb",
      "Last meal on 21 Sep, first meal on 29 Mar.",
      "mm of rain and melted snow a year",
      cautions.coldKills,
      cautions.noFoodInTheCold,
      cautions.proxy,
      creditOf("climat"),
    ])
      expect(caption).toContain(words);
    expect(
      picturesIn(climate, plans)
        .find(({ name }) => name === "The year as a strip")
        ?.caption(TODAY),
    ).not.toContain("Cold from");
  });

  test("stages begin and end on the dates of the plan", () => {
    for (const [sheet, template, name] of [
      ["Year plan", yearPlan, "year."],
      ["Cooling plan", coolingPlan, "dates."],
    ] as const) {
      const found = offered().find(({ state }) => state === `${sheet}, example: The year as a ring`);
      const on = (date: string, before = 0): string => {
        const [[day] = []] = valuesOf(found?.contents.cells ?? [], cellOf(template, `${name}${date}`));
        const { 1: month, 2: of } = /-(\d\d)-(\d\d)/.exec(isoOf(Number(day) - before)) ?? [];
        return `${Number(of)} ${["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"][Number(month) - 1]}`;
      };
      expect(found?.caption).toContain(`Clearing from ${on("lastMeal")} to ${on("coolingStarts", 1)}`);
      expect(found?.caption).toContain(`Cold from ${on("intoTheCold")} to ${on("warmingStarts", 1)}`);
      expect(found?.caption).toContain(`Settling from ${on("warmAgain")} to ${on("firstMeal", 1)}`);
      expect(found?.caption).toContain(`Feeding from ${on("firstMeal")} to ${on("lastMeal", 1)}`);
    }
  });

  test("each place is told of where it is drawn: how it was come by, and on which terms", () => {
    for (const { state, caption } of offered().filter(({ state }) => state.startsWith("Native climate"))) {
      const [title = ""] = caption.split(". ");
      for (const place of ["Navacerrada, Spain", "Segovia, Spain", "Hanover, NH", "Ridge hut (invented)"])
        expect([state, place, caption.replace(/the nearest .*? of this elevation\./, "").includes(place)]).toEqual([
          state,
          place,
          title.includes(place),
        ]);
      const terms = /Datenbasis|NOAA|keeper's own record/;
      expect([state, terms.test(caption)]).toEqual([state, true]);
      expect([state, caption.includes(creditOf("noaa"))]).toEqual([state, title.includes("Hanover")]);
      if (state.includes(" and Hanover"))
        expect(caption).toMatch(/Hanover, NH.*?, \d+ m, as it stands|corrected from \d+/);
    }
  });
});

test("the page of a sheet carries all its cautions and sources, and not the latitude of the animal's home", () => {
  expect(sheetsRead.length).toBeGreaterThan(10);
  for (const { state, contents } of sheetsRead) {
    const known = recognise(contents, sheets)?.template as Sheet;
    const page = picturesIn(contents).at(-1);
    expect(page?.name).toBe("The sheet as a page");
    const said = page?.caption(TODAY) ?? "";
    for (const key of known.cautions) expect([state, said.includes(cautions[key])]).toEqual([state, true]);
    for (const key of known.sources)
      expect([state, key, said.includes(sources[key].text.replace(/\.$/, ""))]).toEqual([state, key, true]);
    const { rows, more } = readPage(known, contents.cells);
    expect([state, more]).toEqual([state, 0]);
    const words = rows.flat().map(({ text }) => text);
    for (const secret of ["40.87", "-4.06"]) expect([state, words.includes(secret)]).toEqual([state, false]);
  }
  const climate = sheetsRead.find(({ state }) => state === "Native climate, example");
  expect(valuesOf(climate?.contents.cells ?? [], cellOf(nativeClimate, "place.latitude"))).toEqual([[40.87]]);
});

describe("Native climate", () => {
  const pictured = (): readonly Read[] => all.filter(({ contents }) => contents.name.startsWith(nativeClimate.name));
  /** The year to plan by at some depths draws no place of its own: its caption speaks of the source chosen. */
  const isDown = ({ chart }: Read): boolean => chart.title === "From the air down";
  const climate = (): readonly Read[] => pictured().filter((read) => !isDown(read));
  const isDrawn = (read: Read, series: Series): boolean => figuresOf(read, series).length > 0;
  /** The place of a series, without what is said of its lines. */
  const placeOf = (read: Read, series: Series): string => nameOf(read, series).replace(/, (highs|lows).*$/, "");

  test("the legend calls places by their names, a number of the network too", () => {
    for (const read of climate())
      for (const series of read.chart.series.filter(({ draw }) => draw === "line" || draw === "bar"))
        if (isDrawn(read, series)) expect(nameOf(read, series)).not.toMatch(/station|^\d|^own/);
    const byNumber = climate().find(({ state }) => state.includes("a number"));
    expect(byNumber?.chart.series.map((series) => nameOf(byNumber, series))).toContain("Navacerrada, Spain, highs");
  });

  test("the caption names a station where it is drawn, and nowhere else", () => {
    for (const read of climate()) {
      const rest = read.caption.replace(/the nearest .*? of this elevation\./, "");
      const drawn = read.chart.series.filter((series) => series.nameFrom && isDrawn(read, series));
      const places = new Set(
        drawn.map((series) => placeOf(read, series)).filter((name) => !name.startsWith("Estimate")),
      );
      for (const name of ["Navacerrada, Spain", "Segovia, Spain", "Hanover, NH", "Ridge hut (invented)"])
        expect([read.state, name, rest.includes(name)]).toEqual([
          read.state,
          name,
          [...places].some((place) => place.startsWith(name)),
        ]);
    }
  });

  test("how it was corrected is said of what was corrected, and of nothing else", () => {
    for (const read of climate()) {
      const stations = new Set(
        read.chart.series
          .filter((series) => (series.draw === "line" || series.draw === "bar") && isDrawn(read, series))
          .map((series) => placeOf(read, series))
          .filter((name) => !name.startsWith("Estimate")),
      ).size;
      const isRain = read.chart.axis.startsWith("mm");
      const estimated = read.chart.series.some((series) => series.name.startsWith("Estimate") && isDrawn(read, series));
      const times = (words: RegExp): number => [...read.caption.matchAll(words)].length;
      const rates = /highs are corrected at 6\.5(?: K per km)? and (?:its )?lows at 4\.5 K per km/g;
      expect([read.state, times(rates)]).toEqual([read.state, isRain ? 0 : stations]);
      expect([read.state, times(/ Corrected to \d+ m\./g)]).toEqual([read.state, isRain ? 0 : stations]);
      expect([read.state, times(/as recorded at \d+ m, not corrected/g)]).toEqual([read.state, isRain ? stations : 0]);
      expect([read.state, times(/Estimated from \d+ weather stations|Its rain is worked out/g)]).toEqual([
        read.state,
        estimated ? 1 : 0,
      ]);
      expect([read.state, read.caption.includes(cautions.estimatedSite)]).toEqual([read.state, estimated && !isRain]);
    }
  });

  test("the records that are drawn are credited with their terms and years, once, and no others", () => {
    const network = networkAsShipped();
    for (const read of climate()) {
      const drawn = read.chart.series.filter((series) => series.nameFrom && isDrawn(read, series));
      const used = new Set(
        drawn.flatMap((series) => {
          const name = placeOf(read, series);
          if (name.startsWith("Estimate")) return ["climat"]; // that is what the Sierra's estimate rests on
          const station = name.startsWith("Ridge hut") ? {} : network.find(name);
          return "network" in station ? [station.network] : [];
        }),
      );
      for (const key of networkKeys)
        expect([read.state, key, read.caption.split(creditOf(key)).length - 1]).toEqual([
          read.state,
          key,
          used.has(key) ? 1 : 0,
        ]);
      const keepers = drawn.some((series) => placeOf(read, series).startsWith("Ridge hut"));
      expect([read.state, read.caption.includes("The keeper's own record, 2024 and 2025.")]).toEqual([
        read.state,
        keepers,
      ]);
    }
  });

  test("under the ground it credits the source that is planned by, how that was corrected, and what is not in it", () => {
    const down = pictured().filter(isDown);
    const told = down.filter((read) => figuresOf(read, read.chart.series[0] as Series).length > 0);
    expect(told.length).toBeGreaterThan(1);
    for (const read of down) {
      expect(read.caption).toContain(cautions.bareGround);
      const isTold = told.includes(read);
      expect([read.state, read.caption.split(creditOf("climat")).length - 1]).toEqual([read.state, isTold ? 1 : 0]);
      expect([read.state, read.caption.includes(cautions.estimatedSite)]).toEqual([
        read.state,
        isTold && !read.state.includes("by a station"),
      ]);
      expect([read.state, read.caption.includes("highs are corrected at 6.5")]).toEqual([
        read.state,
        isTold && read.state.includes("by a station"),
      ]);
    }
    expect(down.some(({ state }) => state.includes("by a station"))).toBe(true);
  });
});
