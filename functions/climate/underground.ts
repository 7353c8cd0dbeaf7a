import { defineFunction, months, optional, quantity, table, unitsParameter } from "../define";
import { TEMPERATURE } from "../shared/limits";
import { swapped } from "../shared/swapped";
import { byWord, numeral, refusedIf } from "../twin";
import {
  dailyShare,
  dailyShareText,
  grounds,
  monthAtDepthText,
  monthsAtDepth,
  USUAL_GROUND,
  type Ground,
} from "./shared/ground";

const WORDS = Object.keys(grounds) as Ground[];

/**
 * Uniform ground under a surface that has the temperature of the air. The year's curve of the mid-points and the day's
 * swing around it sink each with its own damping depth, √(κ·P/π), as the heat equation has it; the mean of the year stays.
 * The hours of the day's high and low, which come later with depth, are not told.
 */
export const underground = defineFunction({
  name: "UNDERGROUND",
  summary: "High, low and mean of each month at a depth in the ground, from the air's twelve highs and lows.",
  parameters: {
    highs: months("celsius", "Monthly mean of the daily highs, January to December", TEMPERATURE),
    lows: months("celsius", "Monthly mean of the daily lows, January to December", TEMPERATURE),
    depth: quantity("none", "Depth in cm, in both systems", [0, 500], { plausibility: false }),
    ground: optional(
      quantity("none", `${WORDS.map((word) => `"${word}"`).join(", ")}, or mm²/s`, [0.05, 3], { words: WORDS }),
      `"${USUAL_GROUND}"`,
    ),
    units: unitsParameter,
  },
  result: table(
    { name: "High", unit: "celsius", about: "Mean daily high at that depth" },
    { name: "Low", unit: "celsius", about: "Mean daily low there" },
    { name: "Mean", unit: "celsius", about: "Mean of the month there" },
  ),
  sources: ["heatEquation", "moeneVanDam", "histospline"],
  cautions: ["bareGround", "noVet"],
  examples: [
    {
      given: [
        [[-1, 1.2, 6.5, 14.3, 21.4, 26.1, 28.6, 27.4, 22.8, 15.5, 8.6, 1.8]],
        [[-12.6, -11.8, -6.6, 0, 6.1, 11.4, 14.4, 13.5, 9, 2.9, -2.1, -8.5]],
        50,
      ],
      gives: [[-2.7376, -2.8363, -2.7869]],
      within: 1e-4,
      rows: 12,
    },
  ],
  calculate({ highs, lows, depth, ground = USUAL_GROUND, units }) {
    for (const [month, high] of highs.entries()) {
      const low = lows[month] as number;
      const fault = swapped(
        [`month ${month + 1} of lows`, low],
        [`month ${month + 1} of highs`, high],
        "celsius",
        units,
      );
      if (fault) return fault;
    }
    const diffusivity = typeof ground === "number" ? ground : grounds[ground];
    const means = highs.map((high, month) => (high + (lows[month] as number)) / 2);
    const left = dailyShare(depth, diffusivity);
    return monthsAtDepth(means, depth, diffusivity).map((mean, month) => {
      const swing = (((highs[month] as number) - (lows[month] as number)) / 2) * left;
      return [mean + swing, mean - swing, mean];
    });
  },
  twin: ({ highs: { each: highs }, lows: { each: lows }, depth, ground }) => {
    const byGround = (own: string): string =>
      `IF(ISNUMBER(${own}),${own},${byWord(
        own,
        WORDS.map((word) => [word, numeral(grounds[word])] as const),
      )})`;
    const diffusivity = ground(numeral(grounds[USUAL_GROUND]), byGround);
    const isSwapped = `OR(${highs.map((high, month) => `${lows[month]}>${high}`).join(",")})`;
    const means = highs.map((high, month) => `(${high}+${lows[month]})/2`);
    return highs.map((high, month) => {
      const mean = monthAtDepthText(means, month, depth, diffusivity);
      const swing = `(${high}-${lows[month]})/2*${dailyShareText(depth, diffusivity)}`;
      return [`${mean}+${swing}`, `${mean}-${swing}`, mean].map((text) => refusedIf(isSwapped, text));
    });
  },
});
