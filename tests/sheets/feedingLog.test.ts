import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { feedingLog } from "../../taskpane/sheets/feedingLog";
import { filled } from "./fill";

jest.setTimeout(30_000);

/** Row 34 is the first that the example leaves free; its plan fasts from 2026-09-22 to 2027-03-28. */

test("a meal inside the fast is flagged in words, before and on its days, not on the days of the two meals", async () => {
  const reading = await filled(feedingLog, {
    A34: "2026-09-22",
    A35: "2027-03-28",
    A36: "2027-03-29",
    B36: 300,
    G35: "taken",
  });
  expect(reading.block("J33:J36")).toEqual([[""], ["Inside the fast: no food"], ["Inside the fast: no food"], [""]]);
  expect(reading.block("I34:I36")).toEqual([["2027-03-29"], ["2027-04-04"], ["2027-04-05"]]);
});

test("with a date of the plan missing no next meal is worked out, and the sheet says so", async () => {
  const reading = await filled(feedingLog, { G9: null, A34: "2026-12-01" });
  expect(reading.at("E13")).toBe("A date of the plan is missing: no next meal is worked out.");
  expect(reading.block("I33:J34")).toEqual([
    ["", ""],
    ["", ""],
  ]);
});

test("without any plan the interval alone counts, and the sheet says so", async () => {
  const none = Object.fromEntries([7, 8, 9, 10, 11, 12].map((row) => [`G${row}`, null]));
  const reading = await filled(feedingLog, { ...none, A34: "2026-12-01" });
  expect(reading.at("E13")).toBe("No plan: no fast is reckoned with.");
  expect(reading.at("I34")).toBe("2026-12-08");
});

test("the dates may point to the Cooling plan, and follow it", async () => {
  const cells = Object.fromEntries(
    [7, 8, 9, 10, 11, 12].map((row) => [`G${row}`, { formula: `='Cooling plan'!E${row}` }]),
  );
  const reading = await filled(feedingLog, cells, { beside: [coolingPlan] });
  expect(reading.errors()).toEqual([]);
  expect(reading.block("G7:G12").flat()).toEqual([
    "2026-09-21",
    "2026-10-05",
    "2026-11-16",
    "2027-02-08",
    "2027-03-22",
    "2027-03-29",
  ]);
  expect(reading.at("I33")).toBe("2027-03-29");
});

test("refusals and regurgitations are counted in a row, a blank outcome is skipped, and from three on the words say look", async () => {
  const reading = await filled(feedingLog, {
    A34: "2027-04-05",
    G34: "refused",
    A35: "2027-04-12",
    A36: "2027-04-19",
    G36: "regurgitated",
    A37: "2027-05-03",
    G37: "refused",
  });
  expect(reading.block("H34:H37")).toEqual([[1], [""], [2], [3]]);
  expect(reading.at("J36")).toBe("Brought up: wait, ask a vet");
  expect(reading.at("J37")).toBe("3 not kept in a row: look");
  expect(reading.at("C15")).toBe(3);
  expect(reading.at("E15")).toBe("Look at warmth, hide, weight");
  // Fourteen days after a meal that was brought up, not seven.
  expect(reading.at("I36")).toBe("2027-05-03");
});

test("an item that is too heavy is flagged, two of half its mass are not", async () => {
  const row = { A34: "2027-04-05", B34: 300, E34: 46 };
  expect((await filled(feedingLog, { ...row, D34: 1 })).at("J34")).toBe("Item over 15 % of body");
  const two = await filled(feedingLog, { ...row, D34: 2 });
  expect(two.at("J34")).toBe("");
  expect(two.at("F34")).toBeCloseTo(46 / 300, 12);
});
