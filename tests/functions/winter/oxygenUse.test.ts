import fc from "fast-check";
import { oxygenUse } from "../../../functions/winter/oxygenUse";
import { call } from "../../call";
import table from "../../tables/oxygenUse.json";

const use = (mass: number, temperature: number) => call(oxygenUse, mass, temperature)[0] as [number, number, number];

// The rows of Andrews & Pough (1985), eq. 2, evaluated in R 4.2.2; rounded to ten decimals, so 1e-6 relative is ample.
test.each(table.rows)("$mass g at $temperature °C", ({ mass, temperature, millilitresPerHour }) => {
  const [least, likely, most] = use(mass, temperature).map((value) => value / millilitresPerHour) as [
    number,
    number,
    number,
  ];
  // The factors as agreed: up to 10 °C, and from 15 °C up; 1.3804 is 10^0.14. No row lies in between.
  const [low, middle, high] = temperature <= 10 ? [0.4, 0.5, 1] : [0.7, 1, 1.380384];
  expect(Math.abs(least / low - 1)).toBeLessThan(1e-6);
  expect(Math.abs(likely / middle - 1)).toBeLessThan(1e-6);
  expect(Math.abs(most / high - 1)).toBeLessThan(1e-6);
});

test("the table has rows on both sides", () => {
  expect(table.rows.filter(({ temperature }) => temperature <= 10)).toHaveLength(10);
  expect(table.rows.filter(({ temperature }) => temperature >= 15)).toHaveLength(10);
});

// Garter snakes at 4 °C used 0.42 and 0.45 cal per g and day (Costanzo 1985). Their mass is not in the abstract; 50 to
// 150 g is taken. The likely figure is within 20 % of what was measured, and the spread holds it.
test.each(table.measured)("$what lie within the spread", ({ temperature, millilitresPerGramHour }) => {
  for (const mass of [50, 80, 100, 150]) {
    const [least, likely, most] = use(mass, temperature).map((value) => value / mass) as [number, number, number];
    expect(millilitresPerGramHour).toBeGreaterThan(least);
    expect(millilitresPerGramHour).toBeLessThan(most);
    expect(Math.abs(likely / millilitresPerGramHour - 1)).toBeLessThan(0.2);
  }
});

const mass = fc.double({ min: 1, max: 20_000, noNaN: true });

test("least < likely <= most; warmer or heavier uses more; heavier uses less a gram", () => {
  fc.assert(
    fc.property(mass, fc.double({ min: 0, max: 34.9, noNaN: true }), (grams, temperature) => {
      const here = use(grams, temperature);
      expect(here[0]).toBeLessThan(here[1]);
      expect(here[1]).toBeLessThanOrEqual(here[2]);
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

test("the factors run straight from 10 to 15 °C, without a jump at either end", () => {
  const formula = (temperature: number) => 0.013 * 200 ** 0.8 * 10 ** (0.038 * temperature);
  const shares = [0, 1, 2, 3, 4, 5].map((step) => use(200, 10 + step)[0] / formula(10 + step));
  for (const [step, share] of shares.entries()) expect(share).toBeCloseTo(0.4 + 0.06 * step, 10);
  for (const edge of [10, 15]) {
    const [below, above] = [use(200, edge - 1e-9), use(200, edge + 1e-9)];
    for (const i of [0, 1, 2] as const) expect(Math.abs(above[i] / below[i] - 1)).toBeLessThan(1e-8);
  }
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
