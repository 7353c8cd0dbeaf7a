import { breedingSeason } from "../../taskpane/sheets/breedingSeason";
import { filled } from "./fill";

jest.setTimeout(30_000);

test("the example's check: enough clutches, too light, too young, and males that may", async () => {
  const reading = await filled(breedingSeason, {});
  expect(reading.block("H14:H18").flat()).toEqual(["stop", "note", "stop", "note", "stop +2"]);
  // By definition: 78 / (262 + 78), and eggs of 78 / 7 g.
  expect(reading.at("G35")).toBeCloseTo(78 / 340, 12);
  expect(reading.at("H35")).toBeCloseTo(78 / 7, 12);
  expect(reading.at("I35")).toBe("Back to her weight: 103 %");
});

test("a female that is not back to her weight is flagged, a hair's breadth below it too", async () => {
  const reading = await filled(breedingSeason, { D14: 302.9, D10: 2 });
  expect(reading.at("H14")).toBe("care");
  expect(reading.at("I14")).toBe(
    "Not back to her weight, 99.97 % of it: feed her up first (common practice, no source).",
  );
  expect(reading.at("I35")).toBe("Not back to her weight: 99 %");
});

test("a second clutch of the season counts, and her weight is held against the last", async () => {
  const reading = await filled(breedingSeason, {
    D10: 3,
    A36: "Juniper",
    B36: 5,
    C36: "2026-09-01",
    D36: 50,
    E36: 325,
    F36: 260,
  });
  expect(reading.at("F14")).toBe(2);
  expect(reading.at("G14")).toBeCloseTo(312 / 325, 12);
});

test("pairings: too young on that day, a clutch too many, two of one sex, an unknown name", async () => {
  const reading = await filled(breedingSeason, {
    A52: "Heather",
    B52: "Rowan",
    C52: "2025-06-24", // a day short of her 36 months
    A53: "Heather",
    B53: "Rowan",
    C53: "2025-06-25",
    A54: "Juniper",
    B54: "Rowan",
    C54: "2026-07-01",
    A55: "Juniper",
    B55: "Heather",
    C55: "2026-05-01",
    A56: "Hazel",
    B56: "Rowan",
    C56: "2026-05-01",
    A57: "Juniper",
    B57: "Bracken",
    C57: "2024-12-29", // a day short of his 18 months
  });
  expect(reading.block("G52:G57").flat()).toEqual([
    "Stop: she was too young",
    "",
    "Stop: enough clutches already",
    "Stop: not a female and a male",
    "Not in the list above: Hazel",
    "Stop: he was too young",
  ]);
});
