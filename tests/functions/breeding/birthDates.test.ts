import { serial } from "../../../functions/dates";
import { birthDates } from "../../../functions/breeding/birthDates";
import { call } from "../../call";

const PAIRED = serial(2027, 5, 1);
const births = (...given: unknown[]) => call(birthDates, ...given)[0];

test("layers: the days given, and a shed from fourteen days before the first to seven before the last", () => {
  expect(births(PAIRED, 40, 55)).toEqual([
    PAIRED + 40,
    PAIRED + 55,
    PAIRED + 26,
    PAIRED + 48,
    expect.stringMatching(/out of every winter plan\.$/),
  ]);
  expect(births(PAIRED, 10, 10, "eggs")?.slice(2, 4)).toEqual([PAIRED, PAIRED + 3]); // never before the pairing
});

test("live-bearers: no shed is told, and she stays out of every winter plan", () =>
  expect(births(PAIRED, 100, 130, "live")).toEqual([
    PAIRED + 100,
    PAIRED + 130,
    "",
    "",
    "Gravid until then: warm, undisturbed, out of every winter plan.",
  ]));

test("what cannot be", () => {
  expect(births(PAIRED, 56, 55)?.[0]).toBe("#VALUE! earliest holds 56 days: give latest, 55 days, or less");
  expect(births(serial(9999, 12, 1), 40, 55)?.[0]).toMatch(/^#VALUE! paired holds 9999-12-01: give a day/);
  expect(births(PAIRED, null, 55)?.[0]).toBe("#N/A earliest is blank");
});
