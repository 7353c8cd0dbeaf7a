/** A page as the search knows it. `words` are those of its text, each once. */
export interface Entry {
  readonly file: string;
  readonly title: string;
  readonly about: string;
  readonly also: string;
  readonly words: string;
}

/** Capitals, accents and signs away: "Köppen" is found by "koppen". */
export const plainWords = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** Words of a question that say nothing of its subject. */
const FILLERS = new Set([
  "a",
  "an",
  "the",
  "to",
  "of",
  "my",
  "i",
  "do",
  "does",
  "is",
  "in",
  "for",
  "and",
  "how",
  "what",
]);

/** How much a word tells by where it stands; the first that begins with it counts. */
const weights = [
  ["title", 8],
  ["also", 5],
  ["about", 4],
  ["words", 1],
] as const;

/** Pages in which every word typed begins some word, those that say so soonest first. */
export const find = (entries: readonly Entry[], typed: string): readonly Entry[] => {
  const all = plainWords(typed.replace(/^=?\s*viv\./i, "")).split(" ");
  const telling = all.filter((word) => !FILLERS.has(word));
  const words = telling.length > 0 ? telling : all;
  const rank = (entry: Entry): number => {
    const ranks = words.map((word) => {
      const [, weight] = weights.find(([where]) => ` ${plainWords(entry[where])}`.includes(` ${word}`)) ?? ["", 0];
      return weight;
    });
    return ranks.includes(0) ? 0 : ranks.reduce<number>((sum, one) => sum + one, 0);
  };
  return entries
    .map((entry) => ({ entry, rank: rank(entry) }))
    .filter(({ rank: one }) => one > 0)
    .sort((one, other) => other.rank - one.rank)
    .map(({ entry }) => entry);
};
