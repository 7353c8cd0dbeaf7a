import fc from "fast-check";
import { q10Rate } from "../../../functions/winter/q10Rate";
import { callCell } from "../../call";
import table from "../../tables/oxygenUse.json";
import { yardstick } from "../../yardstick";

test("ten degrees up multiply, ten down divide, none leave the rate (by definition)", () => {
  expect(callCell(q10Rate, 10, 15, 25, 3)).toBeCloseTo(30, 12);
  expect(callCell(q10Rate, 30, 25, 15, 3)).toBeCloseTo(10, 12);
  expect(callCell(q10Rate, 10, 5, 25, 2)).toBeCloseTo(40, 12);
  expect(callCell(q10Rate, 10, 25, 25)).toBe(10);
});

test("left out, q10 is 2.4, which is the temperature term of the oxygen formula to 0.1 %", () => {
  expect(callCell(q10Rate, 1, 20, 30)).toBeCloseTo(2.4, 12);
  expect(Math.abs(2.4 / 10 ** (0.038 * 10) - 1)).toBeLessThan(1e-3);
});

// Their metabolism fell by 95 % from 30 to 5 °C; Q10 = 20^(10/25) as evaluated in the table to ten decimals.
yardstick(q10Rate, { against: "Stubblefield, Ultsch & Secor", within: 1e-6, unit: "%" }, () => [
  [callCell(q10Rate, 100, 30, 5, table.fall.q10) as number, 5],
]);

test("there and back is where it was", () => {
  const temperature = fc.double({ min: -5, max: 50, noNaN: true });
  const rate = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(rate, temperature, temperature, fc.double({ min: 1, max: 6, noNaN: true }), (start, from, to, q10) => {
      const there = callCell(q10Rate, start, from, to, q10);
      if ((there as number) > 1e9) return;
      const back = callCell(q10Rate, there, to, from, q10) as number;
      expect(Math.abs(back - start)).toBeLessThanOrEqual(1e-9 * start + 1e-300);
    }),
  );
});

test("a blank temperature is not 0 °C", () => {
  expect(callCell(q10Rate, 10, null, 25)).toBe("#N/A temperature is blank");
  expect(callCell(q10Rate, 10, 0, 10, 2)).toBe(20);
  expect(callCell(q10Rate, 10, 25, 15, 0)).toMatch(/^#VALUE! q10 holds 0: give a number from 0.1 to 10/);
});
