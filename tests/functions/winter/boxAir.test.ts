import fc from "fast-check";
import psychrolib from "psychrolib";
import { cautions } from "../../../functions/cautions";
import { sources } from "../../../functions/sources";
import { boxAir } from "../../../functions/winter/boxAir";
import { call, down } from "../../call";
import table from "../../tables/oxygenUse.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const hours = (...given: unknown[]) => call(boxAir, ...given)[0] as [number, number, number, ...number[]];

/** Andrews & Pough (1985), eq. 2, and the curve of OXYGENUSE, written out again. */
const formula = (mass: number, temperature: number) => 0.013 * mass ** 0.8 * 10 ** (0.038 * temperature);
const likelyUse = (mass: number, temperature: number) =>
  formula(mass, Math.max(temperature, 25)) * 3.3 ** (Math.min(temperature - 25, 0) / 10);

/**
 * The rows were evaluated with the air as it is. Here the animal's volume is put back into the box, the hours are brought
 * to air at 0 °C by Gay-Lussac's law, and the formula to the curve; at sea level nothing else differs. The rows are
 * rounded to ten decimals.
 */
for (const [i, share] of [1 / 1.5, 1, 2].entries()) {
  const against = `Andrews & Pough 1985 evaluated in R 4.2.2, ${["soonest", "likely", "latest"][i]}`;
  yardstick(boxAir, { against, within: 1e-6, unit: "share" }, () =>
    table.shutBox.rows.map(({ mass, air, temperature, floor, hoursAtFullRate }) => [
      hours(mass, temperature, air + mass / 1000, 0, floor)[i] as number,
      ((share * hoursAtFullRate * 273.15) / (273.15 + temperature)) *
        (formula(mass, temperature) / likelyUse(mass, temperature)),
    ]),
  );
}

// By definition: animals that sit in boxes of their own, each with its part of the litres, need air at the same moment.
test.each([1, 2, 6, 10, 40])("%i animals need air when each of them would in its own part of the box", (animals) => {
  for (const [mass, temperature, elevation] of [
    [8, 5, 0],
    [60, 12, 800],
    [300, 22, 2400],
  ] as const) {
    const together = hours(mass, temperature, 3 * animals, elevation, 19, animals);
    const alone = hours(mass, temperature, 3, elevation, 19);
    for (const [i, value] of together.entries()) expect(value / (alone[i] as number)).toBeCloseTo(1, 10);
  }
});

test("ten hatchlings of 8 g need air in 63 % of the time of one snake of 80 g", () => {
  const ten = hours(8, 5, 2, 0, 19, 10);
  const one = hours(80, 5, 2);
  expect(one[1] / ten[1]).toBeCloseTo(10 ** 0.2, 10); // 58 % too long, if their masses were added up
});

// By definition: for every ml of oxygen, 0.7 ml of carbon dioxide come from fat, 1 from glycogen, 0.8 from both.
test.each([
  [20, 0.67, 0.76, 0.94],
  [19, 1.37, 1.56, 1.94],
  [18, 2.07, 2.36, 2.94],
])("at %i % of oxygen carbon dioxide stands where it must", (floor, ...wanted) => {
  const answer = hours(300, 5, 5.3, 0, floor);
  for (const [i, value] of wanted.entries()) expect(answer[3 + i]).toBeCloseTo(value, 10);
});

test("what the caution says of carbon dioxide is what is answered", () => {
  const [, , , least, likely, most] = hours(300, 5, 5.3) as number[];
  expect(cautions.boxFloor).toContain(`near ${(likely as number).toFixed(1)} %`);
  expect(least).toBeLessThan(1.5);
  expect(most).toBeGreaterThan(1.5);
  expect(sources.oda.text).toContain("1.5 to 6 %");
});

// The partial pressure of the floor, by ASHRAE's rounded constants.
yardstick(boxAir, { against: "psychrolib 1.1.1, standard pressure", within: 1e-4, unit: "share" }, () =>
  [-300, 0, 800, 2000, 4000].map((elevation) => [
    hours(300, 5, 5.3, elevation)[6] as number,
    (19 * psychrolib.GetStandardAtmPressure(elevation)) / psychrolib.GetStandardAtmPressure(0),
  ]),
);

/**
 * The air counted in another way: density of dry air at the standard pressure of the elevation (ASHRAE's rounded
 * constants) over 28.966 g per mol gives moles, and 22 414 ml a mole at 0 °C and 1013.25 hPa. Its gas constant and
 * pressure are rounded.
 */
yardstick(boxAir, { against: "psychrolib 1.1.1, density of dry air", within: 1e-4, unit: "share" }, () =>
  [0, 500, 1500, 2000, 3000, 4500].flatMap((elevation) =>
    [0, 5, 10, 20, 35].map((temperature) => {
      const density = psychrolib.GetDryAirDensity(temperature, psychrolib.GetStandardAtmPressure(elevation)); // kg/m³
      const millilitres = ((density * 5) / 28.966) * 22_413.97;
      return [
        hours(300, temperature, 5.3, elevation)[1],
        (millilitres * (0.209 - 0.19)) / likelyUse(300, temperature),
      ] as const;
    }),
  ),
);

test("a litre of box air at 5 °C and 795 hPa holds 0.77 of its millilitres at 0 °C and sea level", () => {
  // 795 hPa is the standard pressure at 1989 m. Two decimals: as it was stated.
  const counted = (hours(300, 5, 1.3, 1989, 19.9)[1] * likelyUse(300, 5)) / 0.01;
  expect(counted / 1000).toBeCloseTo(0.77, 2);
});

test("a bigger box lasts longer; a heavier, warmer, higher animal or a higher floor ends it sooner", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 900, noNaN: true }),
      fc.double({ min: 0, max: 34, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 5000, noNaN: true }),
      fc.double({ min: 18, max: 20.5, noNaN: true }),
      (mass, temperature, litres, elevation, floor) => {
        const here = hours(mass, temperature, litres, elevation, floor);
        expect(here[0]).toBeGreaterThan(0);
        expect(here[0]).toBeLessThan(here[1]);
        expect(here[1]).toBeLessThan(here[2]);
        expect(hours(mass, temperature, litres + 1, elevation, floor)[1]).toBeGreaterThan(here[1]);
        for (const sooner of [
          hours(mass + 1, temperature, litres, elevation, floor),
          hours(mass, temperature + 1, litres, elevation, floor),
          hours(mass, temperature, litres, elevation + 100, floor),
          hours(mass, temperature, litres, elevation, floor + 0.1),
          hours(mass, temperature, litres + mass / 1000, elevation, floor, 2),
        ]) {
          expect(sooner[1]).toBeLessThan(here[1]);
        }
      },
    ),
  );
});

test("left out, the house is at sea level, the floor is 19 % and the animal is alone", () =>
  expect(hours(300, 5, 5.3)).toEqual(hours(300, 5, 5.3, 0, 19, 1)));

test("a column of weighings against one box", () => {
  const answer = call(boxAir, down([310, null, 300]), 5, 5.3);
  expect(answer[2]).toEqual(hours(300, 5, 5.3));
  expect(answer[1]?.[0]).toBe("#N/A mass is blank");
});

test.each<[string, unknown[], string]>([
  [
    "a box that the animal fills",
    [900, 5, 0.8],
    "#VALUE! litres holds 0.8 l and the animal fills 0.9 l: give the inside of the box",
  ],
  [
    "a box that the animal fills to the brim",
    [900, 5, 0.9],
    "#VALUE! litres holds 0.9 l and the animal fills 0.9 l: give the inside of the box",
  ],
  ["a share for a percentage", [300, 5, 5.3, 0, 0.19], "#VALUE! floor holds 0.19: give a number from 18 to 20.8 %"],
  ["a floor that is no practice", [300, 5, 5.3, 0, 17], "#VALUE! floor holds 17: give a number from 18 to 20.8 %"],
  [
    "a box that its animals fill",
    [90, 5, 0.8, 0, 19, 9],
    "#VALUE! litres holds 0.8 l and the animals fill 0.81 l: give the inside of the box",
  ],
  ["half an animal", [90, 5, 2, 0, 19, 1.5], "#VALUE! count holds 1.5: give a whole number from 1 to 500"],
  ["a frozen box", [300, -2, 5.3], "#VALUE! temperature holds -2: give a number from 0 to 35 °C"],
])("%s is told", (_, given, message) => expect(call(boxAir, ...given)[0]?.[0]).toBe(message));
