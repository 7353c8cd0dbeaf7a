import { isoOf } from "../../functions/dates";
import { feedingLog } from "../../taskpane/sheets/feedingLog";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { winter } from "../../taskpane/sheets/shared/scenario";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { down, filled, freeRow, rows, type Typed } from "./fill";

jest.setTimeout(120_000);

/** The first row that the example leaves free; its plan fasts from 2026-09-22 to 2027-03-28. */
const free = freeRow(feedingLog, "log");
const cells = (column: string, from: number, many: number): string[] =>
  Array.from({ length: many }, (_, i) => `log.${column}[${from + i}]`);
const juniper = (entry: Typed): Typed => ({ animal: "Juniper", ...entry });
/** A meal that nothing speaks against. */
const fit = (entry: Typed): Typed => juniper({ body: 300, items: 1, mass: 12, night: 18, ...entry });

test("a meal inside the fast is stopped, with and without masses, not on the days of the two meals", async () => {
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      juniper({ date: "2026-09-22" }),
      fit({ date: "2027-03-28", outcome: "taken" }),
      fit({ date: "2027-03-29" }),
      { date: "2026-12-15", animal: "Sorrel" },
    ]),
  );
  expect(cells("level", free, 4).map((cell) => reading.of(cell))).toEqual(["stop", "stop", "care", "note"]);
  expect(reading.of(`log.words[${free}]`)).toMatch(/Inside the winter fast, 2026-09-21 to 2027-03-29: no food/);
  expect(reading.of(`log.words[${free}]`)).toMatch(/^Body, items or prey mass is blank/);
  expect(reading.of(`log.words[${free + 2}]`)).toMatch(/^Only 1 day since the last meal/);
  // Sorrel does not winter: that no plan was given is no news.
  expect(reading.of(`log.words[${free + 3}]`)).not.toMatch(/winter plan|fast/);
  // What the heading says of all rows is not said in each.
  expect(cells("words", free, 4).map((cell) => String(reading.of(cell)).includes("no source"))).not.toContain(true);
  expect(reading.of(`log.told[${free}]`)).toMatch(/common practice, no source/);
  expect(cells("next", free, 4).map((cell) => reading.of(cell))).toEqual([
    "2027-03-29",
    "2027-04-04",
    "2027-04-05",
    "2026-12-20",
  ]);
  expect(reading.of("said.said")).toMatch(/^care: Only 1 day since/);
  expect(reading.of("counted.said")).toBe("2 rows of the log say stop, 1 say care, of all animals.");
});

test("shares: 20 % on the first day after winter is stopped, half the usual is not, a heavy item is a care, two of half its mass a large meal", async () => {
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      fit({ date: "2027-03-29", body: 310, mass: 62, outcome: "taken" }),
      { ...fit({ date: "2027-03-29", body: 310, mass: 15 }), animal: "Heather" },
      fit({ date: "2027-05-05", mass: 46 }),
      fit({ date: "2027-05-05", mass: 46, items: 2 }),
      fit({ date: "2027-05-12", mass: 18, items: 2 }),
    ]),
  );
  expect(cells("level", free, 4).map((cell) => reading.of(cell))).toEqual(["stop", "note", "care", "care"]);
  expect(reading.of(`log.words[${free + 4}]`)).toMatch(/^An item of 3 % of the body: below 4 % its size is outgrown/);
  expect(reading.of(`log.words[${free}]`)).toMatch(/^First meals after the cold, 20 % of the body/);
  expect(reading.of(`log.words[${free + 2}]`)).toMatch(/^An item of 15\.3\d* % of the body/);
  expect(reading.of(`log.words[${free + 3}]`)).toMatch(/^A meal of 15\.3\d* % of the body/);
  expect(reading.of(`log.share[${free + 2}]`)).toBeCloseTo(46 / 300, 12);
});

test("with a date of the plan missing no next meal is worked out, and the sheet says so", async () => {
  const reading = await filled(feedingLog, {
    "plan.intoTheCold": null,
    ...rows("log", free, [fit({ date: "2026-12-01" })]),
  });
  expect(reading.of("fast.said")).toBe("A date of its plan is missing: no next meal is worked out.");
  expect(cells("next", free - 1, 2).map((cell) => reading.of(cell))).toEqual(["", ""]);
  // A note that no fast was looked for would let it be fed in the cold.
  expect(reading.of(`log.level[${free}]`)).toBe("stop");
  expect(reading.of(`log.words[${free}]`)).toMatch(
    /^A date of its winter plan is missing or cannot be read\. No food until that is known\./,
  );
});

test("without any plan the interval alone counts, and the sheet says so; not for an animal that winters", async () => {
  const dateless = {
    ...Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, null])),
    ...rows("log", free, [juniper({ date: "2026-12-01" })]),
  };
  const planless = { ...dateless, "plan.name": null, ...down("who.plan", Array<null>(12).fill(null)) };
  const said = async (typed: Typed) => {
    const reading = await filled(feedingLog, typed);
    return [reading.of("fast.said"), reading.of(`log.next[${free}]`), reading.of(`log.unclear[${free}]`)];
  };
  expect(await said({ ...planless, "who.winters[1]": null })).toEqual([
    "No plan: no fast is known here.",
    "2026-12-08",
    "",
  ]);
  expect(await said(planless)).toEqual([
    "It winters, but has no plan: no next meal is worked out.",
    "",
    "It winters, but has no plan.",
  ]);
  // A plan that is named, and whose dates are gone: its sheet was removed, or is not filled in yet.
  const gone = Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, { formula: "=1/0" }]));
  for (const dates of [dateless, { ...dateless, ...gone }]) {
    expect(await said(dates)).toEqual([
      "A date of its plan is missing: no next meal is worked out.",
      "",
      "A date of its winter plan is missing or cannot be read.",
    ]);
  }
});

test("the dates may point to the Cooling plan, and follow it", async () => {
  const pointing = Object.fromEntries(
    PLAN_DATES.map((date) => [`plan.${date}`, { formula: `='Cooling plan'!${cellOf(coolingPlan, `dates.${date}`)}` }]),
  );
  const reading = await filled(feedingLog, pointing, { beside: [coolingPlan] });
  expect(reading.errors()).toEqual([]);
  expect(PLAN_DATES.map((date) => reading.of(`plan.${date}`))).toEqual(winter.dates.map(isoOf));
  expect(reading.of(`log.next[${free - 1}]`)).toBe("2027-03-29");
});

test("animals of one log do not mix: refusals, days since and next meals are each one's own", async () => {
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      fit({ date: "2027-04-05", outcome: "left" }),
      { ...fit({ date: "2027-04-06", outcome: "taken" }), animal: "Rowan" },
      fit({ date: "2027-04-12", outcome: "brought up" }),
      fit({ date: "2027-04-19", outcome: "refused" }),
      fit({ date: "2027-05-03", outcome: "ate" }),
      { ...fit({ date: "2027-04-08" }), animal: "Rowan" },
      { date: "2027-05-04" },
      { ...fit({ date: "2027-05-04" }), animal: "Stranger" },
    ]),
  );
  expect(cells("notKept", free, 5).map((cell) => reading.of(cell))).toEqual([1, 0, 2, 3, 0]);
  expect(reading.of(`log.words[${free + 2}]`)).toMatch(/^Brought up: wait, ask a reptile vet\. /);
  expect(reading.of(`log.level[${free + 2}]`)).toBe("care");
  // Fourteen days after a meal that was brought up, not seven; and a meal sooner is flagged.
  expect(reading.of(`log.next[${free + 2}]`)).toBe("2027-04-26");
  expect(reading.of(`log.words[${free + 3}]`)).toMatch(
    /^3 not kept in a row: look at warmth, hide, weight\. Only 7 days since the last meal: wait 14 days or more/,
  );
  expect(reading.of(`log.words[${free + 5}]`)).toMatch(/^Only 2 days since the last meal/);
  expect(reading.of(`log.words[${free + 6}]`)).toBe("Whose meal is it? Name the animal.");
  expect(reading.of(`log.words[${free + 7}]`)).toMatch(/Not in the list of animals: no next meal is worked out\.$/);
});

test("what is looked at is one animal's: its next meal, its prey by the size's name, its refusals", async () => {
  const sorrel = await filled(feedingLog, { "now.label": "Sorrel" });
  expect(["next", "body", "size", "items", "notKept"].map((name) => sorrel.of(`now.${name}`))).toEqual([
    "2026-09-22",
    58,
    "Fuzzy mouse",
    1,
    0,
  ]);
  const unknown = await filled(feedingLog, { "now.label": "Nobody" });
  expect(unknown.errors()).toEqual([]);
  expect(unknown.of("said.said")).toBe("No meal of that animal in the log.");
});

test("other common words for an outcome are taken by the list", () => {
  const list = feedingLog.validation.find((one) => one.kind === "list" && one.words.length > 5);
  expect(list).toMatchObject({ words: expect.arrayContaining(["ate", "left", "y", "0", "brought up"]) as string[] });
});

test("a second meal on one day is told, one after a refusal or of another animal is not", async () => {
  const free = freeRow(feedingLog, "log");
  const meal = { date: "2027-05-03", items: 1, mass: 14, body: 300, night: 18 };
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      { ...meal, animal: "Juniper", outcome: "refused" },
      { ...meal, animal: "Juniper", outcome: "taken" },
      { ...meal, animal: "Rowan", outcome: "taken" },
      { ...meal, animal: "Juniper", outcome: null },
    ]),
  );
  const said = [0, 1, 2, 3].map((i) => reading.of(`log.words[${free + i}]`));
  expect(said.map((words) => String(words).startsWith("Fed on that day before"))).toEqual([false, false, false, true]);
  expect(reading.of(`log.level[${free + 3}]`)).toBe("care");
});
