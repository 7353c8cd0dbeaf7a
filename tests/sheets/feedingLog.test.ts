import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { feedingLog } from "../../taskpane/sheets/feedingLog";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { filled, freeRow, rows } from "./fill";

jest.setTimeout(30_000);

/** The first row that the example leaves free; its plan fasts from 2026-09-22 to 2027-03-28. */
const free = freeRow(feedingLog, "log");
const cells = (column: string, from: number, many: number): string[] =>
  Array.from({ length: many }, (_, i) => `log.${column}[${from + i}]`);

test("a meal inside the fast is flagged in words, before and on its days, not on the days of the two meals", async () => {
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      { date: "2026-09-22" },
      { date: "2027-03-28", outcome: "taken" },
      { date: "2027-03-29", body: 300 },
    ]),
  );
  expect(cells("standsOut", free - 1, 4).map((cell) => reading.of(cell))).toEqual([
    "",
    "Inside the fast: no food",
    "Inside the fast: no food",
    "",
  ]);
  expect(cells("next", free, 3).map((cell) => reading.of(cell))).toEqual(["2027-03-29", "2027-04-04", "2027-04-05"]);
});

test("with a date of the plan missing no next meal is worked out, and the sheet says so", async () => {
  const reading = await filled(feedingLog, {
    "plan.intoTheCold": null,
    ...rows("log", free, [{ date: "2026-12-01" }]),
  });
  expect(reading.of("fast.said")).toBe("A date of the plan is missing: no next meal is worked out.");
  const shown = [...cells("next", free - 1, 2), ...cells("standsOut", free - 1, 2)].map((cell) => reading.of(cell));
  expect(shown).toEqual(["", "", "", ""]);
});

test("without any plan the interval alone counts, and the sheet says so", async () => {
  const none = Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, null]));
  const reading = await filled(feedingLog, { ...none, ...rows("log", free, [{ date: "2026-12-01" }]) });
  expect(reading.of("fast.said")).toBe("No plan: no fast is reckoned with.");
  expect(reading.of(`log.next[${free}]`)).toBe("2026-12-08");
});

test("the dates may point to the Cooling plan, and follow it", async () => {
  const pointing = Object.fromEntries(
    PLAN_DATES.map((date) => [`plan.${date}`, { formula: `='Cooling plan'!${cellOf(coolingPlan, `dates.${date}`)}` }]),
  );
  const reading = await filled(feedingLog, pointing, { beside: [coolingPlan] });
  expect(reading.errors()).toEqual([]);
  expect(PLAN_DATES.map((date) => reading.of(`plan.${date}`))).toEqual([
    "2026-09-21",
    "2026-10-05",
    "2026-11-16",
    "2027-02-08",
    "2027-03-22",
    "2027-03-29",
  ]);
  expect(reading.of(`log.next[${free - 1}]`)).toBe("2027-03-29");
});

test("other common words for an outcome are taken by the list, the count and the words", async () => {
  const list = feedingLog.validation.find((one) => one.kind === "list");
  expect(list).toMatchObject({ words: expect.arrayContaining(["ate", "left", "y", "0", "brought up"]) as string[] });
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      { date: "2027-04-05", outcome: "left" },
      { date: "2027-04-12", outcome: "brought up" },
      { date: "2027-05-03", outcome: "ate" },
    ]),
  );
  expect(cells("notKept", free, 3).map((cell) => reading.of(cell))).toEqual([1, 2, 0]);
  expect(reading.of(`log.standsOut[${free + 1}]`)).toBe("Brought up: wait, ask a vet");
});

test("refusals and regurgitations are counted in a row, a blank outcome is skipped, and from three on the words say look", async () => {
  const reading = await filled(
    feedingLog,
    rows("log", free, [
      { date: "2027-04-05", outcome: "refused" },
      { date: "2027-04-12" },
      { date: "2027-04-19", outcome: "regurgitated" },
      { date: "2027-05-03", outcome: "refused" },
    ]),
  );
  expect(cells("notKept", free, 4).map((cell) => reading.of(cell))).toEqual([1, "", 2, 3]);
  expect(reading.of(`log.standsOut[${free + 2}]`)).toBe("Brought up: wait, ask a vet");
  expect(reading.of(`log.standsOut[${free + 3}]`)).toBe("3 not kept in a row: look");
  expect(reading.of("now.notKept")).toBe(3);
  expect(reading.of("advice.said")).toBe("Look at warmth, hide, weight");
  // Fourteen days after a meal that was brought up, not seven.
  expect(reading.of(`log.next[${free + 2}]`)).toBe("2027-05-03");
});

test("an item that is too heavy is flagged, two of half its mass are not", async () => {
  const meal = { date: "2027-04-05", body: 300, mass: 46 };
  const one = await filled(feedingLog, rows("log", free, [{ ...meal, items: 1 }]));
  expect(one.of(`log.standsOut[${free}]`)).toBe("Item over 15 % of body");
  const two = await filled(feedingLog, rows("log", free, [{ ...meal, items: 2 }]));
  expect(two.of(`log.standsOut[${free}]`)).toBe("");
  expect(two.of(`log.share[${free}]`)).toBeCloseTo(46 / 300, 12);
});
