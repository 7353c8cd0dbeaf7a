import fc from "fast-check";
import { boxAir } from "../../../functions/winter/boxAir";
import { openEvery } from "../../../functions/winter/openEvery";
import { call, callCell } from "../../call";

test("half of BOXAIR's soonest hours in days, and a week at the most", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 2000, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
      fc.double({ min: 0.05, max: 200, noNaN: true }),
      fc.integer({ min: 1, max: 12 }),
      (mass, temperature, litres, animals) => {
        const soonest = call(boxAir, mass, temperature, litres, 800, null, animals)[0]?.[0];
        const every = callCell(openEvery, mass, temperature, litres, 800, null, animals);
        if (typeof soonest === "string") expect(every).toBe(soonest);
        else expect(every).toBeCloseTo(Math.min((soonest as number) / 48, 7), 9);
      },
    ),
    { numRuns: 60 },
  );
});

test("a small box stays below a day, and is not rounded up to one", () => {
  const every = callCell(openEvery, 306, 12, 2, 182) as number;
  expect(every).toBeGreaterThan(0);
  expect(every).toBeLessThan(0.5);
});

test("warmer, heavier, higher, fuller: never later", () => {
  const every = (...given: unknown[]) => callCell(openEvery, ...given) as number;
  const base = every(300, 8, 6);
  for (const more of [
    every(300, 12, 6),
    every(400, 8, 6),
    every(300, 8, 5),
    every(300, 8, 6, 2000),
    every(150, 8, 6, 0, null, 2),
  ])
    expect(more).toBeLessThan(base);
});
