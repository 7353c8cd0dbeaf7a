import fc from "fast-check";
import { incubationDays } from "../../../functions/breeding/incubationDays";
import { cautions } from "../../../functions/cautions";
import { call } from "../../call";
import { duJi, fits, natrix } from "../../tables/incubation.json";
import { yardstickOf } from "../../yardstick";

const days = (...given: unknown[]) => call(incubationDays, ...given)[0]?.[0] as number;
const told = (...given: unknown[]) => call(incubationDays, ...given)[0]?.[0];
const daysAt = (temperature: number) => duJi.find((row) => row.temperature === temperature)?.days as number;

// Du & Ji 2008, Elaphe taeniura. 0.5 % covers the rounding of their means to 0.1 day and the curve that a straight line
// leaves out; 24 to 30 °C is the range over which thresholds were fitted.
describe("from their 66.3 days at 27 °C to their other means, Du & Ji 2008", () => {
  test.each([24, 27, 30])("%i °C", (temperature) => {
    expect(Math.abs(days(temperature, daysAt(27), 27) / daysAt(temperature) - 1)).toBeLessThan(0.005);
  });

  test.each([22, 32])("%i °C, where half or fewer of the eggs hatched, is refused with the reason", (temperature) => {
    expect(told(temperature, daysAt(27), 27)).toBe(
      `#VALUE! temperature holds ${temperature}: give a number from 23 to 31 °C; ` +
        "outside it fewer eggs hatch, and their days no longer follow the warmth",
    );
    // The straight line would have missed by 5 % and more.
    expect(Math.abs((daysAt(27) * (27 - 14)) / (temperature - 14) / daysAt(temperature) - 1)).toBeGreaterThan(0.05);
  });
});

const published = fits.flatMap((fit) =>
  ([24, 28, 30] as const).map((temperature) => ({
    ...fit,
    temperature,
    relative: fit[`at${temperature}`],
  })),
);
const measurable = published.filter(({ threshold }) => threshold >= 5);

describe("against thresholds fitted to RepDevo", () => {
  // Exact: 1/days = (temperature - threshold) / constant. 0.6 %: thresholds, constants and days are rounded to three digits.
  test.each(fits.filter(({ threshold }) => threshold >= 5))(
    "the line of $species",
    ({ threshold, constant, daysAt26 }) => {
      expect(Math.abs(days(26, daysAt26, 26, threshold) / (constant / (26 - threshold)) - 1)).toBeLessThan(0.006);
      for (const temperature of [23, 24, 28, 31]) {
        expect(
          Math.abs(days(temperature, daysAt26, 26, threshold) / (constant / (temperature - threshold)) - 1),
        ).toBeLessThan(0.006);
      }
    },
  );

  // 6 %: what the straight lines leave over against the published means, from which they were fitted.
  test.each(measurable)(
    "$species at $temperature °C with its own threshold",
    ({ temperature, relative, threshold }) => {
      expect(Math.abs(days(temperature, 100, 26, threshold) / (100 * relative) - 1)).toBeLessThan(0.06);
    },
  );

  // The default of 14 °C: within 7.5 % of four Asian colubrids, within 12 % of the three others.
  test.each(published)("$species at $temperature °C with 14 °C", ({ temperature, relative, asianRatsnake }) => {
    expect(Math.abs(days(temperature, 100) / (100 * relative) - 1)).toBeLessThan(asianRatsnake ? 0.075 : 0.12);
  });

  test("14 °C lies among the four thresholds of Asian colubrids, all within the 1.5 K that are left open", () => {
    const ratsnakes = fits.filter(({ asianRatsnake }) => asianRatsnake).map(({ threshold }) => threshold);
    expect(ratsnakes).toHaveLength(4);
    expect(Math.min(...ratsnakes)).toBeLessThanOrEqual(14);
    expect(Math.max(...ratsnakes)).toBeGreaterThanOrEqual(14);
    for (const threshold of ratsnakes) expect(Math.abs(threshold - 14)).toBeLessThanOrEqual(1.5);
  });
});

// common practice, no source: 55 to 65 days at 26 °C
test("at the base temperature the keeper's own figure comes back, and warmer is shorter", () => {
  expect([days(26, 55), days(26, 65)]).toEqual([55, 65]);
  const temperature = fc.double({ min: 23, max: 31, noNaN: true });
  fc.assert(
    fc.property(temperature, temperature, fc.double({ min: 20, max: 200, noNaN: true }), (a, b, base) => {
      expect(days(a, base, a)).toBeCloseTo(base, 9);
      if (a < b - 1e-6) expect(days(a, base)).toBeGreaterThan(days(b, base));
      // There and back again.
      expect(days(a, days(b, 60, a), b)).toBeCloseTo(60, 9);
    }),
  );
});

test("in Fahrenheit", () => {
  expect(days(82.4, 60, undefined, undefined, "imperial")).toBeCloseTo(days(28, 60), 9);
  expect(days(82.4, 60, 78.8, 57.2, "imperial")).toBeCloseTo(days(28, 60), 9);
  expect(told(70, 60, undefined, undefined, "imperial")).toMatch(
    /^#VALUE! temperature holds 70: give a number from 73.4 to 87.8 °F; outside it fewer eggs hatch/,
  );
});

test("23 and 31 °C themselves are answered, the base has the same limits, and a blank is not 0", () => {
  expect(days(23, 60)).toBeCloseTo(80, 9);
  expect(days(31, 60)).toBeCloseTo((60 * 12) / 17, 9);
  expect(told(22.9, 60)).toMatch(/^#VALUE!/);
  expect(told(31.1, 60)).toMatch(/^#VALUE!/);
  expect(told(26, 60, 35)).toMatch(/^#VALUE! baseTemperature holds 35: .*fewer eggs hatch/);
  expect(told(26, null)).toBe("#N/A baseDays is blank");
});

test("the caution gives the hatching success at both ends as published by Du & Ji 2008", () => {
  expect(incubationDays.cautions).toContain("hatchingSuccess");
  expect(cautions.hatchingSuccess).toMatch(/50 % at 22 °C, 78-79 % at 24-30 °C, 41 % at 32 °C \(Du & Ji 2008\)/);
  const hatched = (temperature: number) =>
    natrix.filter((row) => row.temperature === temperature).map((row) => Math.round(100 * row.hatched));
  expect(cautions.hatchingSuccess).toContain(
    `Natrix natrix: ${hatched(19).join(" and ")} % at 19 °C (two studies), ${hatched(21).join()} % at 21 °C, ${hatched(23).join()} % at 23 °C (RepDevo).`,
  );
});

// Published means relative to those at 26 °C, of seven colubrids; the keeper gives 100 days at 26 °C and no threshold.
yardstickOf(
  incubationDays,
  {
    against: "RepDevo (Noble et al. 2018)",
    figure: "share inside soonest to latest",
    least: 0.9,
    most: 1,
    unit: "share",
  },
  () => {
    const inside = published.map(({ temperature, relative }) => {
      const [, soonest, latest] = call(incubationDays, temperature, 100)[0] as [number, number, number];
      return soonest <= 100 * relative && 100 * relative <= latest;
    });
    return { figure: inside.filter(Boolean).length / inside.length, values: inside.length };
  },
);

test("soonest and latest hold the likely figure, and a threshold of one's own narrows them", () => {
  const at = (...given: unknown[]) => call(incubationDays, ...given)[0] as [number, number, number];
  for (const temperature of [23, 24.5, 26, 28, 31]) {
    const [likely, soonest, latest] = at(temperature, 60);
    expect(soonest).toBeLessThan(likely);
    expect(latest).toBeGreaterThan(likely);
    const own = at(temperature, 60, null, 14);
    expect(own[2] - own[1]).toBeLessThanOrEqual(latest - soonest + 1e-9);
  }
  // At 23 °C, 60 days at 26 °C: 80 by 14 °C, 72 by Natrix's 8.4 °C, 90 by Xenochrophis' 17 °C, each 5 % either way.
  expect(at(23, 60)[1]).toBeCloseTo(((60 * 17.6) / 14.6) * 0.95, 9);
  expect(at(23, 60)[2]).toBeCloseTo(90 * 1.05, 9);
});

test("a threshold of one's own is trusted to 1.5 K, as far as those of four Asian colubrids lie from 14 °C", () => {
  // 60 days at 26 °C; at 24 °C by 12.5 °C and by 15.5 °C, each 5 % either way.
  const [, soonest, latest] = call(incubationDays, 24, 60, 26, 14)[0] as [number, number, number];
  expect(soonest).toBeCloseTo(((60 * 13.5) / 11.5) * 0.95, 9);
  expect(latest).toBeCloseTo(((60 * 10.5) / 8.5) * 1.05, 9);
});
