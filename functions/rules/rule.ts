import type { System, Unit } from "../units";
import { figure, figures } from "../shared/figure";
import { cited, type Cited } from "./cited";

/** "stop": do not go on like this. "care": know why you do it. "note": good to know. */
export const LEVELS = ["stop", "care", "note"] as const;
export type Level = (typeof LEVELS)[number];

type Limit =
  { readonly under: number | "own"; readonly over?: never } | { readonly over: number | "own"; readonly under?: never };

/**
 * One line of a check. It fires when the figure that it is `of` lies below `under` or above `over`, not at the limit
 * itself; "own" is a limit of the keeper's, given with the figure. Of the rules of one figure only the first that fires
 * is told. In the words, {is} is the figure and {limit} the limit.
 */
export type Rule<Measure extends string = string> = Limit & {
  readonly of: Measure;
  readonly level: Level;
  readonly words: string;
  readonly source: Cited;
  /** What has been measured on the matter, and where; it sets no limit here. In the words, {4} is 4 °C. */
  readonly known?: { readonly words: string; readonly source: Cited };
  /** What is told where the figure, or the keeper's own limit, is blank. A blank without it is told by another rule. */
  readonly blank?: { readonly level: Level; readonly words: string };
};

/** A figure that rules look at; undefined where it is blank. */
export interface Measured {
  readonly value: number | undefined;
  readonly unit: Unit;
  /** How it is told where the bare figure says too little. */
  readonly told?: string;
  /** The keeper's own limit. */
  readonly own?: number | undefined;
  /** The day on which it was seen. */
  readonly on?: number | undefined;
}

/** What a rule has to say. */
export interface Said {
  readonly level: Level;
  readonly words: string;
  /** The day of which it speaks. */
  readonly on?: number | undefined;
  /** Whether it speaks of a blank, not of a figure. */
  readonly unseen: boolean;
}

/** What is answered when no rule fires. */
export const NOTHING = "Nothing stands out. This is no veterinary check.";

const limitOf = ({ under, over }: Rule, { own }: Measured): number | undefined => {
  const limit = under ?? over;
  return limit === "own" ? own : limit;
};

/** The words with their temperatures in the system of the call: "{4}" is told as "4 °C", or as "39.2 °F". */
const inSystem = (words: string, system: System): string =>
  words.replace(/\{(\d+)\}/g, (_, celsius: string) => figure(Number(celsius), "celsius", system));

const days = (value: number): string => (value === 1 ? "1 day" : `${value} days`);

const line = (rule: Rule, value: number, limit: number, { unit, told }: Measured, system: System): string => {
  const [is, bound] = unit === "day" ? [days(value), days(limit)] : figures([value, limit], unit, system);
  const words = inSystem(rule.words, system)
    .replace("{is}", told ?? is)
    .replace("{limit}", bound);
  const known = rule.known ? ` ${inSystem(rule.known.words, system)} (${cited[rule.known.source]}).` : "";
  return `${words} (${cited[rule.source]}).${known}`;
};

/** What a rule says of a figure or of its blank, if anything. */
const said = (rule: Rule, measured: Measured, system: System): Said | undefined => {
  const { value, on } = measured;
  const limit = limitOf(rule, measured);
  if (value === undefined || limit === undefined) return rule.blank && { ...rule.blank, unseen: true };
  const fires = rule.under === undefined ? value > limit : value < limit;
  return fires
    ? { level: rule.level, words: line(rule, value, limit, measured, system), on, unseen: false }
    : undefined;
};

/** Gravest first; of one level what was found stands before what was not looked at. */
const byWeight = (a: Said, b: Said): number =>
  LEVELS.indexOf(a.level) - LEVELS.indexOf(b.level) || Number(a.unseen) - Number(b.unseen);

/** What the rules say, gravest first: of each figure the first line that has something to say. */
export const sayings = <Measure extends string>(
  rules: readonly Rule<Measure>[],
  measured: Readonly<Record<Measure, Measured>>,
  system: System = "metric",
): readonly Said[] => {
  const told = new Set<Measure>();
  const all = rules.flatMap((rule) => {
    const one = told.has(rule.of) ? undefined : said(rule, measured[rule.of], system);
    if (one) told.add(rule.of);
    return one ? [one] : [];
  });
  return all.sort(byWeight);
};

/** Where nothing was found, one line that says so, and with it all that was not looked at; a blank graver than a note speaks for itself. */
export const orNothing = (all: readonly Said[]): readonly Said[] =>
  all.every(({ level, unseen }) => unseen && level === "note")
    ? [{ level: "note", words: [NOTHING, ...all.map(({ words }) => words)].join(" "), unseen: false }]
    : all;

/** A line of level and words for each rule that speaks, gravest first; one that says so if nothing was found. */
export const checkRows = <Measure extends string>(
  rules: readonly Rule<Measure>[],
  measured: Readonly<Record<Measure, Measured>>,
  system?: System,
): readonly (readonly [Level, string])[] =>
  orNothing(sayings(rules, measured, system)).map(({ level, words }) => [level, words]);
