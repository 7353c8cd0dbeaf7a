import { serial } from "../../../functions/dates";
import { readinessRules, type Measure } from "../../../functions/rules/readiness";
import { NOTHING } from "../../../functions/rules/rule";
import { winterReady } from "../../../functions/winter/winterReady";
import { call } from "../../call";
import { bothSides } from "../rules/bothSides";

const COOLING = serial(2026, 10, 5);
type Row = readonly [level: string, words: string];
/** sex, age, mass, mass before, shedding, gravid, breathing, vet, parasites, last meal, cooling starts. */
const sound = ["female", 30, 306, 300, "no", "no", "clear", "yes", "none", COOLING - 14, COOLING] as const;
const ready = (changes: Record<number, unknown> = {}): Row[] =>
  call(winterReady, ...sound.map((value, i) => (i in changes ? changes[i] : value))) as unknown as Row[];

const word = (place: number, good: string, bad: string) => (value: number) =>
  ready({ [place]: value > 0 ? bad : good });
const at: Record<Measure, (value: number) => Row[]> = {
  shedding: word(4, "no", "yes"),
  gravid: word(5, "no", "yes"),
  breathing: word(6, "clear", "noisy"),
  unseenByVet: word(7, "yes", "no"),
  parasites: word(8, "none", "found"),
  clearing: (value) => ready({ 9: COOLING - value }),
  weight: (value) => ready({ 2: 300 * value }),
  age: (value) => ready({ 1: value }),
};

// common practice, no source
bothSides({
  rules: readinessRules,
  agreed: [
    ["breathing", "over", 0, "stop"],
    ["gravid", "over", 0, "stop"],
    ["parasites", "over", 0, "stop"],
    ["shedding", "over", 0, "stop"],
    ["clearing", "under", 14, "stop"],
    ["weight", "under", 0.9, "stop"],
    ["weight", "under", 1, "care"],
    ["weight", "over", 5, "care"],
    ["unseenByVet", "over", 0, "care"],
    ["age", "under", 12, "care"],
  ],
  ask: (of, limit, nudge) => at[of]((limit as number) + nudge),
  step: (of) => (of === "weight" ? 0.0001 : 1),
});

test("a sound animal: nothing stands out, and it is no veterinary check", () => {
  expect(ready()).toEqual([["note", NOTHING]]);
  expect(ready({ 0: "male", 5: null })).toEqual([["note", NOTHING]]);
});

test("every blank speaks as a care: not looked at, never fine", () => {
  const asked: Record<number, RegExp> = {
    1: /^Age/,
    2: /^Mass now or before/,
    3: /^Mass now or before/,
    4: /in shed/,
    5: /gravid/,
    6: /^Breathing/,
    7: /vet/,
    8: /parasites/,
    9: /^Last meal/,
    10: /cooling starts/,
  };
  for (const [place, words] of Object.entries(asked)) {
    expect(ready({ [Number(place)]: null })).toEqual([["care", expect.stringMatching(words)]]);
    expect(ready({ [Number(place)]: null })[0]?.[1]).toMatch(/: not looked at\.$/);
  }
  expect(call(winterReady).every(([level]) => level === "care")).toBe(true);
  expect(call(winterReady)).toHaveLength(8);
  // Only a male is not asked whether he is gravid; whatever else is left out may be a female.
  for (const sex of ["female", "unknown", null]) expect(ready({ 0: sex, 5: null })).toHaveLength(1);
  expect(ready({ 0: "male", 5: "yes" })[0]?.[0]).toBe("stop");
});

test("fed after cooling starts is a stop without a negative number", () =>
  expect(ready({ 9: COOLING + 3 })[0]).toEqual([
    "stop",
    expect.stringMatching(/^No day from the last meal to cooling/),
  ]));

test("fed on the day on which cooling starts: no days, and a day before it, one", () => {
  expect(ready({ 9: COOLING })[0]?.[1]).toMatch(/^0 days from the last meal to cooling/);
  expect(ready({ 9: COOLING + 1 })[0]?.[1]).toMatch(/^No day from the last meal to cooling/);
  expect(ready({ 9: COOLING - 1 })[0]?.[1]).toMatch(/^1 day from the last meal to cooling/);
});

test("a share just below the mass before never reads as 100 %", () =>
  expect(ready({ 2: 299.999 })[0]?.[1]).toMatch(/^Only 99\.9997 % of its mass before/));

test("a word that means two things is not taken", () => {
  expect(ready({ 6: "yes" })[0]?.[0]).toMatch(/^#VALUE! breathing holds 'yes': give "clear" or "noisy"/);
  expect(ready({ 8: "no" })[0]?.[0]).toMatch(/^#VALUE! parasites holds 'no': give "none" or "found"/);
});
