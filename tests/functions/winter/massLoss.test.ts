import fc from "fast-check";
import { massLoss } from "../../../functions/winter/massLoss";
import { call, callCell, down } from "../../call";
import weighings from "../../tables/weighings.json";
import { yardstick } from "../../yardstick";

test("a loss is a share of the mass at the start, a gain is negative (by definition)", () => {
  expect(callCell(massLoss, 320, 312)).toBe(0.025);
  expect(callCell(massLoss, 320, 324)).toBe(-0.0125);
  expect(callCell(massLoss, 320, 320)).toBe(0);
});

test("what is left and what is lost make one", () => {
  const mass = fc.double({ min: 0.1, max: 200_000, noNaN: true });
  fc.assert(
    fc.property(mass, mass, (start, now) => {
      const lost = callCell(massLoss, start, now) as number;
      expect(lost).toBeLessThan(1);
      expect(Math.abs(start * (1 - lost) - now)).toBeLessThanOrEqual(1e-9 * (start + now));
    }),
  );
});

test("a blank weighing is no loss of everything", () => {
  expect(callCell(massLoss, 320, null)).toBe("#N/A now is blank");
  expect(callCell(massLoss, 320, 0)).toMatch(/^#VALUE! now holds 0: give a number from 0.1/);
});

// Chicks, gains and losses; 1e-11: the shares are rounded to twelve decimals.
yardstick(
  massLoss,
  {
    against: "ChickWeight (Crowder & Hand 1990), change of the mass by pandas",
    within: 1e-11,
    unit: "share of the mass",
  },
  () => {
    const { rows } = weighings;
    const lost = call(massLoss, down(rows.map((row) => row[2])), down(rows.map((row) => row[4]))).flat();
    return lost.map((share, i) => [share as number, rows[i]?.[5] as number] as const);
  },
);
