import { fromMetric, symbol, type System, type Unit } from "../../../functions/units";
import type { Format } from "../sheet";

/** Units as the words of a sheet name them. Sheets are written in metric; these words are what the other system changes. */

/** How a unit stands in words, and how in the other system; as its symbols have it where nothing is said. The longer come first. */
const spellings: readonly (readonly [metric: string, unit: Unit, imperial?: string])[] = [
  ["K (degrees) per km", "kelvinPerKilometre"],
  ["K per km", "kelvinPerKilometre"],
  ["K/km", "kelvinPerKilometre"],
  ["degree-hours", "degreeHour", "degree-hours"],
  ["degree-days", "degreeDay", "degree-days"],
  ["Metres", "metre", "Feet"],
  ["metres", "metre", "feet"],
  ["mm a", "millimetre", "inches a"],
  ["°C", "celsius"],
  ["K", "kelvin"],
  ["km", "kilometre"],
  ["Km", "kilometre", "Mi"],
  ["mm", "millimetre"],
  ["cm", "centimetre"],
  ["m", "metre"],
  ["g", "gram"],
];
type Spelling = (typeof spellings)[number];

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const escaped = (text: string): string => text.replace(/[()/]/g, String.raw`\$&`);
/** A unit by itself, after a figure, or after two: "°C", "15 °C", "4 to 10 °C", "23-31 °C". */
const named = new RegExp(
  String.raw`(?<![\p{L}\p{N}.'’°])(?:(${NUMBER})(?:( to | and | or |-|–)(${NUMBER}))? )?` +
    String.raw`(${spellings.map(([metric]) => escaped(metric)).join("|")})(?![\p{L}\p{N}'’°²³/])`,
  "gu",
);

const spelled = (found: string): Spelling => spellings.find(([metric]) => metric === found) as Spelling;

/** The unit that words name first: "Mass, g" are grams. */
export const unitNamedIn = (words: string): Unit | undefined => {
  const [found] = words.matchAll(named);
  return found && spelled(found[4] as string)[1];
};

/** A figure in words: whole from 100 on, with a decimal below, and two digits below 1. */
const inWords = (value: number): string =>
  String(Number(Math.abs(value) < 1 ? value.toPrecision(2) : value.toFixed(Math.abs(value) < 100 ? 1 : 0)));

/** Words in a system: their units, and the figures that stand before these. */
export const wordsIn = (words: string, system: System): string =>
  system === "metric"
    ? words
    : words.replace(named, (_, first?: string, between?: string, second?: string, found = "", at = 0) => {
        const [, unit, imperial = symbol(unit, system)] = spelled(found as string);
        const figure = (one: string): string => inWords(fromMetric(Number(one), unit, system));
        const figures = [first && figure(first), between, second && figure(second)].filter(Boolean).join("");
        if (figures) return `${figures} ${imperial}`;
        if (imperial !== "in") return imperial;
        // "Length in" would read as the beginning of a sentence.
        const [before, after] = [words.slice(0, at as number), words.slice((at as number) + (found as string).length)];
        return before.endsWith(", ") ? "inches" : before !== "" && after === "" ? "in." : imperial;
      });

/** A figure as it is, in a system: without the noise of converting it. */
export const figureIn = (value: number, unit: Unit, system: System): number =>
  Number(fromMetric(value, unit, system).toFixed(6));

/** The decimals that a keeper would write of a quantity, where the others would be made up. */
const decimals: Partial<Record<Unit, number>> = { metre: 0, kilometre: 0, millimetre: 2, centimetre: 1, gram: 3 };
/** Of small figures so many digits, however many decimals that takes. */
const DIGITS = 5;

/** An example's figure in a system, as somebody there would have written it. */
export const exampleIn = (value: number, unit: Unit, system: System): number => {
  const exact = fromMetric(value, unit, system);
  const most = system === "metric" ? 3 : decimals[unit];
  if (most === undefined || most === 0) return Number(exact.toFixed(most ?? 6));
  const first = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(exact)));
  return Number(exact.toFixed(Math.min(9, Math.max(most, DIGITS - 1 - first))));
};

/** Decimals that say as much in the other system as these do in metric. */
const formatsThere: Partial<Record<Unit, Partial<Record<Format, Format>>>> = {
  gram: { whole: "hundredth", tenth: "thousandth", hundredth: "thousandth" },
  millimetre: { whole: "hundredth", tenth: "hundredth" },
  centimetre: { whole: "tenth" },
  kelvinPerKilometre: { tenth: "hundredth" },
};
const DECIMALS = ["whole", "tenth", "hundredth", "thousandth"] as const satisfies readonly Format[];
export type Decimals = 0 | 1 | 2 | 3;
/** The same of decimals in words. */
export const decimalsIn = (decimals: Decimals, unit: Unit, system: System): number =>
  (DECIMALS as readonly Format[]).indexOf(formatIn(DECIMALS[decimals], unit, system));

export const formatIn = (format: Format, unit: Unit, system: System): Format =>
  (system === "metric" ? undefined : formatsThere[unit]?.[format]) ?? format;
