import fc from "fast-check";
import { clutchRatio } from "../../../functions/breeding/clutchRatio";
import { callCell } from "../../call";
import { yardstick } from "../../yardstick";

const mass = fc.double({ min: 0.1, max: 5000, noNaN: true });

// by definition
test("total: the clutch's part of female and clutch together; spent: of the female alone", () => {
  fc.assert(
    fc.property(mass, mass, (clutch, female) => {
      const total = callCell(clutchRatio, clutch, female) as number;
      const spent = callCell(clutchRatio, clutch, female, "spent") as number;
      expect(total * (clutch + female)).toBeCloseTo(clutch, 8);
      expect(spent * female).toBeCloseTo(clutch, 8);
      expect(callCell(clutchRatio, clutch, female, "Total")).toBe(total);
      expect(total).toBeLessThan(1);
      expect(spent).toBeGreaterThan(total);
      expect(spent / (1 + spent)).toBeCloseTo(total, 12);
    }),
  );
});

test("what cannot be answered", () => {
  expect(callCell(clutchRatio, 60, 0)).toMatch(/^#VALUE! female holds 0/);
  expect(callCell(clutchRatio, 60, null)).toBe("#N/A female is blank");
  expect(callCell(clutchRatio, 60, 180, "before")).toMatch(/^#VALUE! basis holds 'before': give "total" or "spent"/);
});

// Both ratios of the same clutches: 37 and 59 %, told to the whole per cent, which leaves 0.575 to 0.6 for the second.
yardstick(clutchRatio, { against: "Iverson et al. 2012, bullsnakes", within: 0.013, unit: "" }, () => [
  [callCell(clutchRatio, 37, 100 - 37) as number, 0.37],
  [callCell(clutchRatio, 37, 100 - 37, "spent") as number, 0.59],
]);
