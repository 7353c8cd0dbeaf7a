import fc from "fast-check";
import { preyRatio } from "../../../functions/feeding/preyRatio";
import { call, callCell, down } from "../../call";
import { median } from "../../statistics";
import meals from "../../tables/meals.json";
import { yardstick, yardstickOf } from "../../yardstick";

test("prey mass ÷ body mass (by definition)", () => {
  expect(callCell(preyRatio, 18, 240)).toBe(0.075);
  expect(callCell(preyRatio, 9 + 9, 240)).toBe(0.075);
  expect(callCell(preyRatio, 0, 240)).toBe(0);
});

test("body times ratio is the prey again", () => {
  const prey = fc.double({ min: 0, max: 100_000, noNaN: true });
  const body = fc.double({ min: 0.1, max: 200_000, noNaN: true });
  fc.assert(
    fc.property(prey, body, (meal, animal) => {
      const ratio = callCell(preyRatio, meal, animal) as number;
      expect(ratio).toBeGreaterThanOrEqual(0);
      expect(Math.abs(ratio * animal - meal)).toBeLessThanOrEqual(1e-12 * meal + 1e-300);
    }),
  );
});

test("a log of meals, a row not yet filled among them", () =>
  expect(call(preyRatio, down([18, null, 12, 20]), down([240, null, null, 250]))).toEqual([
    [0.075],
    [""],
    ["#N/A body is blank"],
    [0.08],
  ]));

test.each([
  ["a body of nothing", [18, 0], "#VALUE! body holds 0: give a number from 0.1 to 200000 g"],
  ["a body below nothing", [18, -240], "#VALUE! body holds -240: give a number from 0.1 to 200000 g"],
  ["prey below nothing", [-1, 240], "#VALUE! prey holds -1: give a number from 0 to 100000 g"],
  ["a unit typed with the figure", ["18 g", 240], "#VALUE! prey holds '18 g': give a number from 0 to 100000 g"],
])("%s is told", (_, given, message) => expect(callCell(preyRatio, ...given)).toBe(message));

const [bodies, prey] = [meals.rows.map((row) => row[1] as number), meals.rows.map((row) => row[3] as number)];
const ratios = () => call(preyRatio, down(prey), down(bodies)).flat() as number[];

// Meals of wild snakes whose masses were noted, and their ratio by another program; six digits are written down.
yardstick(
  preyRatio,
  { against: "SquamataBase 2020, prey by predator mass by pandas", within: 1e-5, unit: "share" },
  () => ratios().map((ratio, i) => [ratio, meals.rows[i]?.[4] as number] as const),
);
yardstickOf(
  preyRatio,
  { against: "SquamataBase 2020", figure: "median of 60 meals", least: 0.1, most: 0.3, unit: "share" },
  () => ({ figure: median(ratios()), values: meals.rows.length }),
);
