import { serial } from "../../../functions/dates";
import { mealCheck } from "../../../functions/feeding/mealCheck";
import { preyItems } from "../../../functions/feeding/preyItems";
import { mealRules, type Measure } from "../../../functions/rules/meal";
import { NOTHING } from "../../../functions/rules/rule";
import { call, callCell, down } from "../../call";
import { bothSides } from "../rules/bothSides";
import { practicePlan } from "../winter/plans";

const [LAST, , , , , FIRST] = practicePlan as [number, number, number, number, number, number];
const SUMMER = serial(2028, 7, 1);

interface Meal {
  date: number;
  body: number;
  meal: number;
  item: number;
  plan: unknown;
  last: number | null;
  least: number | null;
  nights: number | null;
  weighed: number | null;
  mealRatio: number | null;
  itemRatio: number | null;
  leastItem: number | null;
}
/** A meal in summer of a tenth of the body in three items. */
const sound: Meal = {
  date: SUMMER,
  body: 240,
  meal: 24,
  item: 8,
  plan: down(practicePlan),
  last: SUMMER - 7,
  least: 5,
  nights: 18,
  weighed: SUMMER - 20,
  mealRatio: null,
  itemRatio: null,
  leastItem: null,
};
const check = (changes: Partial<Meal> = {}, units = "metric"): [level: string, words: string] => {
  const one = { ...sound, ...changes };
  return call(
    mealCheck,
    one.date,
    one.body,
    one.meal,
    one.item,
    one.plan,
    one.last,
    one.least,
    one.nights,
    units,
    one.weighed,
    one.mealRatio,
    one.itemRatio,
    one.leastItem,
  )[0] as [string, string];
};
/** On a day after the cold: one item of a fortieth of the body. */
const after = (date: number, changes: Partial<Meal> = {}) =>
  check({ date, last: LAST, weighed: date, meal: 6, item: 6, ...changes });

const at: Record<Measure, (value: number) => [string, string]> = {
  fast: (value) => after(value > 0 ? FIRST - 1 : FIRST),
  firstMeal: (value) => after(FIRST, { meal: (240 * value) / 100, item: (240 * value) / 100 }),
  firstItems: (value) => after(FIRST, { meal: 3 * value, item: 3 }),
  item: (value) => check({ meal: (240 * value) / 100, item: (240 * value) / 100 }),
  meal: (value) => check({ meal: (240 * value) / 100 }),
  daysSince: (value) => check({ last: SUMMER - value }),
  nights: (value) => check({ nights: value }),
  weighing: (value) => check({ weighed: SUMMER - value }),
  outgrown: (value) => check({ meal: (240 * value) / 100, item: (240 * value) / 100, leastItem: 0.03 }),
};
const own: Partial<Record<Measure, number>> = { firstMeal: 5, item: 15, meal: 10, daysSince: 5, outgrown: 3 };

// common practice, no source, but for the keeper's own least days
bothSides({
  rules: mealRules,
  agreed: [
    ["fast", "over", 0, "stop"],
    ["firstMeal", "over", "own", "stop"],
    ["nights", "under", 10, "stop"],
    ["item", "over", 100, "stop"],
    ["item", "over", "own", "care"],
    ["meal", "over", "own", "care"],
    ["firstItems", "over", 1, "care"],
    ["daysSince", "under", "own", "care"],
    ["nights", "under", 15, "care"],
    ["weighing", "over", 60, "care"],
    ["outgrown", "under", "own", "note"],
  ],
  ask: (of, limit, nudge) => {
    const [level, words] = at[of]((limit === "own" ? (own[of] as number) : limit) + nudge);
    return words.split(/(?<=\)\.) /).map((line) => [level, line]);
  },
  step: (of) => (["item", "meal", "firstMeal", "nights", "outgrown"].includes(of) ? 0.01 : 1),
});

test("a sound meal: nothing stands out", () => {
  expect(check()).toEqual(["note", NOTHING]);
  expect(after(FIRST)).toEqual(["note", NOTHING]);
});

test("prey is outgrown below the keeper's own share, but not on the days on which a meal is to be small", () => {
  const tiny = { meal: 6, item: 2, leastItem: 0.04 };
  expect(check(tiny)[1]).toMatch(/^An item of 0\.83 % of the body: below 4 % its size is outgrown/);
  expect(check({ ...tiny, leastItem: null })).toEqual(["note", NOTHING]);
  for (const date of [LAST, FIRST, FIRST + 13]) expect(after(date, { ...tiny, last: null })[1]).not.toMatch(/outgrown/);
  expect(after(FIRST + 14, { ...tiny, last: null })[1]).toMatch(/outgrown/);
});

test("every day of the fast is a stop, the days of the two meals are none", () => {
  for (let date = LAST + 1; date < FIRST; date++) expect(after(date)[0]).toBe("stop");
  for (const date of [LAST, FIRST]) expect(after(date, { last: LAST - 7, weighed: LAST - 1 })[1]).not.toContain("fast");
});

test("a meal of 20 % on the first day after the winter is a stop; two weeks later it is a large meal", () => {
  const big = { meal: 48, item: 24, weighed: FIRST };
  expect(after(FIRST, big)).toEqual([
    "stop",
    expect.stringMatching(/^First meals after the cold, 20 % of the body: at most half the usual, 5 %.*one small item/),
  ]);
  expect(after(FIRST + 13, big)[0]).toBe("stop");
  expect(after(FIRST + 14, { ...big, last: FIRST })[0]).toBe("care");
  // It may not have eaten since the autumn, however late it is.
  for (const last of [LAST, FIRST - 1]) expect(after(FIRST + 60, { ...big, last })[0]).toBe("stop");
});

test("one item that PREYITEMS gives is judged as an item, and passes up to the item's share", () => {
  expect(callCell(preyItems, 240, 30, 0.1)).toBe(1);
  expect(check({ meal: 30, item: 30 })).toEqual(["note", NOTHING]);
  expect(check({ meal: 30, item: 15 })[0]).toBe("care");
  expect(check({ meal: 40, item: 40 })[1]).toMatch(/^An item of 16\.67 % of the body: more than 15 %/);
});

test("the keeper's own shares stand in for practice", () => {
  expect(check({ meal: 36, item: 12, mealRatio: 0.15 })).toEqual(["note", NOTHING]);
  expect(check({ meal: 20, item: 20, itemRatio: 0.08 })[0]).toBe("care");
  expect(after(FIRST, { meal: 8, item: 8, mealRatio: 0.06 })[0]).toBe("stop");
});

test("what was not given is told, and is no finding", () => {
  expect(check({ plan: null, last: null, least: null, nights: null, weighed: null })).toEqual([
    "note",
    `${NOTHING} No winter plan was given: a fast was not looked for. Nights were not given and not checked. ` +
      "Last meal or least days between meals were not given and not checked. When the body was weighed was not given.",
  ]);
  const found = check({ meal: 30, item: 15, nights: null });
  expect(found).toEqual([
    "care",
    expect.stringMatching(/^A meal of 12\.5 % .* Nights were not given and not checked\.$/),
  ]);
});

test("down a log each meal has its line", () => {
  const lines = call(mealCheck, down([SUMMER, FIRST - 1]), 240, 24, 8, down(practicePlan));
  expect(lines.map(([level]) => level)).toEqual(["note", "stop"]);
});

test("what cannot be", () => {
  expect(check({ item: 30 })[0]).toBe("#VALUE! itemMass holds 30 g, above mealMass 24 g: are they swapped?");
  expect(check({ last: SUMMER + 1 })[0]).toMatch(/^#VALUE! lastMeal holds 2028-07-02, after the meal on 2028-07-01/);
  expect(check({ weighed: SUMMER + 1 })[0]).toMatch(/^#VALUE! weighedOn holds/);
  expect(check({ plan: down([...practicePlan].reverse()) })[0]).toMatch(/^#VALUE! plan holds Cooling starts/);
});

test("shares count to a millionth of a per cent: what lies nearer to a limit is at it, and one item is not two", () => {
  expect(check({ meal: 24.000001, item: 8 })).toEqual(["note", NOTHING]); // 10.0000004 %
  expect(check({ meal: 24.00001, item: 8 })[1]).toMatch(/^A meal of 10\.000004 % of the body: more than 10 %/);
  expect(after(FIRST, { meal: 6.000001, item: 6 })).toEqual(["note", NOTHING]); // 1.0000002 items
  expect(after(FIRST, { meal: 6.00001, item: 6 })[1]).toMatch(/one small item, not several/);
});
