import MiniSearch, { type SearchOptions } from "minisearch";
import { cautions } from "../../functions/cautions";
import { everydayWords } from "./everydayWords";
import { items, type Item } from "./items";

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
type Field = (typeof fields)[number];

const fieldsOf = (item: Item): Readonly<Record<Field, string>> => {
  if (item.kind === "caution") return { name: "", everyday: "", summary: cautions[item.id], about: "" };
  if (item.kind === "sheet") {
    const { sheet, id } = item;
    return { name: sheet.name, everyday: everydayWords[id] ?? "", summary: sheet.sentence, about: "" };
  }
  const { definition, topic } = item;
  return {
    name: definition.name,
    everyday: everydayWords[definition.name] ?? "",
    summary: definition.summary,
    about: [
      topic,
      ...Object.entries(definition.parameters).flatMap(([name, { about }]) => [name.replace(/[A-Z]/g, " $&"), about]),
      ...definition.result.columns.map(({ name, about }) => `${name} ${about}`),
    ].join(" "),
  };
};

const told = (term: string): string | null => {
  const word = plain(term);
  return FILLERS.has(word) || word === "" ? null : word;
};
const process = (term: string): string | null => {
  const word = told(term);
  return word === null ? null : stem(word);
};

const index = new MiniSearch<{ readonly id: string } & Readonly<Record<Field, string>>>({
  fields: [...fields],
  // A slip of the keyboard is nearer to the whole word than to what is left of it.
  processTerm: (term) => {
    const word = told(term);
    return word === null ? null : [...new Set([word, stem(word)])];
  },
});
index.addAll(items.map((item) => ({ id: item.id, ...fieldsOf(item) })));

const byId = new Map(items.map((item) => [item.id, item]));
const phrases = new Map(
  items.map(({ id }) => [
    id,
    (everydayWords[id] ?? "").split(",").map((phrase) => phrase.split(/\s+/).map(process).filter(Boolean).join(" ")),
  ]),
);

/** A caution is found by its words, but what can be done comes first. */
const CAUTIONS_WEIGH = 0.3;
/** What a keeper calls it, word for word. */
const PHRASE_WEIGHS = 3;
/** The very name. */
const NAME_WEIGHS = 100;

const nameOf = (id: string): string => {
  const item = byId.get(id);
  return plain(item?.kind === "sheet" ? item.sheet.name : id);
};

/** What is found for what was typed, best first; nothing where nothing was typed. */
export const find = (typed: string): readonly Item[] => {
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
      (byId.get(id)?.kind === "caution" ? CAUTIONS_WEIGH : 1) *
      (phrases.get(id)?.includes(whole) ? PHRASE_WEIGHS : 1) *
      (nameOf(id) === name ? NAME_WEIGHS : 1),
  };
  const all = index.search(asked, { ...options, combineWith: "AND", processTerm: process });
  const like = index.search(asked, { ...options, combineWith: "AND", processTerm: told });
  const some = index.search(asked, { ...options, processTerm: process });
  const ids = new Set(
    [...all, ...like, ...some.filter(({ score }) => score >= (some[0]?.score ?? 0) / 4)].map(({ id }) => id as string),
  );
  return [...ids].flatMap((id) => byId.get(id) ?? []);
};
