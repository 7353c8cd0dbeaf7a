import fc from "fast-check";
import { preyMass } from "../../../functions/feeding/preyMass";
import { preyRatio } from "../../../functions/feeding/preyRatio";
import { call, callCell, down } from "../../call";
import meals from "../../tables/meals.json";
import { yardstick } from "../../yardstick";

// by definition: the ratio of the prey answered is the ratio asked for
test("PREYRATIO gives the ratio back", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 20_000, noNaN: true }),
      fc.double({ min: 0.001, max: 1, noNaN: true }),
      (body, ratio) => {
        expect(callCell(preyRatio, callCell(preyMass, body, ratio), body)).toBeCloseTo(ratio, 12);
      },
    ),
  );
});

test("a ratio above 1 is a percentage or a slip", () => {
  expect(callCell(preyMass, 240, 1)).toBe(240);
  expect(callCell(preyMass, 240, 10)).toBe("#VALUE! ratio holds 10: give a number from 0.001 to 1; 10 % is 0.1");
  expect(callCell(preyMass, 240, "10%")).toMatch(/^#VALUE! ratio holds '10%'.*10 % is 0\.1$/);
  expect(callCell(preyMass, 240, 0)).toMatch(/^#VALUE! ratio holds 0/);
});

test("a body of nothing has no meal", () => {
  expect(callCell(preyMass, 0, 0.1)).toMatch(/^#VALUE! body holds 0/);
  expect(callCell(preyMass, null, 0.1)).toBe("#N/A body is blank");
  expect(callCell(preyMass, null, null)).toBe("");
});

// What snakes ate, found again from their mass and the ratio that another program made of both; six digits of it are written down.
const eaten = meals.rows.filter((row) => (row[4] as number) <= 1);
yardstick(preyMass, { against: "SquamataBase 2020, ratios by pandas", within: 1e-5, unit: "share" }, () => {
  const found = call(preyMass, down(eaten.map((row) => row[1])), down(eaten.map((row) => row[4]))).flat();
  return found.map((mass, i) => [mass as number, eaten[i]?.[3] as number] as const);
});
