import { weights } from "../../taskpane/sheets/weights";
import { down, filled } from "./fill";

jest.setTimeout(30_000);

/** The median slope over all pairs, worked out here anew. */
const medianSlope = (points: readonly (readonly [day: number, mass: number])[]): number => {
  const slopes = points
    .flatMap(([day, mass], i) => points.slice(i + 1).map(([later, then]) => (then - mass) / (later - day)))
    .sort((a, b) => a - b);
  const middle = slopes.length / 2;
  return slopes.length % 2
    ? (slopes[Math.floor(middle)] as number)
    : ((slopes[middle - 1] as number) + (slopes[middle] as number)) / 2;
};

test("the trend takes the weighings of the last days only", async () => {
  // 91 days before the last is outside of the window of 90.
  const days = ["2026-06-22", "2026-06-23", "2026-07-20", "2026-08-10", "2026-09-21"];
  const masses = [400, 250, 256, 263, 270];
  const reading = await filled(weights, { ...down("A24", days), ...down("B24", masses) }, { cleared: true });
  expect(reading.at("J18")).toBeCloseTo(
    7 *
      medianSlope([
        [0, 250],
        [27, 256],
        [48, 263],
        [90, 270],
      ]),
    9,
  );
  expect(reading.at("J16")).toBe(270);
});

test("a row without a mass is passed over, and the changes are those from weighing to weighing", async () => {
  const reading = await filled(
    weights,
    { ...down("A24", ["2026-05-01", "2026-05-08", "2026-05-21"]), B24: 200, B26: 220, C25: 80 },
    { cleared: true },
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.block("D25:F25")).toEqual([["", "", ""]]);
  expect(reading.at("D26")).toBe(20);
  expect(reading.at("E26")).toBeCloseTo(0.1, 12);
  // By definition: 100 ln(220/200) / 20 days.
  expect(reading.at("F26")).toBeCloseTo((100 * Math.log(1.1)) / 20, 12);
  expect(reading.at("J17")).toBe(80);
});

test("a loss is flagged outside the fast; in the fast the words send to the Winter log", async () => {
  const reading = await filled(weights, { A37: "2026-12-01", B37: 290, A38: "2027-04-05", B38: 250 });
  expect(reading.block("I36:I38")).toEqual([[""], ["In the fast: see the Winter log"], ["Lost 13.8 % since the last"]]);
});

test("fewer than three animals with mass and length have no scaled mass; the others are held against their mean", async () => {
  const few = await filled(weights, { A88: "A", B88: 100, C88: 60, A89: "B", B89: 90 }, { cleared: true });
  expect(
    few
      .block("D88:G89")
      .flat()
      .filter((shown) => shown !== "" && shown !== null),
  ).toEqual([]);
  // Bodies of one shape, mass as the cube of length, have one scaled mass; the fourth is a fifth heavier.
  const cube = await filled(
    weights,
    { ...down("B88", [64, 125, 216, 343 * 1.2]), ...down("C88", [40, 50, 60, 70]) },
    { cleared: true },
  );
  const scaled = cube.block("D88:D91").flat() as number[];
  expect(scaled.every((mass) => mass > 100 && mass < 220)).toBe(true);
  expect(cube.at("E91")).toBeCloseTo((scaled[3] as number) / (scaled.reduce((a, b) => a + b) / 4), 12);
});
