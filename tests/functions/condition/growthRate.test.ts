import fc from "fast-check";
import { growthRate } from "../../../functions/condition/growthRate";
import { callCell } from "../../call";
import weighings from "../../tables/weighings.json";
import { yardstick } from "../../yardstick";

const mass = fc.double({ min: 1, max: 5000, noNaN: true });
const day = fc.integer({ min: 40_000, max: 50_000 });

// by definition: growing at this rate every moment carries the first mass to the second
test("the rate carries one mass to the other", () => {
  fc.assert(
    fc.property(mass, day, mass, fc.integer({ min: 1, max: 3000 }), (mass1, date1, mass2, days) => {
      const rate = callCell(growthRate, mass1, date1, mass2, date1 + days) as number;
      expect(mass1 * Math.exp((rate / 100) * days)).toBeCloseTo(mass2, 6);
      expect(Math.sign(rate)).toBe(Math.sign(mass2 - mass1));
    }),
  );
});

test("doubling in 100 days is 0.693 % a day, at any size", () => {
  expect(callCell(growthRate, 8, "2026-01-01", 16, "2026-04-11")).toBeCloseTo(Math.LN2, 12);
  expect(callCell(growthRate, 800, "2026-01-01", 1600, "2026-04-11")).toBeCloseTo(Math.LN2, 12);
});

test("rows out of order: the two weighings may stand in either order", () => {
  fc.assert(
    fc.property(mass, day, mass, day, (mass1, date1, mass2, date2) => {
      fc.pre(date1 !== date2);
      const [one, other] = [
        callCell(growthRate, mass1, date1, mass2, date2) as number,
        callCell(growthRate, mass2, date2, mass1, date1) as number,
      ];
      expect(one).toBeCloseTo(other, 9);
    }),
  );
});

test("two weights on one day give no rate, and a time of day makes no second day", () => {
  const wanted = "#VALUE! date2 holds 2026-04-01 like date1: give weighings of two days";
  expect(callCell(growthRate, 20, "2026-04-01", 21, "2026-04-01")).toBe(wanted);
  expect(callCell(growthRate, 20, "2026-04-01", 21, "2026-04-01T18:00")).toBe(wanted);
});

test("a missing weight is a blank, never 0", () => {
  expect(callCell(growthRate, 20, "2026-04-01", null, "2026-06-10")).toBe("#N/A mass2 is blank");
  expect(callCell(growthRate, 20, "2026-04-01", 0, "2026-06-10")).toMatch(/^#VALUE! mass2 holds 0/);
  expect(callCell(growthRate, null, null, null, null)).toBe("");
});

// Chicks, gains and losses; 1e-11: the rates are rounded to twelve decimals.
yardstick(
  growthRate,
  { against: "ChickWeight (Crowder & Hand 1990), change of the logarithm by NumPy", within: 1e-11, unit: "% a day" },
  () =>
    weighings.rows.map(
      ([, day1 = NaN, g1 = NaN, day2 = NaN, g2 = NaN, , rate = NaN]) =>
        [callCell(growthRate, g1, 45_000 + day1, g2, 45_000 + day2) as number, rate] as const,
    ),
);
