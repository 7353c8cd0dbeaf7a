import fc from "fast-check";
import { isoOf } from "../../../functions/dates";
import { hatchDates } from "../../../functions/breeding/hatchDates";
import { call, down } from "../../call";

// common practice, no source: eggs at 26 °C hatch in 55 to 65 days
test("eggs at 26 °C hatch in 55 to 65 days", () => {
  fc.assert(
    fc.property(fc.integer({ min: 40_000, max: 60_000 }), (laid) => {
      expect(call(hatchDates, laid)).toEqual([[laid + 55, laid + 65]]);
    }),
  );
  expect(call(hatchDates, "2026-06-20")[0]?.map((day) => isoOf(day as number))).toEqual(["2026-08-14", "2026-08-24"]);
});

test("your own range, one end or both", () => {
  expect(call(hatchDates, 46_000, 60, 75)).toEqual([[46_060, 46_075]]);
  expect(call(hatchDates, 46_000, undefined, 75)).toEqual([[46_055, 46_075]]);
  expect(call(hatchDates, 46_000, 65)).toEqual([[46_065, 46_065]]);
});

test("a list of clutches: blank rows stay empty, a bad one spoils only itself", () => {
  expect(call(hatchDates, down([46_000, null, "June", 46_010]))).toEqual([
    [46_055, 46_065],
    ["", ""],
    [expect.stringMatching(/^#VALUE! laid holds 'June'/), expect.stringMatching(/^#VALUE! laid holds 'June'/)],
    [46_065, 46_075],
  ]);
});

test("what cannot be answered", () => {
  expect(call(hatchDates, 46_000, null, 50)[0]?.[0]).toBe(
    "#VALUE! latest holds 50 days: give earliest, 55 days, or more",
  );
  expect(call(hatchDates, 46_000, 70)[0]?.[0]).toBe("#VALUE! earliest holds 70 days: give latest, 65 days, or less");
  expect(call(hatchDates, 46_000, 5)[0]?.[0]).toMatch(
    /^#VALUE! earliest holds 5: give a whole number from 20 to 200 days/,
  );
  const lastClutch = "9999-10-27"; // 65 days before 9999-12-31
  expect(isoOf(call(hatchDates, lastClutch)[0]?.[1] as number)).toBe("9999-12-31");
  expect(call(hatchDates, "9999-10-28")[0]?.[0]).toMatch(/^#VALUE! laid holds 9999-10-28/);
  expect(call(hatchDates, "9999-12-01")[0]?.[0]).toBe(
    "#VALUE! laid holds 9999-12-01: give a day whose eggs hatch by 9999-12-31",
  );
});
