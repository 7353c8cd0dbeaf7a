import { sheets } from "../../taskpane/sheets/catalogue";
import { areaOf, inside } from "../../taskpane/sheets/shared/address";
import { callsIn } from "../../taskpane/sheets/shared/calls";
import { exampleIn, unitNamedIn, wordsIn } from "../../taskpane/sheets/shared/quantities";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import { cleared } from "../../taskpane/sheets/clear";

// By definition: 15 °C are 59 °F, 1 K is 1.8 °F, a foot is 0.3048 m, an inch 25.4 mm, a mile 1609.344 m, an ounce 28.349523 g.
test.each([
  ["Nights below 15 °C: warmer", "Nights below 59 °F: warmer"],
  ["from 4 to 10 °C", "from 39.2 to 50 °F"],
  ["Days with a mean outside 23-31 °C.", "Days with a mean outside 73.4-87.8 °F."],
  ["0.5 K a day, one K is one degree", "0.9 °F a day, one °F is one degree"],
  ["328 m of gap, 10 km away", "1076 ft of gap, 6.2 mi away"],
  ["6.5 K per km", "3.6 °F per 1000 ft"],
  ["Laid 7 eggs, 78 g", "Laid 7 eggs, 2.8 oz"],
  ["Length, cm", "Length, inches"],
  ["mm a week", "inches a week"],
  ["Rain mm", "Rain in."],
  ["I'm at home, e.g. in room K2; VIV.MASS, 5 % of 3 l", "I'm at home, e.g. in room K2; VIV.MASS, 5 % of 3 l"],
])("%s: %s", (metric, imperial) => {
  expect(wordsIn(metric, "imperial")).toBe(imperial);
  expect(wordsIn(metric, "metric")).toBe(metric);
});

test("the unit that words name", () => {
  expect(["Too cold below, °C: call at once", "Fall, K per km", "% a day", "Sex"].map(unitNamedIn)).toEqual([
    "celsius",
    "kelvinPerKilometre",
    undefined,
    undefined,
  ]);
});

test("an example's figure as a keeper would have written it, small ones to the digits that they have", () => {
  expect(exampleIn(1500, "metre", "imperial")).toBe(4921);
  expect(exampleIn(312, "gram", "imperial")).toBe(11.005);
  expect(exampleIn(1.2, "gram", "imperial")).toBe(0.042329);
  expect(exampleIn(4, "celsius", "imperial")).toBe(39.2);
});

test.each([
  ["=VIV.LAPSE(A1,B1,C1)", '=VIV.LAPSE(A1,B1,C1,"","imperial")'],
  ['=VIV.DAYTABLE(A1:A9,B1:B9,"metric",C1)', '=VIV.DAYTABLE(A1:A9,B1:B9,"imperial",C1)'],
  ['=IF(A1="VIV.LAPSE(1","",VIV.STAGE(A1,B1:B6))', '=IF(A1="VIV.LAPSE(1","",VIV.STAGE(A1,B1:B6))'],
  [
    "=VIV.MEDIAN24(VIV.DEWPOINT(A1,B1),{1,2;3,4})",
    '=VIV.MEDIAN24(VIV.DEWPOINT(A1,B1,"imperial"),{1,2;3,4},"imperial")',
  ],
])("calls: %s", (metric, imperial) => expect(callsIn(metric, "imperial")).toBe(imperial));

test("a call that has units of its own is not written over", () =>
  expect(() => callsIn("=VIV.MEDIAN24(A1,B1,C1)", "imperial")).toThrow("units of its own"));

test("a limit that is the keeper's to change is the same in both, to less than what a scale shows", () => {
  for (const sheet of sheets) {
    const other = inSystem(sheet, "imperial");
    for (const [i, { role, at, rows }] of sheet.blocks.entries()) {
      const unit = sheet.quantities.find(({ range }) => inside(areaOf(at), areaOf(range)))?.unit;
      const [metric, imperial] = [rows[0]?.[0], other.blocks[i]?.rows[0]?.[0]];
      if (role !== "setting" || typeof metric !== "number" || typeof imperial !== "number") continue;
      const there = { celsius: metric * 1.8 + 32, kelvin: metric * 1.8, gram: (metric / 453.59237) * 16 };
      if (unit && unit in there)
        expect([sheet.key, at, imperial]).toEqual([sheet.key, at, expect.closeTo(there[unit as "gram"], 5)]);
    }
  }
});

test("what is filled in or cleared already is not drawn in the other system", () => {
  const [sheet] = sheets as [(typeof sheets)[number]];
  expect(() => inSystem(cleared(sheet), "imperial")).toThrow("first the system");
  expect(inSystem(inSystem(sheet, "imperial"), "metric")).toBe(sheet);
});
