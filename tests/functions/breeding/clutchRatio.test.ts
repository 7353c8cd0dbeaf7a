import fc from "fast-check";
import { clutchRatio } from "../../../functions/breeding/clutchRatio";
import { cautions } from "../../../functions/cautions";
import { callCell } from "../../call";

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

test("what the caution says of the two bases is what is answered", () => {
  expect(cautions.twoBases).toContain("0.25 of female and clutch together is 0.33 of the spent female");
  expect(callCell(clutchRatio, 60, 180)).toBe(0.25);
  expect((callCell(clutchRatio, 60, 180, "spent") as number).toFixed(2)).toBe("0.33");
});
