import { serialOfIso } from "../../../functions/dates";
import fc from "fast-check";
import { RRule, RRuleSet } from "rrule";
import { isoOf } from "../../../functions/dates";
import { mealCount } from "../../../functions/feeding/mealCount";
import { mealDates } from "../../../functions/feeding/mealDates";
import { nextMeal } from "../../../functions/feeding/nextMeal";
import { call, callCell, down } from "../../call";
import { anyPlan, insideFastOf, practicePlan } from "./plans";
import { yardstick, type Pair } from "../../yardstick";

const dates = (...given: unknown[]) =>
  call(mealDates, ...given).map(([day]) => (typeof day === "number" ? isoOf(day) : day));

// common practice, no source: adults every 7 days, young every 5
test("adults every 7 days, young every 5, both ends included", () => {
  expect(dates("2026-06-01", "2026-06-15", 7)).toEqual(["2026-06-01", "2026-06-08", "2026-06-15"]);
  expect(dates("2026-06-01", "2026-06-15", 5)).toEqual(["2026-06-01", "2026-06-06", "2026-06-11"]);
  expect(dates("2026-06-01", "2026-06-01", 7)).toEqual(["2026-06-01"]);
});

test("the fast is left out, and the count starts again at the first meal", () => {
  expect(dates("2026-09-07", "2027-04-12", 7, practicePlan)).toEqual([
    "2026-09-07",
    "2026-09-14",
    "2026-09-21",
    "2027-03-29",
    "2027-04-05",
    "2027-04-12",
  ]);
  expect(dates("2026-09-08", "2027-04-12", 7, practicePlan)).toEqual([
    "2026-09-08",
    "2026-09-15",
    "2026-09-21",
    "2027-03-29",
    "2027-04-05",
    "2027-04-12",
  ]);
});

test("a meal a year later, over one whole fast, is not in the next one's", () => {
  // From the last meal 366 days on is the day after the next winter's last meal; that of the winter itself is over long before.
  expect(dates("2026-09-21", "2028-12-31", 366, practicePlan)).toEqual(["2026-09-21", "2027-09-21", "2028-09-21"]);
});

test("from and to at the edges of the fast", () => {
  expect(dates("2026-09-21", "2027-03-28", 7, practicePlan)).toEqual(["2026-09-21"]);
  expect(dates("2026-09-22", "2027-03-29", 7, practicePlan)).toEqual(["2027-03-29"]);
  expect(dates("2026-09-22", "2027-03-28", 7, practicePlan)).toEqual([
    "#N/A from 2026-09-22 to 2027-03-28 there is no meal: all of it lies in the fast",
  ]);
  expect(dates("2027-01-10", "2027-04-06", 7, practicePlan)).toEqual(["2027-03-29", "2027-04-05"]);
  expect(dates("2027-03-29", "2027-04-05", 7, practicePlan)).toEqual(["2027-03-29", "2027-04-05"]);
});

// by definition, within the year of the plan: what lies in other years is held against RFC 5545 below
test("no date in the fast, each the NEXTMEAL of the one before, and as many as MEALCOUNT says", () => {
  fc.assert(
    fc.property(
      anyPlan,
      fc.integer({ min: -100, max: 100 }),
      fc.integer({ min: 0, max: 200 }),
      fc.integer({ min: 1, max: 40 }),
      fc.boolean(),
      (plan, offset, span, interval, planned) => {
        const fasted = (plan[5] as number) - (plan[0] as number);
        fc.pre(fasted < 240 || fasted >= 365); // between them the winter before reaches into these days
        const from = (plan[0] as number) + offset;
        const given = [from, from + span, interval, planned ? down(plan) : undefined];
        const count = callCell(mealCount, ...given) as number;
        const rows = call(mealDates, ...given).flat();
        if (count === 0) {
          expect(rows[0]).toMatch(/^#N\/A from .* there is no meal/);
          expect(planned && insideFastOf(plan, from) && from + span < (plan[5] as number)).toBe(true);
          return;
        }
        const days = rows as number[];
        expect(days).toHaveLength(count);
        expect(days[0]).toBe(planned && insideFastOf(plan, from) ? plan[5] : from);
        for (const [i, day] of days.entries()) {
          expect(planned && insideFastOf(plan, day)).toBe(false);
          expect(day).toBeLessThanOrEqual(from + span);
          if (i > 0) expect(day).toBe(callCell(nextMeal, days[i - 1], interval, given[3]));
        }
        expect(callCell(nextMeal, days.at(-1), interval, given[3])).toBeGreaterThan(from + span);
      },
    ),
  );
});

test("what cannot be answered", () => {
  expect(dates("2026-06-02", "2026-06-01", 7)).toEqual([
    "#VALUE! to holds 2026-06-01: give from, 2026-06-02, or a later day",
  ]);
  expect(dates("2026-06-01", "2036-06-10", 7)).toEqual([
    "#VALUE! to holds 2036-06-10: give a day up to 2036-06-08, ten years after from",
  ]);
  expect(dates("2026-06-01", "2036-06-08", 366)).toHaveLength(11);
  expect(dates("2026-06-01", "2027-06-01", 7, [...practicePlan].reverse())[0]).toMatch(
    /^#VALUE! plan holds .* give its dates in order$/,
  );
  expect(dates("2026-06-01", null, 7)).toEqual(["#N/A to is blank"]);
  expect(dates(null, null, null)).toEqual([""]);
});

/** list(rrule(DAILY, interval=9, dtstart=2027-10-25, until=2028-03-20)) of python-dateutil 2.9.0: over a leap day. Exact. */
yardstick(mealDates, { against: "RFC 5545 recurrence by python-dateutil 2.9.0", within: 0, unit: "days" }, () => {
  const wanted = [
    "2027-10-25",
    "2027-11-03",
    "2027-11-12",
    "2027-11-21",
    "2027-11-30",
    "2027-12-09",
    "2027-12-18",
    "2027-12-27",
    "2028-01-05",
    "2028-01-14",
    "2028-01-23",
    "2028-02-01",
    "2028-02-10",
    "2028-02-19",
    "2028-02-28",
    "2028-03-08",
    "2028-03-17",
  ];
  const meals = call(mealDates, "2027-10-25", "2028-03-20", 9).flat() as number[];
  return wanted.map((day, i) => [meals[i] as number, serialOfIso(day) as number] as const);
});

/**
 * The same meals as a keeper would put them into a calendar, RFC 5545: a rule every so many days that begins again at each
 * first meal (RRULE), the plan's last meals (RDATE), and no day of a fast (EXDATE); the plan's two days come again each
 * year (YEARLY). Worked out by rrule 2.8.1, which knows nothing of this project. Four years, twenty-four plans. Exact.
 */
const calendar = (from: number, to: number, interval: number, plan: readonly number[]): readonly string[] => {
  const at = (serial: number): Date => new Date(`${isoOf(serial)}T00:00:00Z`);
  const iso = (date: Date): string => date.toISOString().slice(0, 10);
  const yearly = (day: number): Date[] =>
    new RRule({
      freq: RRule.YEARLY,
      dtstart: new Date(Date.UTC(2020, at(day).getUTCMonth(), at(day).getUTCDate())),
    }).between(at(from - 400), at(to + 400));
  const [last, first] = [plan[0] as number, plan[5] as number];
  const [lasts, firsts] = [yearly(last), yearly(first)];
  const set = new RRuleSet();
  const every = (start: Date): void => {
    const until = firsts.find((one) => one > start) ?? at(to + 400);
    set.rrule(
      new RRule({ freq: RRule.DAILY, interval, dtstart: start, until: new Date(Math.min(+until - 1, +at(to))) }),
    );
  };
  every(at(from));
  for (const start of firsts) if (start > at(from) && start <= at(to)) every(start);
  for (const end of lasts) {
    const next = firsts.find((one) => one > end) ?? at(to + 400);
    for (const day of new RRule({ freq: RRule.DAILY, dtstart: end, until: next }).between(end, next)) set.exdate(day);
    // The last meal, unless the one before it is nearer than half the days between meals.
    const before = set
      .between(at(from), end, true)
      .filter((one) => one < end)
      .at(-1);
    if (before && end <= at(to) && 2 * (+end - +before) >= interval * 86_400_000) set.rdate(end);
  }
  return set.between(at(from), at(to), true).map(iso);
};

/** Plans of one winter: fasts of 60 to 240 days; not on 29 February, which does not come each year. */
const winterPlans = fc
  .sample(
    fc.record({
      last: fc.integer({ min: 46_020, max: 46_370 }), // autumns of the north and of the south
      stages: fc.array(fc.integer({ min: 12, max: 48 }), { minLength: 5, maxLength: 5 }),
      before: fc.integer({ min: 0, max: 300 }),
      interval: fc.integer({ min: 3, max: 21 }),
    }),
    { numRuns: 24, seed: 20_261_126 },
  )
  .map(({ last, stages, before, interval }) => ({
    from: last - before,
    interval,
    plan: stages.reduce((days, length) => [...days, (days.at(-1) as number) + length], [last]),
  }));

yardstick(mealDates, { against: "RFC 5545 recurrence with EXDATE by rrule 2.8.1", within: 0, unit: "days" }, () =>
  winterPlans.flatMap(({ from, interval, plan }): Pair[] => {
    const answer = call(mealDates, from, from + 1400, interval, down(plan)).flat() as number[];
    const wanted = calendar(from, from + 1400, interval, plan);
    expect(answer.map(isoOf)).toEqual(wanted);
    return wanted.map((day, i) => [answer[i] as number, serialOfIso(day) as number]);
  }),
);
yardstick(mealCount, { against: "RFC 5545 recurrence with EXDATE by rrule 2.8.1", within: 0, unit: "meals" }, () =>
  winterPlans.flatMap(({ from, interval, plan }): Pair[] =>
    [30, 300, 800, 1400].map((span) => [
      callCell(mealCount, from, from + span, interval, down(plan)) as number,
      calendar(from, from + span, interval, plan).length,
    ]),
  ),
);
yardstick(nextMeal, { against: "RFC 5545 recurrence with EXDATE by rrule 2.8.1", within: 0, unit: "days" }, () =>
  winterPlans.flatMap(({ from, interval, plan }): Pair[] => {
    const meals = calendar(from, (plan[5] as number) + 100, interval, plan);
    return meals
      .slice(1)
      .map((day, i) => [callCell(nextMeal, meals[i], interval, down(plan)) as number, serialOfIso(day) as number]);
  }),
);

test("ten years of meals are told, and no day more", () => {
  const from = serialOfIso("2026-01-01") as number;
  expect(dates(from, from + 3660, 366)).toHaveLength(11);
  expect(dates(from, from + 3661, 366)).toEqual([expect.stringMatching(/^#VALUE! to holds .*, ten years after from$/)]);
});
