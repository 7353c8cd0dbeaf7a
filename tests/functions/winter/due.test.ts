import fc from "fast-check";
import { isoOf, serial } from "../../../functions/dates";
import { nextMeal } from "../../../functions/feeding/nextMeal";
import { care } from "../../../functions/rules/stages";
import { due } from "../../../functions/winter/due";
import { stage } from "../../../functions/winter/stage";
import { call, callCell, down } from "../../call";
import { anyDay, anyLengths, datesFrom, practicePlan } from "./plans";

const [LAST, , , , , FIRST] = practicePlan as [number, number, number, number, number, number];
type Day = readonly [stage: string, toDo: string, never: string, next: number | string, overdue: string];
const day = (...given: unknown[]): Day => call(due, ...given)[0] as unknown as Day;
/** An animal that winters by the practice plan, weighed and opened today. */
const winters = (today: number, lastMeal: unknown, interval: unknown = 7) =>
  day(today, down(practicePlan), lastMeal, interval, today, 14, today, 7, "yes");

test("in the fast no food stands first and the next meal is the plan's first, whatever was eaten when", () => {
  fc.assert(
    fc.property(
      anyDay,
      anyLengths,
      fc.option(fc.integer({ min: -400, max: 400 })),
      fc.option(fc.integer({ min: 1, max: 60 })),
      fc.constantFrom("yes", null),
      (lastMeal, lengths, eaten, interval, answer) => {
        const dates = datesFrom(lastMeal, lengths);
        const [, first] = [dates[0], dates[5] as number];
        for (let today = lastMeal + 1; today < first; today += 5) {
          const [where, toDo, never, next] = day(
            today,
            down(dates),
            eaten === null ? null : lastMeal + eaten,
            interval,
            ...[null, null, null, null, answer],
          );
          expect(toDo.startsWith(`No food until ${isoOf(first)}.`)).toBe(true);
          expect(never).toMatch(/^No food/);
          expect(next).toBe(first);
          expect(where).toBe(callCell(stage, today, down(dates)));
          expect(toDo).not.toMatch(/Feed /);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test("what has to be settled first is asked first, and neither food nor cooling told; not of an animal that does not winter", () => {
  const question = "Which winter plan does it follow?";
  const asked = (winters: string | null) =>
    day(LAST, down(practicePlan), LAST - 7, 7, LAST, 14, LAST, 7, winters, null, question);
  for (const winters of ["yes", null]) {
    expect(asked(winters).slice(0, 4)).toEqual(["", question, "No food and no cooling until that is known.", ""]);
  }
  expect(asked("no").slice(0, 2)).toEqual(["Feeding", "Feed today, as usual. Fresh water."]);
});

test("a year of an animal that is fed when due: a meal a week, none in the fast, half after the cold", () => {
  let lastMeal = LAST - 14;
  const fed: number[] = [];
  for (let today = LAST - 13; today < FIRST + 60; today++) {
    const [, toDo, , next] = winters(today, lastMeal);
    if (!toDo.startsWith("Feed")) continue;
    expect(next).toBe(today);
    expect(toDo.includes("half the usual")).toBe(today >= FIRST && today < FIRST + 14);
    expect(toDo.includes("last meal, a small one")).toBe(today === LAST);
    fed.push(today);
    lastMeal = today;
  }
  expect(fed.slice(0, 5)).toEqual([LAST - 7, LAST, FIRST, FIRST + 7, FIRST + 14]);
});

test("out of the fast it agrees with NEXTMEAL, and tells since when a meal is due", () => {
  for (const lastMeal of [LAST - 20, LAST - 9, LAST - 6, FIRST, FIRST + 20]) {
    const next = callCell(nextMeal, lastMeal, 7, down(practicePlan));
    const today = lastMeal < LAST ? Math.min(lastMeal + 8, LAST) : lastMeal + 8;
    expect(winters(today, lastMeal)[3]).toBe(next);
  }
  const late = winters(FIRST + 3, LAST);
  expect(late[1]).toMatch(/^Feed \(due since 2028-03-27\), half the usual, one small item\./);
  expect(late[4]).toBe("Meal: due since 2028-03-27.");
});

test("the first meal after the winter is half the usual, however late it is taken", () => {
  for (const today of [FIRST + 13, FIRST + 14, FIRST + 120]) {
    expect(winters(today, LAST)[1]).toBe(
      `Feed (due since ${isoOf(FIRST)}), ${care["First meals"].food}. ${care["First meals"].toDo}`,
    );
  }
  expect(winters(FIRST + 30, FIRST)[1]).toMatch(/, as usual\./);
});

test("on the day of the plan's last meal it is that meal, though a day less than the interval has gone by", () => {
  for (const before of [4, 5, 6, 7]) {
    const [, toDo, , next] = winters(LAST, LAST - before);
    expect(next).toBe(LAST);
    expect(toDo).toMatch(/^Feed today, .*last meal, a small one/);
  }
  const [, toDo, , next] = winters(LAST, LAST - 2);
  expect(next).toBe(FIRST);
  expect(toDo).toContain(
    `The plan's last meal, ${isoOf(LAST)}, is left out: it ate on ${isoOf(LAST - 2)}. No meal is due until ${isoOf(FIRST)}.`,
  );
});

test("an animal that was fed inside the fast is told, with the vet, as long as the fast lasts", () => {
  expect(winters(LAST + 40, LAST + 20)[1]).toMatch(/^No food until .*Fed in the fast, on 2027-10-10: call your vet/);
  expect(winters(FIRST, LAST + 20)[1]).toMatch(/^Feed today/);
});

test("whether it winters is asked before all else, and no meal is told until that is known", () => {
  const today = serial(2027, 12, 15);
  const asked: [string, unknown, unknown, RegExp][] = [
    ["nothing said", null, null, /^Does it winter\? Say yes and give its plan, or no\.$/],
    ["yes without a plan", null, "yes", /^It winters, but has no plan/],
    [
      "a date left out",
      down(practicePlan.map((date, i) => (i === 5 ? null : date))),
      "yes",
      /^A date of its winter plan is missing/,
    ],
    ["dates out of order", down([...practicePlan].reverse()), "yes", /out of order/],
  ];
  for (const [, plan, answer, words] of asked) {
    const row = day(today, plan, today - 30, 7, today, 14, null, null, answer);
    expect(row.slice(0, 4)).toEqual([
      "",
      expect.stringMatching(words),
      "No food and no cooling until that is known.",
      "",
    ]);
  }
  // A plan alone is followed, and the question stays.
  expect(day(today, down(practicePlan), today - 30, 7)[1]).toMatch(
    /^No food until .* Does it winter\? Say yes or no\.$/,
  );
});

test("an animal that does not winter is fed all year and never cooled, whatever plan there is", () => {
  for (let today = LAST; today < FIRST; today += 9) {
    const row = day(today, down(practicePlan), today - 8, 7, today, 28, null, null, "no");
    expect(row.slice(0, 2)).toEqual(["Feeding", expect.stringMatching(/^Feed \(due since .*\), as usual\./)]);
    expect(row[2]).toMatch(/^No cooling: it follows no winter plan/);
  }
});

test("what is not given is asked, never counted as fine", () => {
  const today = serial(2028, 7, 1);
  const ask = (...given: unknown[]) => day(today, null, ...given, "no");
  expect(ask(null, 7, null, null, null, null)).toEqual([
    "Feeding",
    expect.stringMatching(/^When did it last eat\?/),
    expect.any(String),
    "",
    "Weighed how often?",
  ]);
  expect(ask(today - 3, null, today, 28, null, null)[1]).toMatch(/^How often is it fed\?/);
  expect(ask(today + 3, 7, today, 28, null, null)[1]).toMatch(/^The last meal, 2028-07-04, lies after today/);
  expect(ask(today - 3, 7, null, 28, null, null)[4]).toBe("Weigh: no weighing is noted.");
  expect(ask(today - 3, 7, today + 1, 28, null, null)[4]).toBe("Weigh: the last, 2028-07-02, lies after today.");
  const cold = day(LAST + 100, down(practicePlan), LAST, 7, LAST + 99, 14, null, null, "yes");
  expect(cold[4]).toBe("Box: shut or vented, and opened how often?");
});

test("a vented box is never asked for its openings, a shut one always, and days that are given count for both", () => {
  const today = LAST + 100;
  const box = (kind: string, openedOn: unknown = null, openEvery: unknown = null) =>
    day(today, down(practicePlan), LAST, 7, today, 14, openedOn, openEvery, "yes", kind)[4];
  expect(box("vented")).toBe("Nothing.");
  expect(box("vented", today - 30)).toBe("Nothing.");
  expect(box("shut")).toBe("Box: opened how often?");
  expect(box("vented", today - 30, 0.25)).toBe(`Open the box: last ${isoOf(today - 30)}.`);
  expect(box("shut", today, 0.25)).toBe("The box needs vents: shut, it must be opened every 6 h.");
});

test.each([
  ["weighing", 14, 0, "Weigh: last 2027-12-15."],
  ["weighing", 13, 0, "Nothing."],
  ["opening", 0, 7, "Open the box: last 2027-12-22."],
  ["opening", 0, 6, "Nothing."],
])("%s overdue at its days, not before: weighed %i, opened %i days ago", (_, weighed, opened, words) => {
  const today = serial(2027, 12, 29);
  expect(day(today, down(practicePlan), LAST, 7, today - weighed, 14, today - opened, 7, "yes")[4]).toBe(words);
});

test("a box that must be opened several times a day needs vents, opened today or not", () => {
  const today = LAST + 100;
  expect(day(today, down(practicePlan), LAST, 7, today, 14, today, 0.25, "yes")[4]).toBe(
    "The box needs vents: shut, it must be opened every 6 h.",
  );
});

test("half a year after its first meal the plan is over, and the next is asked for", () => {
  expect(winters(FIRST + 182, FIRST + 180)[1]).not.toContain("plan is over");
  expect(winters(FIRST + 183, FIRST + 180)[1]).toContain("This plan is over: make the next winter's.");
});

test("the words of the stages: no food in any stage of the fast, and never the vet's part", () => {
  for (const [stage, words] of Object.entries(care)) {
    const isFed = ["Feeding", "Last meal", "First meals"].includes(stage);
    expect([stage, words.food === "none"]).toEqual([stage, !isFed]);
    if (!isFed) expect(words.never).toMatch(/^No food/);
    expect(Object.values(words).every((one) => one !== "")).toBe(true);
  }
});

test("a box that is to be opened every day and a half needs no vents", () => {
  const today = LAST + 60;
  const told = (openEvery: number): string =>
    day(today, down(practicePlan), LAST, 7, today, 14, today, openEvery, "yes", "shut")[4];
  expect(told(1.5)).not.toContain("vents");
  expect(told(1)).not.toContain("vents");
  expect(told(0.99)).toContain("vents");
});
