import fc from "fast-check";
import { preyItems } from "../../../functions/feeding/preyItems";
import { callCell } from "../../call";

const mass = fc.double({ min: 1, max: 5000, noNaN: true });
const ratio = fc.double({ min: 0.005, max: 1, noNaN: true });

// by definition
test("never passes the meal ratio unless one item alone does, and one more item would pass it", () => {
  fc.assert(
    fc.property(mass, fc.double({ min: 0.01, max: 1, noNaN: true }), ratio, (body, share, mealRatio) => {
      const item = Math.max(0.1, body * share);
      fc.pre(item <= body);
      const items = callCell(preyItems, body, item, mealRatio, 1) as number;
      const meal = (n: number) => (n * item) / body;
      expect(Number.isInteger(items)).toBe(true);
      expect(items).toBeGreaterThanOrEqual(1);
      // 1e-8: rounding only, see the next test.
      if (items > 1) expect(meal(items)).toBeLessThanOrEqual(mealRatio * (1 + 1e-8));
      expect(meal(items + 1)).toBeGreaterThan(mealRatio);
    }),
  );
});

test("a meal that items make exactly is not one item short by rounding", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 60 }), (items, item) => {
      const body = 1000;
      fc.pre(items * item <= body);
      expect(callCell(preyItems, body, item, (items * item) / body, 1)).toBe(items);
    }),
  );
  expect(callCell(preyItems, 100, 10, 0.3)).toBe(3);
  expect(callCell(preyItems, 3, 0.1, 0.3)).toBe(9);
});

// common practice, no source: no single item above 15 % of the body for snakes with small heads
test("one item heavier than its limit is refused with its ratio, and the limit itself passes", () => {
  expect(callCell(preyItems, 200, 30, 0.1)).toBe(1);
  expect(callCell(preyItems, 200, 30.1, 0.1)).toBe(
    "#VALUE! item holds 30.1 g, 0.1505 of the body: give prey of at most 0.15 of it",
  );
  expect(callCell(preyItems, 200, 50, 0.3, 0.2)).toBe(
    "#VALUE! item holds 50 g, 0.25 of the body: give prey of at most 0.2 of it",
  );
  expect(callCell(preyItems, 200, 50, 0.3, 0.25)).toBe(1);
});

test("bad rows spoil only themselves", () => {
  expect(callCell(preyItems, null, null, null)).toBe("");
  expect(callCell(preyItems, 200, null, 0.1)).toBe("#N/A item is blank");
  expect(callCell(preyItems, 200, 8, 12)).toMatch(/^#VALUE! mealRatio holds 12.*10 % is 0\.1$/);
});
