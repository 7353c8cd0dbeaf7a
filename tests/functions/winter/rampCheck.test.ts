import fc from "fast-check";
import { serial } from "../../../functions/dates";
import { sources } from "../../../functions/sources";
import { rampCheck } from "../../../functions/winter/rampCheck";
import { PLAN_ROWS } from "../../../functions/shared/plan";
import { rampRules, type Measure } from "../../../functions/rules/winterPlan";
import { call, callCell, down } from "../../call";
import { bothSides } from "../rules/bothSides";
import { anyDay, anyLengths, datesFrom, PRACTICE, practicePlan } from "./plans";

type Row = readonly [level: string, words: string];
/** With the animal's own limits given, where they do not matter to the case. */
const check = (plan: unknown, warm: unknown, cold: unknown, meals?: unknown, units: "metric" | "imperial" = "metric") =>
  call(rampCheck, plan, warm, cold, meals, units, ...(units === "metric" ? [-20, 40] : [-4, 104])) as unknown as Row[];
const UNSEEN: Row = ["note", "Meals were not given and not checked."];
/** The levels of what fired: the last row says that no meals were given. */
const levels = (rows: readonly Row[]) => rows.filter(([, words]) => words !== UNSEEN[1]).map(([level]) => level);
const NOTHING: Row = ["note", "Nothing stands out. This is no veterinary check."];
const NO_MEALS: Row = [
  "note",
  "Nothing stands out. This is no veterinary check. Meals were not given and not checked.",
];
const START = serial(2027, 9, 20);

/** The practice winter with some of its lengths changed: [clear, cool, cold, warm, settle]. */
const winter = (changes: Partial<Record<0 | 1 | 2 | 3 | 4, number>>) =>
  down(datesFrom(START, PRACTICE.map((length, i) => changes[i as 0] ?? length) as unknown as typeof PRACTICE));

describe("practice passes: common practice, no source", () => {
  const month = [28, 31, 42]; // a month to six weeks of cooling
  const cold = [70, 84, 98]; // ten to fourteen weeks
  test.each(
    month.flatMap((cool) => cold.flatMap((weeks) => [4, 5, 8, 9.9].map((degrees) => [cool, weeks, degrees] as const))),
  )("%i days of cooling, %i days of cold at %s °C, six weeks of warming, no food", (cool, weeks, degrees) =>
    expect(check(winter({ 1: cool, 2: weeks }), 24, degrees, null)).toEqual([NO_MEALS]),
  );

  test("one meal inside the fast makes the same plan a stop", () => {
    for (let day = START + 1; day < (practicePlan[5] as number); day++) {
      const rows = check(down(practicePlan), 24, 8, down([START, day, practicePlan[5]]));
      expect(levels(rows)).toEqual(["stop"]);
      expect(rows[0]?.[1]).toMatch(
        /^Food inside the fast, 1 meal on \d{4}-\d\d-\d\d: .*\(common practice, no source\)\.$/,
      );
    }
  });

  test("meals before, on the two days themselves and after are none", () => {
    const meals = down([START - 7, START, null, practicePlan[5], (practicePlan[5] as number) + 7]);
    expect(check(down(practicePlan), 24, 8, meals)).toEqual([NOTHING]);
  });
});

/** What the rules look at, with one figure at a limit or a nudge past it. */
const at: Record<Measure, (value: number) => readonly [plan: unknown, warm: number, cold: number, meals?: unknown]> = {
  order: (value) => [down(practicePlan.map((day, i) => (i === 5 ? (practicePlan[4] as number) - value : day))), 24, 8],
  drop: (value) => [winter({}), 8 + value, 8],
  meals: (value) => [winter({}), 24, 8, down(value > 0 ? [START + 1] : [START])],
  clearing: (value) => [winter({ 0: value }), 24, 8],
  cooling: (value) => [winter({ 1: value }), 24, 8],
  cold: (value) => [winter({ 2: value }), 24, 8],
  warming: (value) => [winter({ 3: value }), 24, 8],
  settling: (value) => [winter({ 4: value }), 24, 8],
  warm: (value) => [winter({}), value, 8],
  temperature: (value) => [winter({}), 24, value],
  tooWarm: (value) => [winter({}), value, 8],
  tooCold: (value) => [winter({}), 24, value],
};

// common practice, no source, but for what is by definition or the keeper's own
bothSides({
  rules: rampRules,
  agreed: [
    ["order", "over", 0, "stop"],
    ["drop", "under", 1, "stop"],
    ["meals", "over", 0, "stop"],
    ["clearing", "under", 14, "stop"],
    ["cooling", "under", 28, "stop"],
    ["warming", "under", 14, "stop"],
    ["temperature", "under", 2, "stop"],
    ["tooCold", "under", "own", "stop"],
    ["tooWarm", "over", "own", "stop"],
    ["warm", "over", 30, "stop"],
    ["warm", "under", 15, "stop"],
    ["cold", "over", 240, "stop"],
    ["warming", "under", 28, "care"],
    ["settling", "under", 7, "care"],
    ["temperature", "under", 4, "care"],
    ["temperature", "over", 10, "care"],
    ["warm", "under", 20, "care"],
    ["cold", "over", 165, "care"],
    ["cold", "under", 70, "note"],
    ["cold", "over", 98, "note"],
  ],
  ask: (of, limit, nudge) => {
    // The animal's own: too cold below 6 °C, too warm above 26 °C.
    const own = { tooCold: 6, tooWarm: 26 };
    const value = (limit === "own" ? own[of as "tooCold"] : limit) + nudge;
    const [plan, warm, cold, meals] = at[of](value);
    const limits = limit === "own" ? [own.tooCold, own.tooWarm] : [-20, 40];
    return call(rampCheck, plan, warm, cold, meals, "metric", ...limits) as unknown as Row[];
  },
  step: (of) => (["drop", "warm", "temperature", "tooWarm", "tooCold"].includes(of) ? 0.01 : 1),
});

test("a sound plan of a sound animal: nothing stands out, and what was not given is told", () => {
  const limits = ["metric", 4, 28];
  expect(call(rampCheck, winter({}), 24, 8, down([START]), ...limits)).toEqual([NOTHING]);
  expect(call(rampCheck, winter({}), 24, 8)).toEqual([
    [
      "note",
      `${NOTHING[1]} Meals were not given and not checked. Too cold for this animal was not given and not checked. Too warm for this animal was not given and not checked.`,
    ],
  ]);
});

test("a rule fires on every value past its limit: 0 to 13 days of clearing, 1 to 27 of cooling and of warming", () => {
  for (let days = 0; days < 14; days++) expect(levels(check(winter({ 0: days }), 24, 8))).toEqual(["stop"]);
  for (let days = 0; days < 28; days++) expect(levels(check(winter({ 1: days }), 24, 8))).toEqual(["stop"]);
  for (let days = 0; days < 28; days++)
    expect(levels(check(winter({ 3: days }), 24, 8))).toEqual([days < 14 ? "stop" : "care"]);
  expect(check(winter({ 0: 1 }), 24, 8)[0]?.[1]).toMatch(/^1 day at normal temperature/);
});

test("no stop is ever silent: each one is found whatever else is wrong", () => {
  fc.assert(
    fc.property(
      anyDay,
      anyLengths,
      fc.double({ min: -10, max: 40, noNaN: true }),
      fc.double({ min: -10, max: 40, noNaN: true }),
      fc.array(fc.integer({ min: -30, max: 400 }), { maxLength: 5 }),
      (lastMeal, lengths, warm, cold, meals) => {
        const dates = datesFrom(lastMeal, lengths);
        const rows = check(down(dates), warm, cold, meals.length > 0 ? down(meals.map((day) => lastMeal + day)) : null);
        const fast = (dates[5] as number) - lastMeal;
        const stops = [
          warm - cold < 1,
          meals.some((day) => day > 0 && day < fast),
          lengths[0] < 14,
          lengths[1] < 28,
          lengths[3] < 14,
          cold < 2,
          warm < 15 || warm > 30,
        ];
        const cares = [
          lengths[3] >= 14 && lengths[3] < 28,
          lengths[4] < 7,
          (cold >= 2 && cold < 4) || cold > 10,
          warm >= 15 && warm < 20,
          lengths[2] > 165,
        ];
        expect(levels(rows).filter((level) => level === "stop")).toHaveLength(stops.filter(Boolean).length);
        expect(levels(rows).filter((level) => level === "care")).toHaveLength(cares.filter(Boolean).length);
      },
    ),
  );
});

test("any two dates swapped are a stop, and a meal between them is still seen", () => {
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < i; j++) {
      const swapped = practicePlan.map((_, row) => practicePlan[row === i ? j : row === j ? i : row]);
      const rows = check(down(swapped), 24, 8, down([START + 100]));
      expect(rows[0]).toEqual(["stop", expect.stringMatching(/^Dates out of order: /)]);
      expect(rows.some(([level, words]) => level === "stop" && words.startsWith("Food inside the fast"))).toBe(true);
      expect(rows.map(([, words]) => words).join()).not.toMatch(/-\d+ days/); // a leg turned round has no length
    }
  }
});

test("a date before the one above it is told, though it is after all others above", () => {
  for (let row = 2; row < 6; row++) {
    const before = practicePlan[row - 1] as number;
    const dates = practicePlan.map((day, i) => (i === row ? before - 1 : day));
    const [first] = check(down(dates), 24, 8);
    expect(first?.[1]).toMatch(
      new RegExp(`^Dates out of order: ${PLAN_ROWS[row]} is before ${PLAN_ROWS[row - 1]}( \\(|;)`),
    );
  }
});

test("several meals are counted, the first is named", () => {
  const rows = check(down(practicePlan), 24, 8, down([START + 30, START + 20, START + 400]));
  expect(rows[0]?.[1]).toMatch(/^Food inside the fast, 2 meals, the first on 2027-10-10:/);
});

test("no line claims to be a veterinary check, and what has been measured names a source that was read", () => {
  for (const { words, known } of rampRules) {
    expect(words).not.toMatch(/veterinar|safe/);
    if (known) expect(sources[known.source].status).toBe("published");
  }
  expect(check(winter({ 2: 69 }), 24, 8)[0]?.[1]).toMatch(/\(source: Bona-Gallo & Licht \(1983\)\)\.$/);
  expect(check(winter({ 2: 166 }), 24, 8)[0]?.[1]).toMatch(/\(source: Costanzo \(1985\)\)\.$/);
});

test("in °F the limits are told in °F, a difference as a difference", () => {
  expect(check(winter({}), 75, 52, null, "imperial")[0]?.[1]).toMatch(/^Cold of 52 °F: above 50 °F/);
  expect(check(winter({}), 70.5, 70, null, "imperial")[0]?.[1]).toMatch(/^Warm lies 0\.5 °F above cold/);
  expect(check(winter({}), 75, 50, null, "imperial")).toEqual([NO_MEALS]);
  // The limits themselves, whose conversion must not put them past themselves.
  for (const cold of [39.2, 50]) expect(check(winter({}), 75, cold, null, "imperial")).toEqual([NO_MEALS]);
  for (const warm of [68, 86]) expect(check(winter({}), warm, 50, null, "imperial")).toEqual([NO_MEALS]);
  for (let cold = 35.6; cold < 50; cold += 0.1) {
    const rows = check(winter({}), cold + 1.8, cold, null, "imperial");
    expect(rows.map(([, words]) => words).join()).not.toMatch(/Warm lies/);
  }
});

test("in °F no word is left in °C: what was measured is told in °F as well", () => {
  const everything = [
    ...check(winter({ 2: 69 }), 75, 55, null, "imperial"),
    ...check(winter({ 2: 99 }), 75, 50, null, "imperial"),
    ...check(winter({}), 33, 33, null, "imperial"),
  ].map(([, words]) => words);
  expect(everything.join(" ")).not.toMatch(/°C|\d K\b|\{/);
  expect(everything[0]).toMatch(/after 16 weeks or more at 39\.2 °F, not after 20 weeks at 62\.6 °F/);
  expect(check(winter({ 2: 99 }), 24, 8)[0]?.[1]).toMatch(/kept at 4 °C for 165 days/);
});

test.each<[number, number, "metric" | "imperial", RegExp]>([
  [24, 1.999, "metric", /^Cold of 1\.999 °C: stay at 2 °C or above/],
  [24, 10.001, "metric", /^Cold of 10\.001 °C: above 10 °C/],
  [8.9999, 8, "metric", /^Warm lies 0\.9999 K above cold/],
  [75, 35.599, "imperial", /^Cold of 35\.599 °F: stay at 35\.6 °F or above/],
])("a figure just past its limit never reads like the limit: warm %s, cold %s, %s", (warm, cold, units, words) =>
  expect(check(winter({}), warm, cold, null, units)[0]?.[1]).toMatch(words),
);

test("meals left out, or a column of blanks, were not looked at, and the answer says so", () => {
  for (const meals of [null, undefined, "", down([null, ""])])
    expect(check(winter({}), 24, 8, meals)).toEqual([NO_MEALS]);
  expect(check(winter({}), 24, 8, down([START]))).toEqual([NOTHING]);
});

test.each<[string, unknown[], string]>([
  [
    "a date left out",
    [down(practicePlan.map((day, i) => (i === 5 ? null : day))), 24, 8],
    "#N/A row 6 of plan is blank",
  ],
  ["a blank temperature", [down(practicePlan), 24, null], "#N/A cold is blank"],
  [
    "a meal that is no date",
    [down(practicePlan), 24, 8, down(["last week"])],
    "#VALUE! row 1 of meals holds 'last week': give a real date, or 2026-10-05",
  ],
])("%s is told", (_, given, message) => expect(callCell(rampCheck, ...given)).toBe(message));
