import { metabolicLoss } from "../../../functions/winter/metabolicLoss";
import { oxygenUse } from "../../../functions/winter/oxygenUse";
import { call } from "../../call";
import table from "../../tables/oxygenUse.json";
import { yardstick, yardstickOf } from "../../yardstick";

const loss = (...given: unknown[]) => call(metabolicLoss, ...given)[0] as [number, number, number];

/**
 * The fuel mix solved as two equations, not as the function mixes it: x ml of oxygen on fat and y on glycogen, x + y = 1,
 * 0.7 x + y = 0.8. Rounded to ten decimals.
 *
 *   x, y = scipy.linalg.solve([[1, 1], [0.7, 1]], [1, 0.8]); rate = 0.013*M**0.8*10**0.95*3.3**((T-25)/10)
 *   rate*24*days*20.1*(x/39339 + y/17577)/M
 */
yardstick(metabolicLoss, { against: "energy balance worked out in SciPy 1.17.1", within: 1e-6, unit: "share" }, () =>
  (
    [
      [300, 5, 30, 0.0017670381],
      [300, 8, 30, 0.0025281341],
      [80, 12, 84, 0.0148651727],
    ] as const
  ).map(([mass, temperature, days, likely]) => [loss(mass, temperature, days)[1], likely]),
);

/**
 * 0.42 to 0.45 cal per g and day (4.184 J per cal), most of it from glycogen and protein: all of it at 17 577 J per g, or
 * all of it as fat, at 39 339 J. What 165 days at 4 °C take lies inside the spread, for 50 to 150 g.
 */
yardstickOf(
  metabolicLoss,
  { against: "Costanzo 1985", figure: "share inside least to most", least: 1, most: 1, unit: "share" },
  () => {
    const inside = [50, 100, 150].flatMap((mass) => {
      const [least, , most] = loss(mass, 4, 165);
      return [0.42, 0.45].flatMap((calories) =>
        [17_577, 39_339].map((fuel) => {
          const measured = (calories * 4.184 * 165) / fuel;
          return measured > least && measured < most;
        }),
      );
    });
    return { figure: inside.filter(Boolean).length / inside.length, values: inside.length };
  },
);

test("the oxygen is OXYGENUSE's, and twice the days burn twice as much", () => {
  const [use] = call(oxygenUse, 300, 8) as [[number, number, number]];
  expect((use[0] * 24 * 30 * 20.1) / 39_339 / 300).toBeCloseTo(loss(300, 8, 30)[0], 12);
  expect((use[2] * 24 * 30 * 20.1) / 17_577 / 300).toBeCloseTo(loss(300, 8, 30)[2], 12);
  expect(loss(300, 8, 60)[1]).toBeCloseTo(2 * loss(300, 8, 30)[1], 12);
});

test("a loss of 1.25 % in 30 days at 5 to 8 °C is mostly water: at most half of it is burnt", () => {
  for (const temperature of [5, 6, 7, 8]) expect(loss(300, temperature, 30)[2]).toBeLessThan(0.0125 / 2);
});

test("the fall of 95 % from 30 to 5 °C is the one of the table", () => expect(table.fall.q10).toBeCloseTo(3.3, 1));

test("ounces and °F", () => {
  const imperial = loss(300 / 28.349523125, 41, 30, "imperial");
  for (const [i, value] of loss(300, 5, 30).entries()) expect(imperial[i]).toBeCloseTo(value, 12);
});
