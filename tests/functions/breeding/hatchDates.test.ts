import fc from "fast-check";
import { isoOf } from "../../../functions/dates";
import { hatchDates } from "../../../functions/breeding/hatchDates";
import { call, down } from "../../call";
import { fits } from "../../tables/incubation.json";
import { yardstickOf } from "../../yardstick";

// common practice, no source: eggs at 26 °C hatch in 55 to 65 days
test("eggs at 26 °C hatch in 55 to 65 days", () => {
  fc.assert(
    fc.property(fc.integer({ min: 40_000, max: 60_000 }), (laid) => {
      expect(call(hatchDates, laid)).toEqual([[laid + 55, laid + 65, laid + 60, laid + 37, laid + 72]]);
    }),
  );
  expect(call(hatchDates, "2026-06-20")[0]?.map((day) => isoOf(day as number))).toEqual([
    "2026-08-14",
    "2026-08-24",
    "2026-08-19",
    "2026-07-27",
    "2026-08-31",
  ]);
});

test("your own range, one end or both", () => {
  expect(call(hatchDates, 46_000, 60, 75)).toEqual([[46_060, 46_075, 46_068, 46_060, 46_075]]);
  expect(call(hatchDates, 46_000, undefined, 75)).toEqual([[46_055, 46_075, 46_065, 46_055, 46_075]]);
  expect(call(hatchDates, 46_000, 65)).toEqual([[46_065, 46_065, 46_065, 46_065, 46_065]]);
});

test("a list of clutches: blank rows stay empty, a bad one spoils only itself", () => {
  expect(call(hatchDates, down([46_000, null, "June", 46_010]))).toEqual([
    [46_055, 46_065, 46_060, 46_037, 46_072],
    Array<string>(5).fill(""),
    Array<unknown>(5).fill(expect.stringMatching(/^#VALUE! laid holds 'June'/)),
    [46_065, 46_075, 46_070, 46_047, 46_082],
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
  const lastClutch = "9999-10-20"; // 72 days before 9999-12-31
  expect(isoOf(call(hatchDates, lastClutch)[0]?.[4] as number)).toBe("9999-12-31");
  expect(call(hatchDates, "9999-10-21")[0]?.[0]).toMatch(/^#VALUE! laid holds 9999-10-21/);
  expect(call(hatchDates, "9999-12-01")[0]?.[0]).toBe(
    "#VALUE! laid holds 9999-12-01: give a day whose eggs hatch by 9999-12-31",
  );
});

yardstickOf(
  hatchDates,
  {
    against: "RepDevo lines at 26 °C",
    figure: "share inside practice, 55 to 65 days",
    least: 0.4,
    most: 0.5,
    unit: "share",
  },
  () => {
    const [earliest, latest] = call(hatchDates, 46_000)[0] as [number, number];
    const inside = fits.filter(({ daysAt26 }) => 46_000 + daysAt26 >= earliest && 46_000 + daysAt26 <= latest);
    return { figure: inside.length / fits.length, values: fits.length };
  },
);
yardstickOf(
  hatchDates,
  {
    against: "RepDevo lines at 26 °C",
    figure: "share inside soonest to latest measured",
    least: 1,
    most: 1,
    unit: "share",
  },
  () => {
    const [, , , soonest, latest] = call(hatchDates, 46_000)[0] as number[];
    const inside = fits.filter(
      ({ daysAt26 }) => Math.round(daysAt26) + 46_000 >= (soonest as number) && 46_000 + daysAt26 <= (latest as number),
    );
    return { figure: inside.length / fits.length, values: fits.length };
  },
);
