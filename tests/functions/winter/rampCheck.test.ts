import fc from "fast-check";
import { serial } from "../../../functions/dates";
import { sources } from "../../../functions/sources";
import { rampCheck } from "../../../functions/winter/rampCheck";
import { rampRules, type Measure } from "../../../functions/winter/shared/rampRules";
import { call, callCell, down } from "../../call";
import { anyDay, anyLengths, datesFrom, PRACTICE, practicePlan } from "./plans";

type Row = readonly [level: string, words: string];
const check = (...given: unknown[]) => call(rampCheck, ...given) as unknown as Row[];
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
    month.flatMap((cool) =>
      cold.flatMap((weeks) => [2.5, 5, 8, 9.9].map((degrees) => [cool, weeks, degrees] as const)),
    ),
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

/**
 * Every rule once more, as it was agreed: what fires just past its limit, and the limit itself, which does not. A rule
 * without a case, or with another limit or level, fails the test below.
 */
const cases: readonly {
  of: Measure;
  limit: number;
  level: string;
  fires: unknown[];
  passes: unknown[];
  says: RegExp;
}[] = [
  {
    of: "order",
    limit: 0,
    level: "stop",
    fires: [down(practicePlan.map((day, i) => (i === 5 ? (practicePlan[4] as number) - 1 : day))), 24, 8],
    passes: [winter({ 4: 0 }), 24, 8],
    says: /^Dates out of order: First meal is before Warm again \(by definition\)\.$/,
  },
  {
    of: "drop",
    limit: 1,
    level: "stop",
    fires: [winter({}), 8.9, 8],
    passes: [winter({}), 9, 8],
    says: /^Warm lies 0\.9 K above cold/,
  },
  {
    of: "meals",
    limit: 0,
    level: "stop",
    fires: [winter({}), 24, 8, down([START + 1])],
    passes: [winter({}), 24, 8, down([START])],
    says: /^Food inside the fast, 1 meal on 2027-09-21/,
  },
  {
    of: "clearing",
    limit: 14,
    level: "stop",
    fires: [winter({ 0: 13 }), 24, 8],
    passes: [winter({ 0: 14 }), 24, 8],
    says: /^13 days at normal temperature.*14 days or more/,
  },
  {
    of: "cooling",
    limit: 28,
    level: "stop",
    fires: [winter({ 1: 27 }), 24, 8],
    passes: [winter({ 1: 28 }), 24, 8],
    says: /^Cooled within 27 days: take 28 days or more/,
  },
  {
    of: "temperature",
    limit: 2,
    level: "stop",
    fires: [winter({}), 24, 1.99],
    passes: [winter({}), 24, 2],
    says: /^Cold of 1\.99 °C: stay at 2 °C or above/,
  },
  {
    of: "warming",
    limit: 28,
    level: "care",
    fires: [winter({ 3: 27 }), 24, 8],
    passes: [winter({ 3: 28 }), 24, 8],
    says: /^Warmed within 27 days: take 28 days or more/,
  },
  {
    of: "temperature",
    limit: 10,
    level: "care",
    fires: [winter({}), 24, 10.01],
    passes: [winter({}), 24, 10],
    says: /^Cold of 10\.01 °C: above 10 °C/,
  },
  {
    of: "cold",
    limit: 70,
    level: "note",
    fires: [winter({ 2: 69 }), 24, 8],
    passes: [winter({ 2: 70 }), 24, 8],
    says: /^69 days in the cold: 70 days or more are usual/,
  },
  {
    of: "cold",
    limit: 98,
    level: "note",
    fires: [winter({ 2: 99 }), 24, 8],
    passes: [winter({ 2: 98 }), 24, 8],
    says: /^99 days in the cold: up to 98 days are usual/,
  },
];

test("the rules are those of the cases, gravest first", () => {
  expect(rampRules.map(({ of, under, over, level }) => [of, under ?? over, level])).toEqual(
    cases.map(({ of, limit, level }) => [of, limit, level]),
  );
  const gravity = rampRules.map(({ level }) => ["stop", "care", "note"].indexOf(level));
  expect(gravity).toEqual([...gravity].sort());
  // One limit each, so that a rule cannot fire on both sides.
  expect(rampRules.every(({ under, over }) => (under === undefined) !== (over === undefined))).toBe(true);
});

test.each(cases)("$of, $limit: $level just past the limit, nothing at it", ({ of, level, fires, passes, says }) => {
  const rows = check(...fires);
  expect(levels(rows)).toEqual([level]);
  expect(rows[0]?.[1]).toMatch(says);
  expect(rows.slice(1)).toEqual(of === "meals" ? [] : [UNSEEN]);
  expect(check(...passes)).toEqual([of === "meals" ? NOTHING : NO_MEALS]);
});

test("a rule fires on every value past its limit: 0 to 13 days of clearing, 1 to 27 of cooling and of warming", () => {
  for (let days = 0; days < 14; days++) expect(levels(check(winter({ 0: days }), 24, 8))).toEqual(["stop"]);
  for (let days = 0; days < 28; days++) expect(levels(check(winter({ 1: days }), 24, 8))).toEqual(["stop"]);
  for (let days = 0; days < 28; days++) expect(levels(check(winter({ 3: days }), 24, 8))).toEqual(["care"]);
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
          cold < 2,
        ];
        const cares = [lengths[3] < 28, cold > 10];
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

test("several meals are counted, the first is named", () => {
  const rows = check(down(practicePlan), 24, 8, down([START + 30, START + 20, START + 400]));
  expect(rows[0]?.[1]).toMatch(/^Food inside the fast, 2 meals, the first on 2027-10-10:/);
});

test("each line says whether it is practice or sourced, and no line claims to be a veterinary check", () => {
  const everything = cases.flatMap(({ fires }) => check(...fires).slice(0, 1));
  for (const [, words] of everything) {
    expect(words).toMatch(/\((by definition|common practice, no source)\)\./);
    expect(words).not.toMatch(/\{|veterinar|safe/);
  }
  const known = everything.filter(([, words]) => words.includes("source: "));
  expect(known.map(([, words]) => /\(source: ([^)]*\))\)/.exec(words)?.[1])).toEqual([
    "Bona-Gallo & Licht (1983)",
    "Bona-Gallo & Licht (1983)",
    "Costanzo (1985)",
  ]);
  for (const rule of rampRules) if (rule.known) expect(sources[rule.known.source].status).toBe("published");
});

test("in °F the limits are told in °F, a difference as a difference", () => {
  expect(check(winter({}), 75, 52, null, "imperial")[0]?.[1]).toMatch(/^Cold of 52 °F: above 50 °F/);
  expect(check(winter({}), 47, 46, null, "imperial")[0]?.[1]).toMatch(/^Warm lies 1 °F above cold/);
  expect(check(winter({}), 75, 50, null, "imperial")).toEqual([NO_MEALS]);
  // The limits themselves, whose conversion must not put them past themselves.
  for (const cold of [35.6, 50]) expect(check(winter({}), 75, cold, null, "imperial")).toEqual([NO_MEALS]);
  for (let cold = 35.6; cold < 50; cold += 0.1) {
    expect(check(winter({}), cold + 1.8, cold, null, "imperial")).toEqual([NO_MEALS]);
  }
});

test("in °F no word is left in °C: what was measured is told in °F as well", () => {
  const everything = [
    ...check(winter({ 2: 69 }), 75, 55, null, "imperial"),
    ...check(winter({ 2: 99 }), 75, 50, null, "imperial"),
    ...check(winter({}), 33, 33, null, "imperial"),
  ].map(([, words]) => words);
  expect(everything).toHaveLength(8); // five that fire, and three times that no meals were given
  expect(everything.join(" ")).not.toMatch(/°C|\d K\b|\{/);
  expect(everything[0]).toMatch(/after 16 weeks or more at 39\.2 °F, not after 20 weeks at 62\.6 °F/);
  expect(check(winter({ 2: 99 }), 24, 8)[0]?.[1]).toMatch(/kept at 4 °C for 165 days/);
});

test.each([
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
    "#VALUE! row 1 of meals holds 'last week': give a date from 1900-03-01 to 9999-12-31",
  ],
])("%s is told", (_, given, message) => expect(callCell(rampCheck, ...given)).toBe(message));
