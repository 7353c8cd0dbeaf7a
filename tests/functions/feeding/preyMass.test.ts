import fc from "fast-check";
import { preyMass } from "../../../functions/feeding/preyMass";
import { preyRatio } from "../../../functions/feeding/preyRatio";
import { callCell } from "../../call";

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
