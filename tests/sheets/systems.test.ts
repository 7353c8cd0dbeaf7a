import type { Unit } from "../../functions/units";
import { sheets } from "../../taskpane/sheets/catalogue";
import { areaOf, beside, inside } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { withEntries } from "../../taskpane/sheets/withEntries";
import type { CellState } from "../../taskpane/workbook";
import { drawn, type Reading } from "../preview/engine";

// Two sheets are worked out in each test: seconds on a busy machine.
jest.setTimeout(120_000);

/**
 * Every sheet in both systems finds the same animal: the same dates, stages, checks and words, and figures that are equal
 * once they are converted. The conversions are written out here again, apart from the project's own, from the exact
 * definitions of the foot (0.3048 m), the mile (1609.344 m), the inch (25.4 mm), the pound (453.59237 g) and the Fahrenheit
 * scale. An example's figures are rounded as a keeper would write them, to a foot and a thousandth of an ounce: hence `within`.
 */
const there: Partial<Record<Unit, { readonly out: (metric: number) => number; readonly within?: number }>> = {
  celsius: { out: (c) => c * 1.8 + 32, within: 0.01 },
  kelvin: { out: (k) => k * 1.8, within: 0.01 },
  kelvinPerKilometre: { out: (r) => r * 1.8 * 0.3048, within: 0.01 },
  metre: { out: (m) => m / 0.3048, within: 1 },
  kilometre: { out: (km) => km / 1.609344, within: 0.01 },
  millimetre: { out: (mm) => mm / 25.4, within: 0.06 },
  centimetre: { out: (cm) => cm / 2.54, within: 0.05 },
  gram: { out: (g) => (g / 453.59237) * 16 },
  degreeDay: { out: (d) => d * 1.8, within: 0.01 },
  degreeHour: { out: (d) => d * 1.8, within: 0.01 },
};
/** Masses, and shares, hours and days: part of it, because they follow from rounded figures. */
const SHARE = 2e-3;
/** The lines that are written twice. */
const TOLD_TWICE = { aboutThisWorkbook: ["reading3.said"] } as Readonly<Record<string, readonly string[]>>;

const METRIC = /(?<![\p{L}\p{N}.'’°])(?:°C|K|mm|cm|[Kk]m|[Mm]etres|g|m)(?![\p{L}\p{N}'’°²³/])/u;
const [BEFORE, AFTER] = [String.raw`(?<![\p{L}\p{N}.'’°])`, String.raw`(?![\p{L}\p{N}'’°²³/])`];
const FIGURE = String.raw`-?\d+(?:\.\d+)?`;
const BETWEEN = "(?: to | and | or |-|–|, | of | down to | and its lows at )";
const rate = /K \(degrees\) per km|K per km|K\/km|°F per 1000 ft/g;
const units = String.raw`(?:°[CF]|K|mm|cm|[Kk]m|[Mm]i|[Mm]etres|[Ff]eet|inches|ft|oz|in|g|m|U)`;
const withUnit = new RegExp(`${BEFORE}${FIGURE}(?:${BETWEEN}${FIGURE})* ${units}${AFTER}`, "gu");
const unitAlone = new RegExp(`${BEFORE}${units}${AFTER}`, "gu");
/** Words without what may differ between the systems: units, and the figures that stand before them. */
const plain = (words: string): string =>
  words
    .replace(/\d+\.\d+ %/g, (share) => `${parseFloat(share).toFixed(1)} %`)
    .replace(rate, "U")
    .replace(/(?<=^[A-Z][a-z]+ )in\.$/, "U")
    .replace(withUnit, "# U")
    .replace(unitAlone, "U");

const isError = (value: CellState["value"]): value is { readonly error: string } =>
  value !== null && typeof value === "object";

const unitAt = ({ quantities }: Sheet, at: string): Unit | undefined =>
  quantities.find(({ range }) => inside(areaOf(at), areaOf(range)))?.unit;

/** How a cell in metric and the same one in imperial differ, if they do. */
const difference = (one: CellState, other: CellState, unit: Unit | undefined): string | undefined => {
  const [metric, imperial] = [one.value, other.value];
  const told = `${JSON.stringify(metric)} and ${JSON.stringify(imperial)}${unit ? `, ${unit}` : ""}`;
  if (typeof metric === "number" && typeof imperial === "number") {
    const rule = one.format?.startsWith("yyyy") || !unit ? undefined : there[unit];
    const wanted = rule ? rule.out(metric) : metric;
    const most = rule?.within ?? SHARE * Math.max(1, Math.abs(wanted));
    return Math.abs(imperial - wanted) <= most ? undefined : told;
  }
  if (typeof metric === "string" && typeof imperial === "string")
    return plain(metric) === plain(imperial) ? undefined : told;
  if (isError(metric) && isError(imperial)) return metric.error === imperial.error ? undefined : told;
  return metric === imperial ? undefined : told;
};

const inBoth = sheets
  .map((sheet) => [sheet.name, sheet, inSystem(sheet, "imperial")] as const)
  .filter(([, sheet, imperial]) => imperial !== sheet);

test("but for the Self-check, which repeats what its sources say, every sheet is had in both systems", () =>
  expect(inBoth.map(([, { key }]) => key)).toEqual(sheets.map(({ key }) => key).filter((key) => key !== "selfCheck")));

/** What hurts, planted in the example in metric figures, and the words that have to stand there then in both systems. */
const DANGERS = {
  coolingPlan: [
    { "plan.warmSet": 31, "plan.coldSet": 1.5, "plan.cool": 10, "plan.clear": 5, "air.litres": 2 },
    [/^stop/, /vents/],
  ],
  winterLog: [{ "log.box[3]": 1.5, "log.box[4]": 16, "log.mass[11]": 270 }, [/too cold/, /too warm/, /^stop/]],
  feedingLog: [{ "log.mass[17]": 90, "log.body[17]": 300, "log.night[17]": 8 }, [/^stop/]],
  incubation: [{ "log.high[11]": 35, "log.low[4]": 18 }, [/may be dead/, /look at the incubator/]],
  yearPlan: [{ "year.nightLeast": 12, "year.nightMost": 13 }, [/^Cool nights/]],
  breedingSeason: [{ "animals.mass[1]": 200, "animals.mass[2]": 120 }, [/^Too light/, /^Not back/]],
  weights: [{ "log.mass[16]": 250 }, [/^Lost/]],
  hatchlings: [{ "log.now[1]": 7 }, [/^Plan: lost/]],
  preyStock: [{ "eaters.body[5]": 30 }, [/too big/]],
} as Readonly<Record<string, readonly [planted: Readonly<Record<string, number>>, says: readonly RegExp[]]>>;

const differences = (sheet: Sheet, ours: Reading, theirs: Reading): string[] =>
  ours.cells.flatMap((line, i) =>
    line.flatMap((cell, j) => {
      const at = beside("A1", i, j);
      const found = difference(cell, theirs.cells[i]?.[j] ?? { value: null }, unitAt(sheet, at));
      const isTwice = TOLD_TWICE[sheet.key]?.some((name) => cellOf(sheet, name) === at);
      return found === undefined || isTwice ? [] : [`${at}: ${found}`];
    }),
  );

/** What notes, limits, links and charts say in metric. */
const toldInMetric = ({ notes, validation, links, charts }: Sheet): readonly string[] =>
  [
    ...notes.map(({ text }) => text),
    ...validation.map(({ message }) => message),
    ...links.map((link) => link.words),
    ...charts.flatMap(({ title, axis, series }) => [title, axis, ...series.map(({ name }) => name)]),
  ].filter((words) => METRIC.test(words));

test("what is told in metric is seen where it is", () =>
  expect(inBoth.filter(([, sheet]) => toldInMetric(sheet).length === 0).map(([, { key }]) => key)).toEqual([]));

describe.each(inBoth)("%s", (_, sheet, imperial) => {
  test("finds the same animal in both systems, and what hurts it", async () => {
    const [planted, says] = DANGERS[sheet.key] ?? [{}, []];
    const converted = Object.fromEntries(
      Object.entries(planted).map(([name, value]) => [
        name,
        (there[unitAt(sheet, cellOf(sheet, name)) ?? "none"]?.out ?? Number)(value),
      ]),
    );
    const both = [withEntries(sheet, planted), withEntries(imperial, converted)];
    const [ours, theirs] = (await drawn(...both)) as [Reading, Reading];
    const words = theirs.cells.flatMap((line) =>
      line.flatMap(({ value }) => (typeof value === "string" ? [value] : [])),
    );
    expect(says.filter((one) => !words.some((said) => one.test(said)))).toEqual([]);
    expect(differences(sheet, ours, theirs).slice(0, 40)).toEqual([]);
    expect(theirs.cells.length).toBe(ours.cells.length);
    const sources = imperial.blocks.filter(({ role }) => role === "source").map(({ at }) => areaOf(at));
    const left = theirs.cells.flatMap((line, i) =>
      line.flatMap(({ value, formula = "" }, j) => {
        const at = beside("A1", i, j);
        const isSource =
          /VIV\.(SOURCE|CAUTION)\(/.test(formula) ||
          sources.some((area) => inside(areaOf(at), { ...area, right: area.left, bottom: area.top }));
        return typeof value === "string" && !isSource && METRIC.test(value) ? [`${at}: ${value}`] : [];
      }),
    );
    expect(left).toEqual([]);
  });

  test("says nothing in metric in notes, limits and charts", () => expect(toldInMetric(imperial)).toEqual([]));
});
