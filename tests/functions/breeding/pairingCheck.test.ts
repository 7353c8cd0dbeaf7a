import fc from "fast-check";
import { pairingCheck } from "../../../functions/breeding/pairingCheck";
import { pairingRules } from "../../../functions/rules/pairing";
import { NOTHING } from "../../../functions/rules/rule";
import { call } from "../../call";

const check = (...given: unknown[]) => call(pairingCheck, ...given) as [string, string][];
const nothing = [["note", NOTHING]];

test("nothing stands out, and it claims to be no veterinary check", () => {
  expect(check(30, 260, 24, 220)).toEqual(nothing);
  expect(check(30, 260, 24, 220, 0, 1, 1)).toEqual(nothing);
  expect(NOTHING).toMatch(/no veterinary check/);
});

test("in ounces", () =>
  expect(check(30, 8, 24, 8.5, "", "", "", "imperial")).toEqual([["stop", expect.stringMatching(/8 of 8\.5 oz/)]]));

// common practice, no source: males from 18 months
test("males from 18 months", () => {
  expect(check(18, 200, 18, 150)).toEqual(nothing);
  expect(check(17, 200, 12, 150)).toEqual([
    [
      "care",
      "Only 17 months old: 18 months are usual for a male, and no less for a female (common practice, no source).",
    ],
  ]);
  expect(check(17, 200, 18, 150).map(([level]) => level)).toEqual(["stop", "care"]);
});

// by definition: a limit is passed at the limit, and not one step before it
test.each([
  ["too young", [24, 260, 24, 220], [23, 260, 24, 220], ["stop", "Too young, 23 of 24 months (your own limit)."]],
  ["too light", [30, 220, 24, 220], [30, 219.5, 24, 220], ["stop", "Too light, 219.5 of 220 g (your own limit)."]],
  [
    "enough clutches",
    [30, 260, 24, 220, 1, 2],
    [30, 260, 24, 220, 2, 2],
    ["stop", "Enough clutches this season, 2 of 2 (your own limit)."],
  ],
  [
    "too many clutches",
    [30, 260, 24, 220, 0, 1],
    [30, 260, 24, 220, 3, 2],
    ["stop", "Enough clutches this season, 3 of 2 (your own limit)."],
  ],
  [
    "none allowed",
    [30, 260, 24, 220, 0, 1],
    [30, 260, 24, 220, 0, 0],
    ["stop", "Enough clutches this season, 0 of 0 (your own limit)."],
  ],
  [
    "not back to her weight",
    [30, 260, 24, 220, 1, 2, 1],
    [30, 260, 24, 220, 1, 2, 0.9999],
    ["care", "Not back to her weight, 99.99 % of it: feed her up first (common practice, no source)."],
  ],
])("%s", (_, passes, fires, wanted) => {
  expect(check(...passes)).toEqual(nothing);
  expect(check(...fires)).toEqual([wanted]);
});

test("a share just short of her weight never reads as 100 %", () =>
  expect(check(30, 260, 24, 220, 1, 2, 0.999999)[0]?.[1]).toMatch(/^Not back to her weight, 99\.9999 % of it/));

test("clutches without their limit, and a limit without clutches, are told as not judged", () => {
  expect(check(30, 260, 24, 220, 1)).toEqual([
    ["note", "Clutches not judged: mostClutches is blank (your own limit)."],
  ]);
  expect(check(30, 260, 24, 220, null, 2)).toEqual([
    ["note", "Clutches not judged: clutches is blank (your own limit)."],
  ]);
});

test("never silent about a stop, gravest first, and every line says where its limit is from", () => {
  const rank = ["stop", "care", "note"];
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 60 }),
      fc.double({ min: 50, max: 500, noNaN: true }),
      fc.integer({ min: 6, max: 48 }),
      fc.double({ min: 50, max: 500, noNaN: true }),
      fc.option(fc.integer({ min: 0, max: 4 })),
      fc.option(fc.integer({ min: 0, max: 4 })),
      fc.option(fc.double({ min: 0.5, max: 1.5, noNaN: true })),
      (age, mass, leastAge, leastMass, clutches, mostClutches, ratio) => {
        const rows = check(age, mass, leastAge, leastMass, clutches, mostClutches, ratio);
        const stops =
          Number(age < leastAge) +
          Number(mass < leastMass) +
          Number(clutches !== null && mostClutches !== null && clutches >= mostClutches);
        expect(rows.filter(([level]) => level === "stop")).toHaveLength(stops);
        expect(rows.some(([, words]) => words.startsWith("Not back"))).toBe(ratio !== null && ratio < 1);
        const ranks = rows.map(([level]) => rank.indexOf(level));
        expect(ranks).toEqual([...ranks].sort());
        for (const [, words] of rows) {
          expect(words).not.toMatch(/undefined|NaN|\{/);
          expect(words).toMatch(/\((your own limit|common practice, no source)\)\.$|^Nothing/);
        }
      },
    ),
  );
});

test("the table of rules is complete: one limit each, and no rule of a level but the three", () => {
  for (const { under, over, level, words } of pairingRules) {
    expect([under, over].filter((limit) => limit !== undefined)).toHaveLength(1);
    expect(["stop", "care", "note"]).toContain(level);
    expect(words).toContain("{is}");
  }
});

test("what cannot be answered", () => {
  expect(check(30, null, 24, 220)).toEqual([["#N/A mass is blank"]]);
  expect(check(30, 260, 24, 220, 1, 2, 94)[0]?.[0]).toMatch(/^#VALUE! lastMassRatio holds 94: .*90 % is 0\.9$/);
  expect(check(30, [[260, 270]], 24, 220)).toEqual([["#VALUE! mass holds 1 by 2 cells: give one cell"]]);
  expect(check(null, null, null, null)).toEqual([[""]]);
});
