import fc from "fast-check";
import psychrolib from "psychrolib";
import { boxAir } from "../../../functions/winter/boxAir";
import { call, down } from "../../call";
import table from "../../tables/oxygenUse.json";

const hours = (...given: unknown[]) => call(boxAir, ...given)[0] as [number, number, number];

/**
 * The rows were evaluated in R 4.2.2 with the air as it is. Here the animal's volume is put back into the box, and the
 * hours are brought to air at 0 °C by Gay-Lussac's law; at sea level nothing else differs. 1e-6 relative: the rows are
 * rounded to ten decimals.
 */
test.each(table.shutBox.rows)("$mass g, $air l of air, $temperature °C, down to $floor %", (row) => {
  const { mass, air, temperature, floor } = row;
  const [soonest, likely, latest] = hours(mass, temperature, air + mass / 1000, 0, floor);
  const dry = 273.15 / (273.15 + temperature);
  // Up to 10 °C the full and the half rate are the most and the likely; from 15 °C up the full rate is the likely one.
  if (temperature <= 10) {
    expect(Math.abs(soonest / (row.hoursAtFullRate * dry) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(likely / (row.hoursAtHalfRate * dry) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(latest / (row.hoursAtFullRate * dry) / 2.5 - 1)).toBeLessThan(1e-6);
  } else {
    expect(Math.abs(soonest / (row.hoursAtFullRate * dry) - 1 / 1.380384)).toBeLessThan(1e-6);
    expect(Math.abs(likely / (row.hoursAtFullRate * dry) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(latest / (row.hoursAtFullRate * dry) - 1 / 0.7)).toBeLessThan(1e-6);
  }
});

test("no row was left out", () => expect(table.shutBox.rows).toHaveLength(18));

/**
 * The air counted in another way: density of dry air at the standard pressure of the elevation (psychrolib 1.1.1, ASHRAE's
 * rounded constants) over 28.966 g per mol gives moles, and 22 414 ml a mole at 0 °C and 1013.25 hPa. Its gas constant
 * and pressure are rounded: 1e-4 relative.
 */
test("the air agrees with the density of dry air", () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  for (const elevation of [0, 500, 1500, 2000, 3000, 4500]) {
    for (const temperature of [0, 5, 10, 20, 35]) {
      const density = psychrolib.GetDryAirDensity(temperature, psychrolib.GetStandardAtmPressure(elevation)); // kg/m³
      const millilitres = ((density * 5) / 28.966) * 22_413.97;
      const oxygenPerHour = 0.013 * 300 ** 0.8 * 10 ** (0.038 * temperature) * (temperature <= 10 ? 0.5 : 1);
      const expected = (millilitres * (0.209 - 0.19)) / oxygenPerHour;
      expect(Math.abs(hours(300, temperature, 5.3, elevation)[1] / expected - 1)).toBeLessThan(1e-4);
    }
  }
});

test("a litre of box air at 5 °C and 795 hPa holds 0.77 of its millilitres at 0 °C and sea level", () => {
  // 795 hPa is the standard pressure at 1989 m. Two decimals: as it was stated.
  const oxygenPerHour = 0.013 * 300 ** 0.8 * 10 ** (0.038 * 5);
  const counted = (hours(300, 5, 1.3, 1989, 19.9)[0] * oxygenPerHour) / 0.01;
  expect(counted / 1000).toBeCloseTo(0.77, 2);
});

test("a bigger box lasts longer; a heavier, warmer, higher animal or a higher floor ends it sooner", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 900, noNaN: true }),
      fc.double({ min: 0, max: 34, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 5000, noNaN: true }),
      fc.double({ min: 15, max: 20.5, noNaN: true }),
      (mass, temperature, litres, elevation, floor) => {
        const here = hours(mass, temperature, litres, elevation, floor);
        expect(here[0]).toBeGreaterThan(0);
        expect(here[0]).toBeLessThanOrEqual(here[1]);
        expect(here[1]).toBeLessThan(here[2]);
        expect(hours(mass, temperature, litres + 1, elevation, floor)[1]).toBeGreaterThan(here[1]);
        for (const sooner of [
          hours(mass + 1, temperature, litres, elevation, floor),
          hours(mass, temperature + 1, litres, elevation, floor),
          hours(mass, temperature, litres, elevation + 100, floor),
          hours(mass, temperature, litres, elevation, floor + 0.1),
        ]) {
          expect(sooner[1]).toBeLessThan(here[1]);
        }
      },
    ),
  );
});

test("left out, the house is at sea level and the floor is 19 %", () =>
  expect(hours(300, 5, 5.3)).toEqual(hours(300, 5, 5.3, 0, 19)));

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
  ["a share for a percentage", [300, 5, 5.3, 0, 0.19], "#VALUE! floor holds 0.19: give a number from 15 to 20.8 %"],
  ["a frozen box", [300, -2, 5.3], "#VALUE! temperature holds -2: give a number from 0 to 35 °C"],
])("%s is told", (_, given, message) => expect(call(boxAir, ...given)[0]?.[0]).toBe(message));
