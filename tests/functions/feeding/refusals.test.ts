import fc from "fast-check";
import { refusals } from "../../../functions/feeding/refusals";
import { callCell, down } from "../../call";
import { refusals as runs } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const TAKEN = ["taken", "Taken ", "YES", "yes", "y", "ate", "Eaten", true, 1, "1", "TRUE"];
const NOT_TAKEN = [
  ...["refused", " Refused", "regurgitated", "brought up", "Brought  Up", "left", "not eaten", "not taken"],
  ...["No", "n", false, 0, "0", "FALSE"],
];
const taken = fc.constantFrom(...TAKEN);
const notTaken = fc.constantFrom(...NOT_TAKEN);
const blank = fc.constantFrom(null, "", " ");

// by definition
test("what stands after the last meal taken is the streak, in any spelling and with any blanks", () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof(taken, notTaken, blank)),
      taken,
      fc.array(fc.oneof(notTaken, blank)),
      (before, last, streak) => {
        const wanted = streak.filter((outcome) => NOT_TAKEN.includes(outcome as string)).length;
        expect(callCell(refusals, down([...before, last, ...streak]))).toBe(wanted);
        expect(callCell(refusals, [[...before, last, ...streak]])).toBe(wanted);
      },
    ),
  );
});

test("a regurgitation counts as one and ends no streak", () => {
  expect(callCell(refusals, down(["taken", "refused", "regurgitated", "refused"]))).toBe(3);
  expect(callCell(refusals, down(["taken", "regurgitated"]))).toBe(1);
  expect(callCell(refusals, down(["regurgitated", "taken"]))).toBe(0);
});

test("an animal that has never eaten: all count", () => {
  expect(callCell(refusals, down(["refused", "refused", "refused", null, null]))).toBe(3);
});

test("a blank is no refusal, though 0 is one", () => {
  expect(callCell(refusals, down(["taken", null]))).toBe(0);
  expect(callCell(refusals, down(["taken", 0]))).toBe(1);
  expect(callCell(refusals, down([null, null]))).toBe("");
});

test("other text is refused with its place, wherever it stands", () => {
  expect(callCell(refusals, down(["maybe", null, "taken"]))).toBe(
    "#VALUE! row 1 of outcomes holds 'maybe': give taken, ate, eaten, yes, y, TRUE or 1; " +
      "refused, not taken, not eaten, left, no, n, FALSE or 0; regurgitated or brought up",
  );
  expect(callCell(refusals, down(["taken", null, "left a tail"]))).toMatch(
    /^#VALUE! row 3 of outcomes holds 'left a tail'/,
  );
  expect(callCell(refusals, down(["x".repeat(41)]))).toMatch(/^#VALUE! row 1 of outcomes holds 'x{40}': give taken/);
  expect(callCell(refusals, down(["taken", 2]))).toMatch(/^#VALUE! row 2 of outcomes holds '2'/);
});

// The last run of meals not kept. Exact.
yardstick(refusals, { against: "Python 3.11 itertools.groupby", within: 0, unit: "meals" }, () =>
  runs.map(({ outcomes, streak }) => [callCell(refusals, down(outcomes)) as number, streak] as const),
);
