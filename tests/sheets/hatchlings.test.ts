import { hatchlings } from "../../taskpane/sheets/hatchlings";
import { filled, inTurn, rows } from "./fill";

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
        { label: "g", hatched: "2026-08-25", shed: "2026-09-04" },
        { label: "h", hatched: "2026-08-25", shed: "2026-09-22" }, // a day to come is no shed
        { label: "i", hatched: "2026-08-25", shed: "2026-08-24" },
      ]),
    },
    { cleared: true },
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.column("log.standsOut").slice(0, 9)).toEqual([
    "Waiting for the first shed, day 27",
    "Plan: no meal, day 28",
    "Eats by itself",
    "Plan: lost 11 %",
    "Eats by itself",
    "Plan: 4 refused",
    "Waiting, day 27",
    "Waiting for the first shed, day 27",
    "First shed before hatching: look at the dates",
  ]);
  expect(["all", "eat", "wait", "plan"].map((one) => reading.of(`now.${one}`))).toEqual([9, 2, 3, 3]);
  expect(reading.of("log.gain[3]")).toBeCloseTo(-0.099, 12);
});

test("a date before hatching is an error with words, not an age", async () => {
  expect((await filled(hatchlings, { "log.hatched[1]": "2026-10-01" })).of("log.day[1]")).toBe("#VALUE!");
});

test("the first winter is decided in words: who feeds through, who is asked, who may not be cooled", async () => {
  const decided = { "log.winters[1]": "yes", "log.winters[4]": "yes", "log.winters[2]": null };
  const reading = await filled(hatchlings, { ...decided, "firstWinter.label": "J4" });
  expect(reading.errors()).toEqual([]);
  expect(reading.column("log.firstWinter").slice(0, 5)).toEqual([
    "With your vet only: see below",
    "Does it winter? no, or ask your vet: see below",
    "Does it winter? no, or ask your vet: see below",
    "Stop: does not eat by itself, stays warm",
    "Stays warm, fed all winter",
  ]);
  const said = String(reading.of("winterSaid.said")).split("\n");
  expect(said[0]).toMatch(/^stop: It does not eat by itself/);
  expect(said).toContainEqual(
    expect.stringMatching(/^care: Only 94 % of its mass before|^care: .*lighter than it was/),
  );
  expect(said).toContainEqual(expect.stringMatching(/^care: Only 1 months old/));
  expect(said.join()).toMatch(/Whether a reptile vet has seen it: not looked at/);
});

test("a young one that does not winter is said to stay warm, and without a label nothing passes for looked at", async () => {
  expect((await filled(hatchlings, { "firstWinter.label": "j1" })).of("winterSaid.said")).toMatch(
    /does not winter: it stays warm and is fed all year/,
  );
  expect((await filled(hatchlings, {}, { cleared: true })).of("winterSaid.said")).toMatch(/^Whose first winter\?/);
});

test("a blank limit is told where it would have judged, and nobody who is not judged eats by itself", async () => {
  const limits = ["alarm", "patience", "lateFrom"];
  const readings = await inTurn(
    hatchlings,
    limits.map((limit) => ({ [`looked.${limit}`]: null, "log.winters[3]": "yes" })),
  );
  for (const [i, reading] of readings.entries()) {
    const limit = limits[i];
    const said = reading.column("log.standsOut").slice(0, 6);
    expect([limit, said.filter((one) => !String(one).startsWith("Plan"))]).toEqual([
      limit,
      said.filter((one) => one === "Not judged: a limit above is blank"),
    ]);
    expect(said[0]).toBe("Not judged: a limit above is blank");
    expect(reading.of("log.firstWinter[3]")).toMatch(/^Stop: does not eat by itself/);
  }
});
