import MiniSearch, { type SearchOptions } from "minisearch";

/** Words of a question that say nothing of its subject. */
const FILLERS = new Set(
  "a an the to of my i me it its is am are was do does did in on for and or at be by with when what which how much many can may should will this that there from".split(
    " ",
  ),
);

/** Capitals and accents away: "Köppen" is found by "koppen". */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** One form of a word for its many: meals, sheds, feeding, ventilated. Both sides are shortened alike. */
const stem = (word: string): string => {
  if (word.length < 5 || /\d/.test(word)) return word.length === 4 ? word.replace(/([^s])s$/, "$1") : word;
  const short = word
    .replace(/(ss|sh|ch|x)es$/, "$1")
    .replace(/ies$/, "y")
    .replace(/([^su])s$/, "$1")
    .replace(/(ation|ating|ated|ate|ing|ed|er)$/, "");
  const bare = short.length < 3 ? word : short;
  // hibernat(e), brumat(e), and the double letter of "shedding".
  return bare.replace(/([^aeiouls])\1$/, "$1").replace(/e$/, "");
};

const fields = ["name", "everyday", "summary", "about"] as const;

/** Something that can be found, and what is said of it. */
export interface Findable extends Readonly<Record<(typeof fields)[number], string>> {
  readonly id: string;
  /** How much it weighs beside others, 1 where nothing is said. */
  readonly weighs?: number;
}

const told = (term: string): string | null => {
  const word = plain(term);
  return FILLERS.has(word) || word === "" ? null : word;
};
const process = (term: string): string | null => {
  const word = told(term);
  return word === null ? null : stem(word);
};

/** What a keeper calls it, word for word. */
const PHRASE_WEIGHS = 3;
/** The very name. */
const NAME_WEIGHS = 100;

/**
 * A search over what is given: it answers the ids of what is found for what was typed, best first, and nothing where nothing
 * was typed. `everyday` holds phrases with commas between.
 */
export const searchOver = (all: readonly Findable[]): ((typed: string) => readonly string[]) => {
  const index = new MiniSearch<Findable>({
    fields: [...fields],
    // A slip of the keyboard is nearer to the whole word than to what is left of it.
    processTerm: (term) => {
      const word = told(term);
      return word === null ? null : [...new Set([word, stem(word)])];
    },
  });
  index.addAll(all);
  const byId = new Map(all.map((one) => [one.id, one]));
  const phrases = new Map(
    all.map(({ id, everyday }) => [
      id,
      everyday.split(",").map((phrase) => phrase.split(/\s+/).map(process).filter(Boolean).join(" ")),
    ]),
  );
  return (typed) => {
    const asked = typed.replace(/^=?\s*viv\./i, "");
    const name = plain(asked).trim();
    const whole = asked
      .split(/[^\p{L}\p{N}]+/u)
      .map(process)
      .filter(Boolean)
      .join(" ");
    if (whole === "") return [];
    const options: SearchOptions = {
      boost: { name: 6, everyday: 4, summary: 2 },
      prefix: (term) => term.length >= 3,
      fuzzy: (term) => (term.length >= 5 ? 0.25 : false),
      weights: { prefix: 0.5, fuzzy: 0.25 },
      boostDocument: (id: string) =>
        (byId.get(id)?.weighs ?? 1) *
        (phrases.get(id)?.includes(whole) ? PHRASE_WEIGHS : 1) *
        (plain(byId.get(id)?.name ?? "") === name ? NAME_WEIGHS : 1),
    };
    const every = index.search(asked, { ...options, combineWith: "AND", processTerm: process });
    const like = index.search(asked, { ...options, combineWith: "AND", processTerm: told });
    const some = index.search(asked, { ...options, processTerm: process });
    const near = some.filter(({ score }) => score >= (some[0]?.score ?? 0) / 4);
    return [...new Set([...every, ...like, ...near].map(({ id }) => id as string))];
  };
};
