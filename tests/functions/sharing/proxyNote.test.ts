import { proxyNote } from "../../../functions/sharing/proxyNote";
import { call, callCell, down } from "../../call";

const ENDING = "and show the year's curve, not the place where the animal sits.";

// By definition: the words say what the arguments hold, and claim nothing that was not done.
test.each([
  [
    ["Pass (invented)", 700, 1200, 1800, 35.4, "high"],
    `Pass (invented), 700 m, lies 500 m below the animal's band of 1200 to 1800 m and 35 km away; its temperatures are corrected at 6.5 K per km, ${ENDING}`,
  ],
  [
    ["Summit (invented)", 2400, 1200, 1800, null, 5.25],
    `Summit (invented), 2400 m, lies 600 m above the animal's band of 1200 to 1800 m; its temperatures are corrected at 5.25 K per km, ${ENDING}`,
  ],
  [
    ["Summit (invented)", 2400, 1200, 1800, null, "high", "low"],
    `Summit (invented), 2400 m, lies 600 m above the animal's band of 1200 to 1800 m; its highs are corrected at 6.5 and its lows at 4.5 K per km, ${ENDING}`,
  ],
  [
    ["Inn (invented)", 1500, 1200, 1800],
    `Inn (invented), 1500 m, lies in the animal's band of 1200 to 1800 m; its temperatures are not corrected for elevation, ${ENDING}`,
  ],
])("%j", (given, sentence) => expect(callCell(proxyNote, ...given)).toBe(sentence));

test("is one sentence", () => {
  const note = callCell(proxyNote, "Inn (invented)", 1500, 1200, 1800, 10, "low") as string;
  expect(note.match(/[.!?](\s|$)/g)).toHaveLength(1);
});

test("a column of stations, a blank row and half a row", () => {
  const notes = call(proxyNote, down(["A (invented)", null, "B (invented)"]), down([100, null, null]), 1200, 1800);
  expect(notes[0]?.[0]).toMatch(/^A \(invented\), 100 m, lies 1100 m below/);
  expect(notes[2]?.[0]).toBe("#N/A stationElevation is blank");
});

test("half a metre outside the band is on its own side of it", () => {
  expect(callCell(proxyNote, "Inn (invented)", 1800.5, 1200, 1800)).toMatch(/lies 1 m above the animal's band/);
  expect(callCell(proxyNote, "Inn (invented)", 1199.5, 1200, 1800)).toMatch(/lies 1 m below the animal's band/);
});

test("a band upside down is refused", () =>
  expect(callCell(proxyNote, "A (invented)", 100, 1800, 1200)).toMatch(
    /^#VALUE! bandLow holds 1800 m, above bandHigh/,
  ));

test("blanks around the name are not told", () =>
  expect(callCell(proxyNote, "  Inn (invented) ", 1500, 1200, 1800)).toMatch(/^Inn \(invented\), 1500 m, lies/));

// By definition: a foot is 0.3048 m, a mile 1609.344 m; 6.5 K/km are 1.8 · 6.5 · 0.3048 = 3.57 °F per 1000 ft.
test("in feet, miles and °F", () =>
  expect(callCell(proxyNote, "Inn (invented)", 2000, 4000, 6000, 20, "high", "", "imperial")).toBe(
    `Inn (invented), 2000 ft, lies 2000 ft below the animal's band of 4000 to 6000 ft and 20 mi away; its temperatures are corrected at 3.57 °F per 1000 ft, ${ENDING}`,
  ));
