import fc from "fast-check";
import { serialOfIso } from "../../../functions/dates";
import { hatchForecast } from "../../../functions/breeding/hatchForecast";
import { incubationDays } from "../../../functions/breeding/incubationDays";
import { degreeDays } from "../../../functions/breeding/degreeDays";
import { cautions } from "../../../functions/cautions";
import { call, callCell, down } from "../../call";
import { mean, uniform } from "../../statistics";
import { duJi, fits, swings } from "../../tables/incubation.json";
import { yardstick, yardstickOf } from "../../yardstick";

const LAID = 46_193; // 2026-06-20

const run = (length: number) => Array.from({ length }, (_, i) => LAID + i);
const forecast = (dates: readonly unknown[], temperatures: readonly unknown[], ...base: unknown[]) =>
  call(hatchForecast, LAID, down(dates), down(temperatures), ...base)[0] as [number, number, number, ...number[]];

describe("at constant temperature", () => {
  // Half a day: the date is whole, INCUBATIONDAYS is not. 1e-9 for the sums.
  test("it is INCUBATIONDAYS, after one day of readings, after many, and after hatching", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 23, max: 31, noNaN: true }),
        fc.double({ min: 30, max: 120, noNaN: true }),
        fc.double({ min: 23, max: 31, noNaN: true }),
        fc.double({ min: 5, max: 20, noNaN: true }),
        fc.integer({ min: 1, max: 250 }),
        (temperature, baseDays, baseTemperature, threshold, read) => {
          const [days, least, most] = call(incubationDays, temperature, baseDays, baseTemperature, threshold)[0] as [
            number,
            number,
            number,
          ];
          const [developed, hatching, outside, soonest, latest] = forecast(
            run(read),
            Array(read).fill(temperature),
            baseDays,
            baseTemperature,
            threshold,
          );
          expect(developed).toBeCloseTo(Math.min(1, read / days), 9);
          expect(Math.abs(hatching - LAID - days)).toBeLessThanOrEqual(0.5 + 1e-6);
          expect(Number.isInteger(hatching)).toBe(true);
          expect(outside).toBe(0);
          expect(Math.abs((soonest as number) - LAID - least)).toBeLessThanOrEqual(0.5 + 1e-6);
          expect(Math.abs((latest as number) - LAID - most)).toBeLessThanOrEqual(0.5 + 1e-6);
        },
      ),
    );
  });

  test("practice: 55 to 65 days at 26 °C", () => {
    expect(forecast(run(10), Array<number>(10).fill(26), 55)[1]).toBe(LAID + 55);
    expect(forecast(run(10), Array<number>(10).fill(26), 65)[1]).toBe(LAID + 65);
  });
});

describe("at 32 °C, where no more than 31 °C is counted", () => {
  // 1 %: Du & Ji 2008 print 50.5 days; the straight line without a ceiling would end at 47.9.
  test("from 66.3 days at 27 °C to Du & Ji 2008", () => {
    const published = duJi.find(({ temperature }) => temperature === 32)?.days as number;
    const [developed, hatching, outside] = forecast(run(60), Array<number>(60).fill(32), 66.3, 27);
    expect(developed).toBe(1);
    expect(Math.abs((hatching - LAID) / published - 1)).toBeLessThan(0.01 + 0.5 / published);
    expect(outside).toBe(hatching - LAID);
  });

  // 4 %: published means at 32 °C of Asian colubrids, relative to 26 °C.
  test.each(fits.filter(({ asianRatsnake, at32 }) => asianRatsnake && at32))("$species", ({ at32 }) => {
    const [, hatching] = forecast(run(100), Array<number>(100).fill(32), 100);
    expect(Math.abs((hatching - LAID) / (100 * (at32 as number)) - 1)).toBeLessThan(0.04);
  });
});

test("a warm week shortens, a cool week lengthens, each by what it adds", () => {
  // 20 days at 26 °C are 20/60; then 10 days at 29 °C are 15/12 of that a day: 12.5/60. The last week goes on at 29 °C.
  const [developed, hatching] = forecast(run(30), [...Array<number>(20).fill(26), ...Array<number>(10).fill(29)], 60);
  expect(developed).toBeCloseTo(32.5 / 60, 12);
  expect(hatching).toBe(LAID + 30 + 22); // 27.5 days at 26 °C are left, 22 at 29 °C
});

test("only the last seven days decide how it goes on", () => {
  const cool = forecast(run(27), [...Array<number>(20).fill(24), ...Array<number>(7).fill(26)], 60);
  expect(cool[0]).toBeCloseTo((20 * 10 + 7 * 12) / (60 * 12), 12);
  expect(cool[1]).toBe(Math.round(LAID + 27 + 60 * (1 - cool[0])));
});

test("below the threshold nothing develops, and nothing is undone", () => {
  const [developed, , outside] = forecast(run(20), [...Array<number>(10).fill(26), ...Array<number>(10).fill(8)], 60);
  expect(developed).toBeCloseTo(10 / 60, 12);
  expect(outside).toBe(10);
});

test("no date from a week outside 23-31 °C, but still the share and the days", () => {
  const dates = run(20);
  expect(
    call(hatchForecast, LAID, down(dates), down([...Array<number>(13).fill(26), ...Array<number>(7).fill(21)]), 60)[0],
  ).toEqual([
    expect.closeTo((13 * 12 + 7 * 7) / (60 * 12), 12),
    "#VALUE! temperatures of the last week average 21 °C: a date can be given from 23 °C to 31 °C",
    7,
    expect.stringMatching(/^#VALUE! temperatures of the last week average 21 °C/),
    expect.stringMatching(/^#VALUE! temperatures of the last week average 21 °C/),
    26,
  ]);
});

describe("heat", () => {
  const hot = (temperatures: readonly number[], ...more: unknown[]) =>
    call(
      hatchForecast,
      LAID,
      down(run(temperatures.length)),
      down(temperatures),
      60,
      null,
      null,
      ...more,
    )[0] as unknown[];

  test("three weeks at 45 °C have no date", () => {
    const [developed, hatching, , soonest, latest, hottest] = hot(Array<number>(21).fill(45));
    expect(developed).toEqual(expect.any(Number));
    for (const told of [hatching, soonest, latest]) {
      expect(told).toBe(
        "#VALUE! temperatures reach 45 °C on 2026-06-20: above 34 °C eggs may be dead, ask a reptile vet",
      );
    }
    expect(hottest).toBe(45);
  });

  test("one reading is enough, 34 °C itself is not, and the caution names the same limit", () => {
    expect(hot([26, 26, 34, 26])[1]).toEqual(expect.any(Number));
    expect(hot([26, 26, 34.1, 26])[1]).toMatch(/^#VALUE! temperatures reach 34.1 °C on 2026-06-22/);
    expect(cautions.hotEggs).toContain("Above 34 °C");
  });

  test("a high beside a mean counts, and one after hatching does not", () => {
    expect(hot([26, 26, 26], down([27, 36, 27]))[1]).toMatch(/^#VALUE! temperatures reach 36 °C on 2026-06-21/);
    expect(hot([...Array<number>(60).fill(26), 26, 40])[1]).toBe(LAID + 60);
    expect(hot([26, 26], down([27]))[0]).toBe("#VALUE! dates holds 2 cells and highs 1: give as many of each");
  });

  // By definition: what is above 31 °C counts as 31. Half a day at 24, half at 34 is (10 + 17)/2 = 13.5 K, not 15.
  test("a day that swings past 31 °C is no day at its mean", () => {
    const swing = call(hatchForecast, LAID, down([LAID + 0.2, LAID + 0.7]), down([24, 34]), 60)[0] as number[];
    expect(swing[0]).toBeCloseTo(13.5 / 12 / 60, 12);
  });

  // By definition: as long as all of it lies on the straight line, a swing adds what its mean does.
  test("a gentle swing is its mean", () => {
    const [swung, still] = [hot([26, 26, 26], down([29, 29, 29])), hot([26, 26, 26], down([26, 26, 26]))] as number[][];
    expect(swung?.[0]).toBeCloseTo(still?.[0] as number, 12);
  });

  // The wave against DEGREEDAYS, which integrates it: a mean of 28 °C with a high of 33 (TrenchR 1.1.1 holds that one).
  test("a mean with its high is what DEGREEDAYS makes of the two, to a thousandth", () => {
    for (const [middle, high] of [
      [28, 33],
      [26, 27],
      [30, 34],
    ] as const) {
      const [developed] = hot([middle], down([high])) as number[];
      const sine = callCell(degreeDays, high, 2 * middle - high, 14, 31) as number;
      expect(Math.abs(((developed as number) * 60 * 12) / sine - 1)).toBeLessThan(2e-3);
    }
  });
});

/**
 * Simulated clutches: each of the colubrids of the table with its own line, eggs that are up to 4 % quicker or slower, 55
 * days of its own temperatures; the keeper knows the days at 26 °C and no threshold. The date must lie inside.
 */
yardstickOf(
  hatchForecast,
  {
    against: "RepDevo lines, simulated clutches",
    figure: "share inside soonest to latest",
    least: 0.9,
    most: 1,
    unit: "share",
  },
  () => {
    const random = uniform(5);
    const inside = fits.flatMap(({ threshold, daysAt26 }) =>
      Array.from({ length: 30 }, () => {
        const middle = 24.5 + 4 * random();
        const temperatures = Array.from({ length: 14 }, () => middle + 1.5 * (random() - 0.5));
        const pace = 1 + 0.08 * (random() - 0.5);
        const rate = (one: number): number => (pace * (one - threshold)) / (daysAt26 * (26 - threshold));
        const rates = temperatures.map(rate);
        const hatched = 14 + (1 - 14 * mean(rates)) / mean(rates.slice(-7));
        const answer = forecast(run(14), temperatures, daysAt26);
        return (answer[3] as number) <= LAID + hatched + 0.5 && LAID + hatched - 0.5 <= (answer[4] as number);
      }),
    );
    return { figure: inside.filter(Boolean).length / inside.length, values: inside.length };
  },
);

/**
 * Eggs with a daily swing beside eggs of the same study held steady at the same mean: the days that the forecast makes of
 * ten days with such highs and the steady eggs' days, against the days that they took. 10 %: what lizards do that no line
 * through one threshold knows. Swings of 12 K at most: below some 17 °C no line of a colubrid holds.
 */
const gentle = swings.filter(({ swing }) => swing <= 12);
yardstick(hatchForecast, { against: "eggs in a daily swing (RepDevo)", within: 0.1, unit: "share" }, () =>
  gentle.map(({ mean: middle, swing, steady, days }) => {
    const highs = down(Array(10).fill(middle + swing / 2));
    const [developed] = forecast(run(10), Array(10).fill(middle), steady, middle, null, highs);
    return [10 / developed, days] as const;
  }),
);

test("what the caution says of a daily swing is what those eggs did", () => {
  const more = gentle.map(({ steady, days }) => Math.round(100 * (days / steady - 1)));
  const means = gentle.map(({ mean: middle }) => middle);
  expect(cautions.dailySwing).toContain(
    `of ${gentle.length} groups of eggs at means of ${Math.min(...means)} to ${Math.max(...means)} °C that swung by ${Math.max(...gentle.map(({ swing }) => swing))} K or less, the days were ${-Math.min(...more)} % fewer to ${Math.max(...more)} % more`,
  );
  const [snake, ...others] = gentle.filter((one) => "snake" in one);
  expect(others).toEqual([]);
  const { species, mean: middle, swing, steady, days } = snake as (typeof gentle)[number];
  expect(cautions.dailySwing).toContain(
    `of the one snake among them, ${species} at ${middle - swing / 2} to ${middle + swing / 2} °C, ${Math.round(100 * (days / steady - 1))} % more`,
  );
});

describe("messy logs", () => {
  test("rows out of order, missing temperatures and several readings a day", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 23, max: 30.5, noNaN: true }), { minLength: 3, maxLength: 40 }),
        fc.infiniteStream(fc.nat()),
        (means, keys) => {
          const days = run(means.length);
          const plain = forecast(days, means, 60);
          const messy = days
            .flatMap((day, i) => [
              { day: day + 0.25, temperature: (means[i] as number) - 0.5 },
              { day: day + 0.75, temperature: (means[i] as number) + 0.5 },
              { day, temperature: null },
            ])
            .map((row) => ({ ...row, key: keys.next().value as number }))
            .sort((a, b) => a.key - b.key);
          const answered = forecast(
            messy.map(({ day }) => day),
            messy.map(({ temperature }) => temperature),
            60,
          );
          expect(answered[0]).toBeCloseTo(plain[0], 9);
          expect(Math.abs(answered[1] - plain[1])).toBeLessThanOrEqual(1); // a mean of two may round across midnight
        },
      ),
    );
  });

  test("readings from before laying, of an older clutch, are not counted", () => {
    const older = [LAID - 9, LAID - 1];
    expect(forecast([...older, ...run(10)], [30, 30, ...Array<number>(10).fill(26)], 60)).toEqual(
      forecast(run(10), Array<number>(10).fill(26), 60),
    );
    expect(call(hatchForecast, LAID, down(older), down([30, 30]), 60)[0]?.[0]).toBe(
      "#N/A dates has no reading since 2026-06-20, when the eggs were laid",
    );
  });

  test("up to seven days without a reading lie on a straight line, and before the first reading it is that one", () => {
    const bridged = forecast([LAID, LAID + 8], [24, 28], 60);
    expect(bridged).toEqual(forecast(run(9), [24, 24.5, 25, 25.5, 26, 26.5, 27, 27.5, 28], 60));
    expect(forecast([LAID + 7], [26], 60)).toEqual(forecast(run(8), Array<number>(8).fill(26), 60));
  });

  test("a longer gap is refused with its dates, at the start too", () => {
    const wanted = (from: string, to: string) =>
      `#VALUE! dates has no reading from ${from} to ${to}: give one at least every 8 days`;
    expect(call(hatchForecast, LAID, down([LAID, LAID + 9]), down([26, 26]), 60)[0]?.[0]).toBe(
      wanted("2026-06-21", "2026-06-28"),
    );
    expect(call(hatchForecast, LAID, down([LAID + 8]), down([26]), 60)[0]?.[0]).toBe(
      wanted("2026-06-20", "2026-06-27"),
    );
  });

  test("a gap after hatching is of no matter", () => {
    const [developed, hatching] = forecast([...run(60), LAID + 200], [...Array<number>(60).fill(26), 26], 55);
    expect([developed, hatching]).toEqual([1, LAID + 55]);
    // Hatched with the very end of the last day before the gap: 64 days of 1/64 are exactly 1.
    expect(forecast([...run(64), LAID + 200], Array<number>(65).fill(26), 64)).toEqual([
      1,
      LAID + 64,
      0,
      expect.any(Number),
      expect.any(Number),
      26,
    ]);
  });

  test("a temperature without a date, lists that do not fit, and text", () => {
    const first = (...given: unknown[]) => call(hatchForecast, LAID, ...given)[0]?.[0];
    expect(first(down([LAID, null]), down([26, 26]), 60)).toBe("#N/A row 2 of dates is blank");
    expect(first(down(run(3)), down([26, 26]), 60)).toBe(
      "#VALUE! dates holds 3 cells and temperatures 2: give as many of each",
    );
    expect(first(down(run(2)), down([26, "26C"]), 60)).toMatch(/^#VALUE! row 2 of temperatures holds '26C'/);
    expect(first(down(run(2)), down([26, 26]), null)).toBe("#N/A baseDays is blank");
  });
});

test("several clutches in one incubator: a row for each", () => {
  const answers = call(
    hatchForecast,
    down([LAID, LAID + 5, null]),
    down(run(20)),
    down(Array<number>(20).fill(26)),
    60,
  );
  expect(answers[0]).toEqual([expect.closeTo(20 / 60, 12), LAID + 60, 0, LAID + 57, LAID + 63, 26]);
  expect(answers[1]).toEqual([expect.closeTo(15 / 60, 12), LAID + 65, 0, LAID + 62, LAID + 68, 26]);
  expect(answers[2]).toEqual(Array<string>(6).fill("#N/A laid is blank"));
});

test("a last day with one reading counts as a whole day, and the parameter says so", () => {
  const whole = call(hatchForecast, LAID, down([LAID, LAID, LAID + 1, LAID + 1]), down([26, 26, 26, 26]), 60);
  const morning = call(hatchForecast, LAID, down([LAID, LAID, LAID + 1.3]), down([26, 26, 26]), 60);
  expect(morning).toEqual(whole);
  expect(morning[0]?.[0]).toBeCloseTo(2 / 60, 12);
  expect(hatchForecast.parameters.dates.about).toMatch(/last counts as a whole day, even with one reading/);
});

test.each([
  [22.9, 10],
  [23, 0],
  [31, 0],
  [31.1, 10],
])("ten days at %d °C: %i of them outside 23-31 °C", (temperature, outside) =>
  expect(forecast(run(10), Array<number>(10).fill(temperature), 60)[2]).toBe(outside),
);

test("eggs that hatch on the last day that a sheet knows, and a day later", () => {
  const expected = (laid: string) => call(hatchForecast, laid, laid, 26, 60)[0]?.[1];
  expect(expected("9999-11-01")).toBe(serialOfIso("9999-12-31"));
  expect(expected("9999-11-02")).toBe("#VALUE! laid holds 9999-11-02: give a day whose eggs hatch by 9999-12-31");
});
