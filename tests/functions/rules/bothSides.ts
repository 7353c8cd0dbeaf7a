import type { Level, Rule } from "../../../functions/rules/rule";

/** A rule as it was agreed: what it looks at, its side, its limit ("own" is the keeper's) and its level. */
export type Agreed<M extends string> = readonly [of: M, side: "under" | "over", limit: number | "own", level: Level];

interface Sides<M extends string> {
  readonly rules: readonly Rule<M>[];
  /** The rules once more, written down apart from the table: a limit or a level that is changed there fails here. */
  readonly agreed: readonly Agreed<M>[];
  /** The lines that are answered where the figure has this value; `own` stands for the keeper's limit. */
  readonly ask: (of: M, value: number | "own", nudge: number) => readonly (readonly [level: string, words: string])[];
  /** How near past the limit; a day, a hundredth of a degree. */
  readonly step: (of: M) => number;
}

/** The words of a rule up to its first figure, and after them, so that a line is known for its rule's. */
const pattern = ({ words }: Rule): RegExp =>
  new RegExp(`^${words.replace(/[.*+?^$()|[\]\\]/g, "\\$&").replace(/\{[^}]*\}/g, ".*")} \\(`);

/** Both sides of every limit: just past it the rule speaks at its level, and at it, or on the safe side, it does not. */
export const bothSides = <M extends string>({ rules, agreed, ask, step }: Sides<M>): void => {
  test("the rules are those that were agreed", () =>
    expect(
      rules.map(({ of, under, over, level }) => [of, under === undefined ? "over" : "under", under ?? over, level]),
    ).toEqual(agreed));

  test("gravest first, and of one figure too", () => {
    const gravity = rules.map(({ level }) => ["stop", "care", "note"].indexOf(level));
    expect(gravity).toEqual([...gravity].sort());
  });

  test.each(
    rules.map(
      (rule) => [`${rule.of} ${rule.under === undefined ? "over" : "under"} ${rule.under ?? rule.over}`, rule] as const,
    ),
  )("%s", (_, rule) => {
    const limit = rule.under ?? rule.over;
    const past = (rule.under === undefined ? 1 : -1) * step(rule.of);
    const lines = (nudge: number) => ask(rule.of, limit, nudge).filter(([, words]) => pattern(rule).test(words));
    expect(lines(past)).toEqual([[rule.level, expect.any(String)]]);
    expect(lines(past)[0]?.[1]).not.toMatch(/\{|undefined|NaN/);
    expect(lines(0)).toEqual([]);
    expect(lines(-past)).toEqual([]);
  });
};
