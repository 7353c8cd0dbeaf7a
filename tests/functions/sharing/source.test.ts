import { catalogue } from "../../../functions/catalogue";
import { citation, sources, type SourceKey } from "../../../functions/sources";
import { editDistance } from "../../../functions/shared/nearest";
import { boxAir } from "../../../functions/winter/boxAir";
import { oxygenUse } from "../../../functions/winter/oxygenUse";
import { call, callCell } from "../../call";

const source = catalogue.find(({ name }) => name === "SOURCE") as (typeof catalogue)[number];

// By definition: the answer is the list that the function itself carries.
test("every function has a citation, one a row", () => {
  for (const { name, sources: keys } of catalogue) {
    const rows = call(source, name);
    expect(rows.every((row) => row.length === 1)).toBe(true);
    expect(rows.map(([text]) => String(text).replace(/ From memory\.$/, ""))).toEqual(
      keys.map((key) => sources[key].text),
    );
  }
});

test("what was not read says so", () => {
  for (const { name, sources: keys } of catalogue) {
    const rows = call(source, name);
    for (const [i, key] of keys.entries()) {
      if (sources[key].status === "recalled") expect(String(rows[i]?.[0])).toMatch(/from memory/i);
    }
  }
});

test.each([
  "LAPSE",
  "lapse",
  " Lapse ",
  "VIV.LAPSE",
  "viv.lapse",
  "=VIV.LAPSE(",
  "=VIV.LAPSE(A1,300,1400)",
  "=LAPSE()",
  "= @VIV.LAPSE(A1)",
  "LAPSE (A1,\n300)",
])("%p is LAPSE", (given) => expect(call(source, given)).toEqual(call(source, "LAPSE")));

test("an unknown name gets the three nearest", () => {
  expect(callCell(source, "LAPZE")).toMatch(/^#N\/A function holds 'LAPZE': the nearest names are LAPSE, \w+, \w+$/);
  expect(callCell(source, "=VIV.RAMPDATE(A1)")).toMatch(/the nearest names are RAMPDATES, /);
  expect(callCell(source, "LAP SE")).toMatch(/^#N\/A function holds 'LAP SE': the nearest names are LAPSE, /);
  expect(callCell(source, "x".repeat(40))).toMatch(/^#N\/A function holds 'x{40}': the nearest names are /);
  expect(callCell(source, "x".repeat(41))).toMatch(/^#N\/A function holds 'x{40}…': the nearest names are /);
  expect(callCell(source, "x".repeat(99))).toMatch(/^#N\/A function holds 'x{40}…': the nearest names are /);
});

// Textbook distances (Levenshtein), known by heart and countable by hand.
test.each([
  ["KITTEN", "SITTING", 3],
  ["SATURDAY", "SUNDAY", 3],
  ["", "RAMP", 4],
  ["RAMP", "RAMP", 0],
])("from %p to %p are %i steps", (one, other, steps) => {
  expect(editDistance(one, other)).toBe(steps);
  expect(editDistance(other, one)).toBe(steps);
});

// What has been read of a source, and what has not, stands in its text.
test.each<[SourceKey, RegExp, RegExp]>([
  ["costanzo", /Physiological Zoology \(abstract\)/, /58|692/],
  [
    "peel2007",
    /limit of dryness were read\. The other limits were read in the program of Beck et al\. \(2018\);/,
    /Table 1\. The rule/,
  ],
  ["wmo8", /as the manual of a sensor quotes it.*-45 to 60 °C is from memory/, /phase\.$/],
  ["duJi", /^Du & Ji \(2008\)\. The effects of incubation temperature .* \(abstract\)/, /Herpetological|vol/],
])("%s is cited as far as it is known", (key, says, not) => {
  expect(citation(key)).toMatch(says);
  expect(citation(key)).not.toMatch(not);
});

test("limits that are ours are not said to be the method's", () => {
  for (const definition of [oxygenUse, boxAir]) {
    for (const parameter of [definition.parameters.mass, definition.parameters.temperature]) {
      expect([parameter.limits?.plausibility, parameter.about]).toEqual([
        true,
        expect.stringMatching(/the limits are ours$/),
      ]);
    }
  }
});
