import { sources, type SourceKey } from "../sources";
import type { System, Unit } from "../units";
import { figure, figures } from "./figure";

/** "stop": do not go on like this. "care": know why you do it. "note": good to know. */
export type Level = "stop" | "care" | "note";

/**
 * One line of a check. It fires when the figure that it is `of` lies below `under` or above `over`, not at the limit
 * itself. In the words, {is} is the figure and {limit} the limit.
 */
export interface Rule<Measure extends string> {
  readonly of: Measure;
  readonly under?: number;
  readonly over?: number;
  readonly level: Level;
  readonly words: string;
  readonly source: SourceKey;
  /** What has been measured on the matter, and where; it sets no limit here. In the words, {4} is 4 °C. */
  readonly known?: { readonly words: string; readonly source: SourceKey };
}

/** A figure that rules look at, and how it is told where the bare figure says too little; undefined where there is none. */
export interface Measured {
  readonly value: number | undefined;
  readonly unit: Unit;
  readonly told?: string;
}

/** What is answered when no rule fires. */
export const NOTHING = "Nothing stands out. This is no veterinary check.";

const fires = ({ under, over }: Rule<string>, value: number): boolean =>
  value < (under ?? -Infinity) || value > (over ?? Infinity);

/** How a source is named at the end of a sentence: "source: Costanzo (1985)", or "common practice, no source". */
const named = (key: SourceKey): string => {
  const { status, text } = sources[key];
  const bare = text.slice(0, -1); // without its full stop
  return status === "practice" || status === "definition"
    ? bare.charAt(0).toLowerCase() + bare.slice(1)
    : `${status === "recalled" ? "recalled" : "source"}: ${/.*?\(\d{4}\)/.exec(bare)?.[0] ?? bare}`;
};

const limitOf = ({ under, over }: Rule<string>): number => under ?? over ?? 0;

/** The words with their temperatures in the system of the call: "{4}" is told as "4 °C", or as "39.2 °F". */
const inSystem = (words: string, system: System): string =>
  words.replace(/\{(\d+)\}/g, (_, celsius: string) => figure(Number(celsius), "celsius", system));

const days = (value: number): string => (value === 1 ? "1 day" : `${value} days`);

const line = (rule: Rule<string>, { value = 0, unit, told }: Measured, system: System): string => {
  const [is, limit] =
    unit === "day" ? [days(value), days(limitOf(rule))] : figures([value, limitOf(rule)], unit, system);
  const words = rule.words.replace("{is}", told ?? is).replace("{limit}", limit);
  const known = rule.known ? ` ${inSystem(rule.known.words, system)} (${named(rule.known.source)}).` : "";
  return `${words} (${named(rule.source)}).${known}`;
};

/**
 * A row of level and words for each rule that fires, in the order of the rules; one row that says so if none does. What
 * was `unseen` is told either way.
 */
export const checkRows = <Measure extends string>(
  rules: readonly Rule<Measure>[],
  measured: Readonly<Record<Measure, Measured>>,
  system: System = "metric",
  unseen = "",
): (readonly [Level, string])[] => {
  const rows = rules.flatMap((rule): (readonly [Level, string])[] => {
    const { value } = measured[rule.of];
    return value !== undefined && fires(rule, value) ? [[rule.level, line(rule, measured[rule.of], system)]] : [];
  });
  if (rows.length === 0) return [["note", unseen ? `${NOTHING} ${unseen}` : NOTHING]];
  return unseen ? [...rows, ["note", unseen]] : rows;
};
