import fc from "fast-check";
import { cautions } from "../../../functions/cautions";
import { oxygenUse } from "../../../functions/winter/oxygenUse";
import { call } from "../../call";
import table from "../../tables/oxygenUse.json";
import { yardstick, yardstickOf } from "../../yardstick";

const use = (mass: number, temperature: number) => call(oxygenUse, mass, temperature)[0] as [number, number, number];

/** Andrews & Pough (1985), eq. 2, written out again. */
const formula = (mass: number, temperature: number) => 0.013 * mass ** 0.8 * 10 ** (0.038 * temperature);

// Rounded to ten decimals, so 1e-6 is ample. Of the five rows from 25 °C up, where the curve is the formula itself.
const rows = table.rows.filter(({ temperature }) => temperature >= 25);
for (const [i, share] of [0.5, 1, 1.5].entries()) {
  yardstick(
    oxygenUse,
    { against: `${share} of Andrews & Pough 1985 evaluated in R 4.2.2`, within: 1e-6, unit: "share" },
    () =>
      rows.map(({ mass, temperature, millilitresPerHour }) => [
        use(mass, temperature)[i] as number,
        share * millilitresPerHour,
      ]),
  );
}

// Between the formula's own data and the cold the two curves part: the spread holds the formula down to 15 °C.
test.each(table.rows.filter(({ temperature }) => temperature >= 15))(
  "$mass g at $temperature °C: the formula lies inside",
  ({ mass, temperature, millilitresPerHour }) => {
    const [least, , most] = use(mass, temperature);
    expect(least).toBeLessThan(millilitresPerHour);
    expect(most).toBeGreaterThan(millilitresPerHour);
  },
);

test("no row was left out", () => {
  expect(table.rows.filter(({ temperature }) => temperature >= 25).length).toBeGreaterThanOrEqual(2);
  expect(table.rows.filter(({ temperature }) => temperature >= 15)).toHaveLength(10);
});

// Garter snakes at 4 °C used 0.42 and 0.45 cal per g and day. Their mass is not in the abstract; 50 to 150 g is taken. The
// likely figure is within 26 % of what was measured.
const measured = table.measured.flatMap(({ temperature, millilitresPerGramHour }) =>
  [50, 80, 100, 150].map((mass) => ({ spread: use(mass, temperature), used: mass * millilitresPerGramHour })),
);
yardstick(oxygenUse, { against: "Costanzo 1985", within: 0.26, unit: "share" }, () =>
  measured.map(({ spread, used }) => [spread[1], used]),
);
yardstickOf(
  oxygenUse,
  { against: "Costanzo 1985", figure: "share inside least to most", least: 1, most: 1, unit: "share" },
  () => ({
    figure: measured.filter(({ spread, used }) => used > spread[0] && used < spread[2]).length / measured.length,
    values: measured.length,
  }),
);

// 95 % less at 5 than at 30 °C, told to the whole per cent. The formula's own Q10 of 2.4 holds from 25 to 30 °C, which
// makes 94.1 % of it.
yardstick(oxygenUse, { against: "Stubblefield, Ultsch & Secor", within: 0.01, unit: "share" }, () =>
  [20, 100, 500].map((mass) => [1 - use(mass, 5)[1] / use(mass, 30)[1], 0.95]),
);

// The species measured have a Q10 of 2.4 to 4.8 (Chappell & Ellis, Beaupre & Zaidan, McCue & Lillywhite): a curve with a
// step of its own between two temperatures has another one somewhere.
test("no five kelvin change the rate faster or slower than was ever measured", () => {
  for (let temperature = 0; temperature <= 30; temperature++) {
    const q10 = (use(200, temperature + 5)[1] / use(200, temperature)[1]) ** 2;
    expect(q10).toBeGreaterThanOrEqual(2.39);
    expect(q10).toBeLessThanOrEqual(4.8);
  }
});

test("what the caution says of the spread is what is answered: half either way", () => {
  expect(cautions.quietAnimal).toContain("half either way");
  for (const temperature of [2, 8, 12, 20, 30]) {
    const [least, likely, most] = use(150, temperature);
    expect(least / likely).toBeCloseTo(1 - 0.5, 12);
    expect(most / likely).toBeCloseTo(1 + 0.5, 12);
  }
});

const mass = fc.double({ min: 1, max: 20_000, noNaN: true });

test("warmer or heavier uses more; heavier uses less a gram", () => {
  fc.assert(
    fc.property(mass, fc.double({ min: 0, max: 34.9, noNaN: true }), (grams, temperature) => {
      const here = use(grams, temperature);
      const warmer = use(grams, temperature + 0.1);
      const heavier = use(Math.min(grams * 1.01, 20_000), temperature);
      for (const i of [0, 1, 2] as const) {
        expect(warmer[i]).toBeGreaterThan(here[i]);
        if (grams * 1.01 > 20_000) continue;
        expect(heavier[i]).toBeGreaterThan(here[i]);
        expect(heavier[i] / (grams * 1.01)).toBeLessThan(here[i] / grams);
      }
    }),
  );
});

test("at 25 °C the two halves of the curve meet", () => {
  const [below, above] = [use(200, 25 - 1e-9), use(200, 25 + 1e-9)];
  for (const i of [0, 1, 2] as const) expect(Math.abs(above[i] / below[i] - 1)).toBeLessThan(1e-8);
  expect(use(200, 25)[1]).toBeCloseTo(formula(200, 25), 9);
});

test("ounces and °F", () => {
  const imperial = call(oxygenUse, 300 / 28.349523125, 41, "imperial")[0] as number[];
  for (const [i, value] of use(300, 5).entries()) expect(imperial[i]).toBeCloseTo(value, 10);
});

test("outside the method is told", () => {
  expect(call(oxygenUse, 0.5, 5)[0]?.[0]).toBe("#VALUE! mass holds 0.5: give a number from 1 to 20000 g");
  expect(call(oxygenUse, 300, -1)[0]?.[0]).toBe("#VALUE! temperature holds -1: give a number from 0 to 35 °C");
  expect(call(oxygenUse, 300, null)[0]?.[0]).toBe("#N/A temperature is blank");
});
