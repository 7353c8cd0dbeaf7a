import { concepts, type Concept, type ConceptKey } from "./concepts";
import type { OwnColumn } from "./table";

/** The words of a heading: accents and capitals away, ä as ae, a sign of degrees and of percent as words of their own. */
export const headingWords = (heading: string): readonly string[] =>
  heading
    .toLowerCase()
    .replaceAll("ß", "ss")
    .replace(/[äöü]/g, (letter) => ({ ä: "ae", ö: "oe", ü: "ue" })[letter] as string)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/°\s*([cf])\b/g, " $1 ")
    .replace(/[%°]/g, " $& ")
    .split(/[^\p{L}\p{N}%°]+/u)
    .filter((word) => word !== "");

const UNITS = ["c", "f", "g", "kg", "oz", "lb", "%", "m", "ft", "mm", "in", "cm", "°", "h", "min"];

/** The unit that a heading names, at its end or in brackets: "Weight (g)", "Temp °F". */
export const unitIn = (heading: string): string | undefined => {
  const words = headingWords(heading);
  return words.length > 1 ? [...words].reverse().find((word) => UNITS.includes(word)) : undefined;
};

/** How well a heading speaks of a concept. */
const heard = (words: readonly string[], { words: known }: Pick<Concept, "words">): number => {
  const list = known.split(" ").filter((word) => word !== "");
  if (words.some((word) => list.includes(word))) return 4;
  const isPart = (word: string): boolean =>
    list.some((one) => one.length >= 4 && (word.includes(one) || (word.length >= 4 && one.startsWith(word))));
  return words.some(isPart) ? 3 : 0;
};

const suits = (concept: Concept, { heading, kind }: OwnColumn): number => {
  if (kind !== concept.kind) return -1;
  const words = headingWords(heading);
  const unit = unitIn(heading);
  const against = concept.not && heard(words, concepts[concept.not]) > 0 ? 3 : 0;
  const units = concept.units ?? [];
  const byUnit = unit === undefined || units.length === 0 ? 0 : units.includes(unit) ? 1 : -4;
  return heard(words, concept) + byUnit - against;
};

/** What is known of a guess: told beside it, and the keeper may change it. */
export interface Guess {
  readonly column: number;
  readonly by: "heading" | "values";
}

/**
 * A column for each wanted concept, as far as headings, units and cells tell; no column twice. Where one column alone is
 * of the right kind, it is guessed by its values.
 */
export const guesses = (
  columns: readonly OwnColumn[],
  wanted: ReadonlyMap<string, ConceptKey>,
): ReadonlyMap<string, Guess> => {
  const found = new Map<string, Guess>();
  const isTaken = (column: OwnColumn): boolean => [...found.values()].some((guess) => guess.column === column.column);
  const pairs = [...wanted]
    .flatMap(([name, key]) => columns.map((column) => ({ name, column, score: suits(concepts[key], column) })))
    .filter(({ score }) => score >= 1)
    .sort((one, other) => other.score - one.score);
  for (const { name, column } of pairs) {
    if (!found.has(name) && !isTaken(column)) found.set(name, { column: column.column, by: "heading" });
  }
  for (const [name, key] of wanted) {
    if (found.has(name)) continue;
    const rivals = [...wanted].filter(([other, one]) => !found.has(other) && concepts[one].kind === concepts[key].kind);
    const left = columns.filter((column) => suits(concepts[key], column) >= 0 && !isTaken(column));
    const [only] = left;
    if (only && left.length === 1 && rivals.length === 1) found.set(name, { column: only.column, by: "values" });
  }
  return found;
};
