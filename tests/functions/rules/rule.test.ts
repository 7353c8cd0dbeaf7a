import { cited, type Cited } from "../../../functions/rules/cited";
import { checkRows, NOTHING, type Rule } from "../../../functions/rules/rule";
import { sources, type Source } from "../../../functions/sources";

type Changes = Partial<Rule<"warmth">> & Pick<Rule, "over"> & Pick<Rule, "under">;
const rule = { of: "warmth", level: "care", words: "It is {is}, past {limit}", source: "practice" } as const;
const ruleWith = (changes: Changes): Rule<"warmth"> => ({ ...rule, ...changes }) as Rule<"warmth">;
const check = (changes: Changes, value: number | undefined, own?: number) =>
  checkRows([ruleWith(changes)], { warmth: { value, unit: "celsius", own } });
const fires = (changes: Changes, value: number | undefined) => check(changes, value)[0]?.[1] !== NOTHING;

test.each<[string, Changes, readonly number[], readonly (number | undefined)[]]>([
  ["under 4", { under: 4 }, [3.9, -100], [4, 100, undefined]],
  ["over 15", { over: 15 }, [15.1, 100], [15, -100, undefined]],
  ["under 0", { under: 0 }, [-0.1], [0, 1]],
  ["over 0", { over: 0 }, [0.1], [0, -1]],
])("a rule for what lies %s fires there, not at its limit nor without a figure", (_, limits, past, within) => {
  expect(past.filter((value) => !fires(limits, value))).toEqual([]);
  expect(within.filter((value) => fires(limits, value))).toEqual([]);
});

test.each(Object.keys(cited) as Cited[])("%s is cited as its source says, by authors and year", (key) => {
  const { status, text }: Source = sources[key];
  const bare = text.slice(0, -1); // without its full stop
  // None of them is recalled: of one that is, the words would have to say so.
  const isNamed = status !== "practice" && status !== "definition";
  expect(status).not.toBe("recalled");
  expect(cited[key]).toBe(
    isNamed ? `source: ${/.*?\(\d{4}\)/.exec(bare)?.[0]}` : bare.charAt(0).toLowerCase() + bare.slice(1),
  );
  expect(check({ over: 15, source: key }, 16)).toEqual([["care", `It is 16 °C, past 15 °C (${cited[key]}).`]]);
});

test("a limit of the keeper's own is told as such; left blank, the blank is told", () => {
  const blank = { level: "care", words: "No limit given." } as const;
  expect(check({ over: "own", source: "ownLimit", blank }, 16, 15)).toEqual([
    ["care", "It is 16 °C, past 15 °C (your own limit)."],
  ]);
  expect(check({ over: "own", blank }, 15, 15)).toEqual([["note", NOTHING]]);
  expect(check({ over: "own", blank }, 16)).toEqual([["care", "No limit given."]]);
  expect(check({ over: "own" }, 16)).toEqual([["note", NOTHING]]);
});

test("of the rules of one figure only the first that fires is told, and a figure not given is told once", () => {
  const rules = [
    ruleWith({ over: 20, level: "stop", blank: { level: "note", words: "No warmth given." } }),
    ruleWith({ over: 15, blank: { level: "note", words: "Told twice." } }),
    ruleWith({ under: 4, level: "note" }),
  ];
  const levels = (value: number | undefined) => checkRows(rules, { warmth: { value, unit: "celsius" } });
  expect([21, 16, 10, 3].map((value) => levels(value)[0]?.[0])).toEqual(["stop", "care", "note", "note"]);
  expect(levels(21)).toHaveLength(1);
  expect(levels(undefined)).toEqual([["note", `${NOTHING} No warmth given.`]]);
});

test("gravest first, whatever the order of the rules; what was found before what was not looked at", () => {
  const both: Rule<"warmth" | "food">[] = [
    { of: "food", over: 0, level: "stop", words: "Fed", source: "practice", blank: { level: "note", words: "Food?" } },
    { of: "warmth", over: 15, level: "note", words: "Warm", source: "practice" },
  ];
  const rows = (food: number | undefined, warmth: number) =>
    checkRows(both, { food: { value: food, unit: "none" }, warmth: { value: warmth, unit: "celsius" } });
  expect(rows(undefined, 16)).toEqual([
    ["note", "Warm (common practice, no source)."],
    ["note", "Food?"],
  ]);
  expect(rows(1, 16).map(([level]) => level)).toEqual(["stop", "note"]);
  expect(
    checkRows(both.toReversed(), { food: { value: 1, unit: "none" }, warmth: { value: 16, unit: "celsius" } })[0]?.[0],
  ).toBe("stop");
});
