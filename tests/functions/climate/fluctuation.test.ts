import { fluctuation } from "../../../functions/climate/fluctuation";
import { call, callCell, down } from "../../call";
import { stations } from "../../tables/dailyRanges.json";
import { yardstick } from "../../yardstick";

// High, low and range are each rounded to a tenth of a degree Fahrenheit: 0.15 of them at most.
yardstick(
  fluctuation,
  { against: "NOAA monthly normals, mean of the daily ranges, in °F", within: 0.15, unit: "°F" },
  () =>
    stations.flatMap(({ high, low, range }) =>
      range.map((one, month) => [callCell(fluctuation, high[month], low[month], "imperial") as number, one] as const),
    ),
);

// By definition: the figures can be checked by head.
test.each([
  [18.5, 7, 11.5],
  [0, -12, 12],
  [9, 9, 0],
])("from %d to %d is %d", (high, low, swing) => expect(callCell(fluctuation, high, low)).toBeCloseTo(swing, 12));

test("a difference in Fahrenheit has no 32 in it", () =>
  expect(callCell(fluctuation, 68, 50, "imperial")).toBeCloseTo(18, 9));

test("a low above its high is refused, in the keeper's own unit", () => {
  expect(callCell(fluctuation, 7, 18.5)).toBe("#VALUE! low holds 18.5 °C, above high 7 °C: are they swapped?");
  expect(callCell(fluctuation, 10, 10.001)).toBe("#VALUE! low holds 10.001 °C, above high 10 °C: are they swapped?");
  expect(callCell(fluctuation, 50, 68, "imperial")).toBe(
    "#VALUE! low holds 68 °F, above high 50 °F: are they swapped?",
  );
});

test("one bad row spoils its own answer only", () =>
  expect(call(fluctuation, down([10, null, 5, null]), down([2, 1, 8, null]))).toEqual([
    [8],
    ["#N/A high is blank"],
    ["#VALUE! low holds 8 °C, above high 5 °C: are they swapped?"],
    [""],
  ]));
