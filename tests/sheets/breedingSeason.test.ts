import { breedingSeason } from "../../taskpane/sheets/breedingSeason";
import { filled, freeRow, rows } from "./fill";

jest.setTimeout(30_000);

test("the example's check: enough clutches, too light, too young, and males that may", async () => {
  const reading = await filled(breedingSeason, {});
  expect(reading.column("animals.check").slice(0, 5)).toEqual(["stop", "note", "stop", "note", "stop +2"]);
  // By definition: 78 / (262 + 78), and eggs of 78 / 7 g.
  expect(reading.of("clutches.share[1]")).toBeCloseTo(78 / 340, 12);
  expect(reading.of("clutches.egg[1]")).toBeCloseTo(78 / 7, 12);
  expect(reading.of("clutches.recovery[1]")).toBe("Back to her weight: 103 %");
});

test("a female that is not back to her weight is flagged, a hair's breadth below it too", async () => {
  const reading = await filled(breedingSeason, { "animals.mass[1]": 302.9, "limits.clutches": 2 });
  expect(reading.of("animals.check[1]")).toBe("care");
  expect(reading.of("animals.told[1]")).toBe(
    "Not back to her weight, 99.97 % of it: feed her up first (common practice, no source).",
  );
  expect(reading.of("clutches.recovery[1]")).toBe("Not back to her weight: 99 %");
});

test("a second clutch of the season counts, and her weight is held against the last", async () => {
  const reading = await filled(breedingSeason, {
    "limits.clutches": 3,
    ...rows("clutches", freeRow(breedingSeason, "clutches"), [
      { mother: "Juniper", eggs: 5, laid: "2026-09-01", mass: 50, before: 325, after: 260 },
    ]),
  });
  expect(reading.of("animals.clutches[1]")).toBe(2);
  expect(reading.of("animals.share[1]")).toBeCloseTo(312 / 325, 12);
});

test("pairings: too young on that day, a clutch too many, two of one sex, an unknown name", async () => {
  const free = freeRow(breedingSeason, "pairings");
  const reading = await filled(
    breedingSeason,
    rows("pairings", free, [
      { female: "Heather", male: "Rowan", on: "2025-06-24" }, // a day short of her 36 months
      { female: "Heather", male: "Rowan", on: "2025-06-25" },
      { female: "Juniper", male: "Rowan", on: "2026-07-01" },
      { female: "Juniper", male: "Heather", on: "2026-05-01" },
      { female: "Hazel", male: "Rowan", on: "2026-05-01" },
      { female: "Juniper", male: "Bracken", on: "2024-12-29" }, // a day short of his 18 months
      { female: "Heather", male: "Rowan", on: "2026-09-10", seen: "mated" },
      { female: "Sorrel", male: "Rowan", on: "2026-09-22", seen: "mated" }, // a day after the check
    ]),
  );
  // Juniper mated and has laid since; Heather has not; of a male nothing is said.
  expect(reading.column("animals.gravid")).toEqual(["", "", "yes", "", "", "", "", ""]);
  expect(reading.column("pairings.standsOut").slice(free - 1, free + 5)).toEqual([
    "Stop: she was too young",
    "",
    "Stop: enough clutches already",
    "Stop: not a female and a male",
    "Not in the list above: Hazel",
    "Stop: he was too young",
  ]);
});

test("a pairing that was seen to mate has its due days, with a shed before laying and none before live young", async () => {
  const eggs = await filled(breedingSeason, {});
  expect(["earliest", "latest", "shedFrom", "shedTo"].map((name) => eggs.of(`pairings.${name}[2]`))).toEqual([
    "2026-06-14",
    "2026-07-04",
    "2026-05-31",
    "2026-06-27",
  ]);
  expect(eggs.of("pairings.earliest[1]")).toBe("");
  expect(eggs.of("pairings.needs[2]")).toMatch(/out of every winter plan/);
  const live = await filled(breedingSeason, { "limits.mode": "live", "limits.earliest": 100, "limits.latest": 130 });
  expect(["earliest", "latest", "shedFrom"].map((name) => live.of(`pairings.${name}[2]`))).toEqual([
    "2026-08-13",
    "2026-09-12",
    "",
  ]);
});

test("a mating whose day is blank or is no date keeps her out of the cold, and is asked for; one after the check is told", async () => {
  const free = freeRow(breedingSeason, "pairings");
  const reading = await filled(
    breedingSeason,
    rows("pairings", free, [
      { female: "Heather", male: "Rowan", on: null, seen: "mated" },
      { female: "Juniper", male: "Rowan", on: "in May", seen: "mated" },
      { female: "Heather", male: "Rowan", on: null, seen: "together" },
      { female: "Heather", male: "Rowan", on: "2027-05-01", seen: "mated" },
    ]),
  );
  expect(reading.column("animals.gravid").slice(0, 3)).toEqual(["yes", "", "yes"]);
  expect(reading.column("pairings.standsOut").slice(free - 1, free + 3)).toEqual([
    "Not dated: she counts as gravid",
    "Not dated: she counts as gravid",
    "",
    "Not counted: after the day of the check",
  ]);
});

test("an animal that cannot be judged is told, and the others are judged", async () => {
  const male = await filled(breedingSeason, { "limits.maleMass": null });
  expect(male.column("animals.check").slice(0, 5)).toEqual(["stop", "care", "stop", "care", "stop +2"]);
  expect(male.of("animals.told[2]")).toMatch(/^Not judged: /);
  const clutches = await filled(breedingSeason, { "limits.clutches": null, "animals.mass[4]": null });
  expect(clutches.of("animals.told[1]")).toMatch(/^Clutches not judged/);
  expect(clutches.of("animals.told[4]")).toMatch(/^Not judged: /);
});
