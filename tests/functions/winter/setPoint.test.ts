import fc from "fast-check";
import { setPoint } from "../../../functions/winter/setPoint";
import { call, callCell, down } from "../../call";
import { anyDay, anyLengths, datesFrom, practicePlan } from "./plans";
import { plans } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

// "+ 0" makes a 0 of a -0.
const temperatures = fc
  .tuple(fc.double({ min: -10, max: 40, noNaN: true }), fc.double({ min: -10, max: 40, noNaN: true }))
  .map(([a, b]) => ({ warm: Math.max(a, b) + 0, cold: Math.min(a, b) + 0 }));

test("on the six dates it is exactly warm or cold, and never outside the two (by definition)", () => {
  fc.assert(
    fc.property(anyDay, anyLengths, temperatures, (lastMeal, lengths, { warm, cold }) => {
      const dates = datesFrom(lastMeal, lengths);
      const plan = down(dates);
      const ends = [warm, warm, cold, cold, warm, warm];
      expect(call(setPoint, down(dates), plan, warm, cold)).toEqual(down(ends));
      const everyDay = Array.from({ length: (dates[5] as number) - lastMeal + 21 }, (_, i) => lastMeal - 10 + i);
      const answers = call(setPoint, down(everyDay), plan, warm, cold).flat() as number[];
      for (const answer of answers) {
        expect(answer).toBeGreaterThanOrEqual(cold);
        expect(answer).toBeLessThanOrEqual(warm);
      }
      // Continuous: no day's step is larger than the steeper leg's, but for rounding.
      const steepest = (warm - cold) / Math.min(lengths[1], lengths[3]);
      for (let i = 1; i < answers.length; i++) {
        expect(Math.abs((answers[i] as number) - (answers[i - 1] as number))).toBeLessThanOrEqual(steepest + 1e-9);
      }
    }),
    { numRuns: 60 },
  );
});

test("falls on the way down, rises on the way up, and lies half way in the middle of a leg", () => {
  const [, coolingStarts, intoTheCold, warmingStarts, warmAgain] = practicePlan as [
    number,
    number,
    number,
    number,
    number,
  ];
  const on = (day: number) => callCell(setPoint, day, down(practicePlan), 24, 8) as number;
  expect(on((coolingStarts + intoTheCold) / 2)).toBe(16);
  expect(on((warmingStarts + warmAgain) / 2)).toBe(16);
  for (let day = coolingStarts; day < intoTheCold; day++) expect(on(day + 1)).toBeLessThan(on(day));
  for (let day = warmingStarts; day < warmAgain; day++) expect(on(day + 1)).toBeGreaterThan(on(day));
});

test("takes the plan with its stages, as dates alone, in a column or a row", () => {
  const day = (practicePlan[1] as number) + 10;
  const alone = callCell(setPoint, day, down(practicePlan), 24, 8);
  expect(callCell(setPoint, day, [practicePlan], 24, 8)).toBe(alone);
  expect(
    callCell(
      setPoint,
      day,
      practicePlan.map((date, i) => [`Row ${i}`, date]),
      24,
      8,
    ),
  ).toBe(alone);
  expect(alone).toBeCloseTo(24 - (16 * 10) / 42, 12);
});

test("warm and cold may be the same: then it stays so", () =>
  expect(call(setPoint, down(practicePlan), down(practicePlan), 15.3, 15.3)).toEqual(down(Array(6).fill(15.3))));

test("degrees Fahrenheit in, degrees Fahrenheit out", () => {
  expect(callCell(setPoint, practicePlan[3], down(practicePlan), 75.2, 46.4, "imperial")).toBeCloseTo(46.4, 10);
  expect(callCell(setPoint, practicePlan[0], down(practicePlan), 75.2, 46.4, "imperial")).toBeCloseTo(75.2, 10);
});

test("a blank day in a column is a blank answer, and does not spoil its neighbours", () => {
  const answer = call(setPoint, down([practicePlan[2], null, practicePlan[4]]), down(practicePlan), 24, 8);
  expect(answer).toEqual([[8], ["#N/A dates is blank"], [24]]);
});

test.each<[string, unknown[], string]>([
  [
    "warm and cold swapped",
    [practicePlan[0], down(practicePlan), 8, 24],
    "#VALUE! cold holds 24 °C, above warm 8 °C: are they swapped?",
  ],
  [
    "swapped in °F",
    [practicePlan[0], down(practicePlan), 46, 75, "imperial"],
    "#VALUE! cold holds 75 °F, above warm 46 °F: are they swapped?",
  ],
  [
    "swapped by a hair",
    [practicePlan[0], down(practicePlan), 8.001, 8.002],
    "#VALUE! cold holds 8.002 °C, above warm 8.001 °C: are they swapped?",
  ],
  ["a plan of five dates", [practicePlan[0], down(practicePlan.slice(1)), 24, 8], "#VALUE! plan holds 5 cells: give 6"],
  [
    "a date left out",
    [practicePlan[0], down(practicePlan.map((date, i) => (i === 3 ? null : date))), 24, 8],
    "#N/A row 4 of plan is blank",
  ],
  [
    "dates out of order",
    [
      practicePlan[0],
      down(["2027-09-20", "2027-10-04", "2027-09-30", "2028-02-07", "2028-03-20", "2028-03-27"]),
      24,
      8,
    ],
    "#VALUE! plan holds Into the cold 2027-09-30, before Cooling starts 2027-10-04: give its dates in order",
  ],
])("%s is told", (_, given, message) => expect(callCell(setPoint, ...given)).toBe(message));

test("a leg of no days is a jump on its date, and the days around it are not touched", () => {
  const on = (dates: readonly number[], days: readonly number[]) =>
    call(setPoint, down(days), down(dates), 24, 8).flat();
  const down0 = datesFrom(46_300, [14, 0, 84, 42, 7]);
  expect(on(down0, [46_313, 46_314, 46_315])).toEqual([24, 8, 8]);
  const up0 = datesFrom(46_300, [14, 42, 84, 0, 7]);
  expect(on(up0, [46_439, 46_440, 46_441])).toEqual([8, 24, 24]);
  const all0 = datesFrom(46_300, [0, 0, 0, 0, 0]);
  expect(on(all0, [46_299, 46_300, 46_301])).toEqual([24, 24, 24]);
});

// Straight lines through the same points; nine decimals are written down.
yardstick(setPoint, { against: "numpy 1.24.2 interp", within: 1e-8, unit: "K" }, () =>
  plans.flatMap(({ dates, warm, cold, days, setPoints }) =>
    call(setPoint, down(days), down(dates), warm, cold).map(
      ([one], i) => [one as number, setPoints[i] as number] as const,
    ),
  ),
);
