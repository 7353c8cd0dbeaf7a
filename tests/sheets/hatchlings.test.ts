import { hatchlings } from "../../taskpane/sheets/hatchlings";
import { filled } from "./fill";

jest.setTimeout(30_000);

test("who eats, waits, or needs a plan, at the limits and on either side of them", async () => {
  const reading = await filled(
    hatchlings,
    {
      C8: "2026-09-21",
      A21: "a",
      B21: "2026-08-25", // day 27 without a meal
      A22: "b",
      B22: "2026-08-24", // day 28
      A23: "c",
      B23: "2026-08-01",
      E23: "yes",
      C23: 10,
      D23: 9.01,
      A24: "d",
      B24: "2026-08-01",
      E24: "yes",
      C24: 10,
      D24: 8.9,
      A25: "e",
      B25: "2026-08-01",
      E25: "yes",
      F25: "no",
      G25: "no",
      H25: "no",
      A26: "f",
      B26: "2026-08-01",
      E26: "yes",
      F26: "no",
      G26: "no",
      H26: "no",
      I26: "no",
    },
    { cleared: true },
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.block("N21:N26").flat()).toEqual([
    "Waiting, day 27",
    "Plan: no meal, day 28",
    "Eats by itself",
    "Plan: lost 11 %",
    "Eats by itself",
    "Plan: 4 refused",
  ]);
  expect(reading.block("I8:I11").flat()).toEqual([6, 2, 1, 3]);
  expect(reading.at("L23")).toBeCloseTo(-0.099, 12);
});

test("a date before hatching is an error with words, not an age", async () => {
  expect((await filled(hatchlings, { B21: "2026-10-01" })).at("K21")).toBe("#VALUE!");
});
