import { everydayWords } from "./everydayWords";
import type { AnyDefinition } from "../../functions/define";

/** Capitals, accents and signs away: "Köppen" is found by "koppen". */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

const haystack = (definition: AnyDefinition, topic: string): string => {
  const own = plain(
    [
      definition.name,
      definition.summary,
      topic,
      ...Object.entries(definition.parameters).flatMap(([name, { about }]) => [name.replace(/[A-Z]/g, " $&"), about]),
      ...definition.result.columns.map(({ about }) => about),
    ].join(" "),
  );
  return `${own} ${plain(everydayWords[definition.name] ?? "")}`;
};

/** Words of a question that say nothing of its subject. */
const FILLERS = new Set(["a", "an", "the", "to", "of", "my", "i", "do", "does", "is", "in", "for", "and"]);

export interface Found {
  readonly definition: AnyDefinition;
  readonly topic: string;
}

/**
 * The functions in which every word typed begins some word of name, description, arguments or purpose. Best first: the
 * name itself, names that begin so, summaries, the rest; otherwise in the order of the reference.
 */
export const search = (all: readonly Found[], typed: string): readonly Found[] => {
  const words = plain(typed.replace(/^=?\s*viv\./i, ""))
    .split(" ")
    .filter((word) => word !== "" && !FILLERS.has(word));
  if (words.length === 0) return all;
  const rank = ({ definition, topic }: Found): number => {
    const name = plain(definition.name);
    const hay = ` ${haystack(definition, topic)}`;
    if (!words.every((word) => hay.includes(` ${word}`) || name.includes(word))) return -1;
    if (words.length === 1 && name === words[0]) return 3;
    const phrases = (everydayWords[definition.name] ?? "").split(",").map((one) => ` ${plain(one)}`);
    if (phrases.some((phrase) => words.every((word) => phrase.includes(` ${word}`)))) return 2.5;
    if (words.some((word) => name.startsWith(word))) return 2;
    return words.every((word) => ` ${plain(definition.summary)}`.includes(` ${word}`)) ? 1 : 0;
  };
  return all
    .map((found) => ({ found, rank: rank(found) }))
    .filter(({ rank }) => rank >= 0)
    .sort((one, other) => other.rank - one.rank)
    .map(({ found }) => found);
};
