import fc from "fast-check";
import { degreeDays } from "../../../functions/breeding/degreeDays";
import { callCell } from "../../call";
import { rows } from "../../tables/degreeDays.json";
import { yardstick } from "../../yardstick";

const answer = (...given: unknown[]) => callCell(degreeDays, ...given) as number;

// 1e-9: the accuracy of scipy's quadrature, and the digits of the table.
yardstick(degreeDays, { against: "numerical integration by scipy 1.10.1", within: 1e-9, unit: "K d" }, () =>
  rows.map((row) => [answer(row.high, row.low, row.base, row.ceiling), row.integral]),
);

// 0.005: TrenchR rounds to 0.01. Its single sine is at fault where the whole day lies above the ceiling: no figure there.
yardstick(degreeDays, { against: "TrenchR 1.1.1", within: 0.005, unit: "K d" }, () =>
  rows.flatMap(({ trenchR, ...row }) =>
    trenchR === null ? [] : [[answer(row.high, row.low, row.base, row.ceiling), trenchR] as const],
  ),
);

/** The mean of the day's sine above base and below ceiling, by the midpoint rule. */
const integrated = (high: number, low: number, base: number, ceiling: number): number => {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const temperature = (high + low) / 2 + ((high - low) / 2) * Math.sin((2 * Math.PI * (i + 0.5)) / steps);
    sum += Math.max(0, Math.min(temperature, ceiling) - base);
  }
  return sum / steps;
};

// 1e-6 K per K of swing: the midpoint rule with 20 000 steps, at whose kinks the error is of the order of 1e-8.
test("numerical integration here, for any day", () => {
  const temperature = fc.double({ min: -30, max: 50, noNaN: true });
  fc.assert(
    fc.property(temperature, temperature, temperature, temperature, (a, b, c, d) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const [base, ceiling] = [Math.min(c, d), Math.max(c, d) + 0.1];
      const wanted = integrated(high, low, base, ceiling);
      expect(Math.abs(answer(high, low, base, ceiling) - wanted)).toBeLessThan(1e-6 * (1 + high - low));
      expect(answer(high, low, base)).toBeGreaterThanOrEqual(answer(high, low, base, ceiling) - 1e-12);
    }),
    { numRuns: 60 },
  );
});

test("a day of one temperature, above, at and below the base", () => {
  expect(answer(20, 20, 14)).toBe(6);
  expect(answer(14, 14, 14)).toBe(0);
  expect(answer(10, 10, 14)).toBe(0);
  expect(answer(35, 35, 14, 31)).toBe(17);
});

test("in Fahrenheit, degree-days of Fahrenheit", () => {
  expect(answer(68, 41, 50, undefined, "imperial")).toBeCloseTo(1.8 * answer(20, 5, 10), 9);
  expect(answer(86, 32, 50, 77, "imperial")).toBeCloseTo(1.8 * answer(30, 0, 10, 25), 9);
});

test("what cannot be answered", () => {
  expect(callCell(degreeDays, 5, 20, 10)).toBe("#VALUE! low holds 20 °C, above high 5 °C: are they swapped?");
  expect(callCell(degreeDays, 41, 68, 50, undefined, "imperial")).toBe(
    "#VALUE! low holds 68 °F, above high 41 °F: are they swapped?",
  );
  expect(callCell(degreeDays, 20, 5, 10, 10)).toBe("#VALUE! ceiling holds 10 °C: give more than base, 10 °C");
  expect(callCell(degreeDays, 20, null, 10)).toBe("#N/A low is blank");
});

// The limits of the sine itself: no warmth, or all of it, and to the digit.
test("a high that only reaches the base adds nothing, a low that reaches it the whole middle of the day", () => {
  expect(answer(14, 5, 14)).toBe(0);
  expect(answer(14.3, 0.1, 14.3)).toBe(0);
  expect(answer(20, 10, 10)).toBe(5);
  expect(answer(1.2, 0.1, 0.1)).toBeCloseTo(0.55, 12);
});

// As a formula may work them out: a tenth is no finite binary fraction.
const HAIR = 2 ** -52;
test.each([0.1, 0.2, 0.3, 2.5])("a base a hair above a low of %d °C counts as one at it", (low) => {
  for (let tenths = 1; tenths <= 200; tenths++) {
    expect(answer(low + tenths / 10, low, low * (1 + HAIR))).toBeCloseTo(tenths / 20, 9);
  }
});

test.each([-0.1, -0.6, -1.1, -1.6])("a base a hair below a high of %d °C counts as one at it", (high) => {
  for (let tenths = 1; tenths <= 300; tenths++) {
    expect(answer(high, high - tenths / 10, high * (1 + HAIR))).toBeCloseTo(0, 9);
  }
});
