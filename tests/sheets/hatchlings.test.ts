import { hatchlings } from "../../taskpane/sheets/hatchlings";
import { filled, rows } from "./fill";

jest.setTimeout(30_000);

test("who eats, waits, or needs a plan, at the limits and on either side of them", async () => {
  const reading = await filled(
    hatchlings,
    {
      "looked.on": "2026-09-21",
      ...rows("log", 1, [
        { label: "a", hatched: "2026-08-25" }, // day 27 without a meal
        { label: "b", hatched: "2026-08-24" }, // day 28
        { label: "c", hatched: "2026-08-01", first: "yes", then: 10, now: 9.01 },
        { label: "d", hatched: "2026-08-01", first: "yes", then: 10, now: 8.9 },
        { label: "e", hatched: "2026-08-01", first: "yes", second: "no", third: "no", fourth: "no" },
        { label: "f", hatched: "2026-08-01", first: "yes", second: "no", third: "no", fourth: "no", fifth: "no" },
      ]),
    },
    { cleared: true },
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.column("log.standsOut").slice(0, 6)).toEqual([
    "Waiting, day 27",
    "Plan: no meal, day 28",
    "Eats by itself",
    "Plan: lost 11 %",
    "Eats by itself",
    "Plan: 4 refused",
  ]);
  expect(["all", "eat", "wait", "plan"].map((one) => reading.of(`now.${one}`))).toEqual([6, 2, 1, 3]);
  expect(reading.of("log.gain[3]")).toBeCloseTo(-0.099, 12);
});

test("a date before hatching is an error with words, not an age", async () => {
  expect((await filled(hatchlings, { "log.hatched[1]": "2026-10-01" })).of("log.day[1]")).toBe("#VALUE!");
});
