import { catalogue } from "../../functions/catalogue";
import { PREFIX, type AnyDefinition } from "../../functions/define";
import { sheets } from "../sheets/catalogue";
import type { Sheet } from "../sheets/sheet";

/** The functions that a sheet's formulas call, in the order of the reference. */
const calledBy = new Map(
  sheets.map((sheet) => {
    const text = JSON.stringify(sheet.blocks.map(({ rows }) => rows));
    const names = new Set([...text.matchAll(new RegExp(`\\b${PREFIX}\\.([A-Z0-9]+)\\(`, "g"))].map(([, name]) => name));
    return [sheet, catalogue.filter(({ name }) => names.has(name))] as const;
  }),
);

export const functionsOf = (sheet: Sheet): readonly AnyDefinition[] => calledBy.get(sheet) ?? [];

/** The Self-check calls every function, which says nothing of any. */
export const sheetsWith = (definition: AnyDefinition): readonly Sheet[] =>
  sheets.filter((sheet) => sheet.key !== "selfCheck" && functionsOf(sheet).includes(definition));

/** What a definition says about itself, its arguments and its answer. */
const wordsOf = ({ summary, parameters, result }: AnyDefinition): string =>
  [
    summary,
    ...Object.values(parameters).flatMap(({ about, without = "" }) => [about, without]),
    ...result.columns.map(({ about }) => about),
  ].join(" ");

const names = (definition: AnyDefinition, other: AnyDefinition): boolean =>
  new RegExp(`\\b${other.name}\\b`).test(wordsOf(definition));

const takesPlan = ({ parameters }: AnyDefinition): boolean =>
  Object.values(parameters).some(({ kind }) => kind === "plan");

const MOST = 6;

/**
 * Functions that are read together with one: those that it names or that name it, then those of its own topic, next to it
 * in the reference. A winter plan's two makers belong to all that take a plan.
 */
export const relatedTo = (definition: AnyDefinition, topic: readonly AnyDefinition[]): readonly AnyDefinition[] => {
  const named = catalogue.filter(
    (other) =>
      other !== definition &&
      (names(definition, other) ||
        names(other, definition) ||
        (takesPlan(definition) && /^RAMPDATES(TO)?$/.test(other.name))),
  );
  const at = topic.indexOf(definition);
  const near = topic
    .filter((other) => other !== definition)
    .sort((one, other) => Math.abs(topic.indexOf(one) - at) - Math.abs(topic.indexOf(other) - at));
  return [...new Set([...named, ...near])].slice(0, MOST);
};

/** The sheets whose cells a sheet repeats, and those that repeat its own. */
export const linksOf = (sheet: Sheet) => {
  const from = (one: Sheet): readonly string[] => one.links.map(({ from: place }) => place.split(".")[0] ?? "");
  const linked = (one: Sheet, other: Sheet) =>
    one.links
      .filter(({ from: place }) => place.startsWith(`${other.key}.`))
      .map(({ words }) => words)
      .filter((words, i, all) => all.indexOf(words) === i);
  return {
    takes: sheets
      .filter(({ key }) => key !== sheet.key && from(sheet).includes(key))
      .map((other) => ({ sheet: other, words: linked(sheet, other) })),
    gives: sheets
      .filter((other) => other.key !== sheet.key && from(other).includes(sheet.key))
      .map((other) => ({ sheet: other, words: linked(other, sheet) })),
  };
};
