import { optional, quantity } from "../../define";

/**
 * Between these, in °C, the eggs of the snakes measured so far hatch well and develop in step with the warmth above a
 * threshold. Below, far fewer hatch; above, they hardly hatch sooner, and fewer do.
 */
export const EGGS_LEAST = 23;
export const EGGS_MOST = 31;
/** °C. Above it a clutch may be dead after hours: common practice, no source; of 32 °C Du & Ji saw 41 % hatch. */
export const EGGS_DEADLY = 34;

const WITHIN = [
  [EGGS_LEAST, EGGS_MOST],
  { plausibility: false, hint: "outside it fewer eggs hatch, and their days no longer follow the warmth" },
] as const;
/** The threshold fitted to four Asian colubrids is 13.9 to 14.7 °C; to other colubrids, 8 to 17 °C. */
export const THRESHOLD = 14;
export const BASE_TEMPERATURE = 26;

export const incubationTemperature = quantity(
  "celsius",
  "Temperature of the eggs, held steady, or the mean of day and night",
  ...WITHIN,
);
export const baseDays = quantity("day", "Days that your own clutches took at the base temperature", [20, 200]);
export const baseTemperature = optional(
  quantity("celsius", "Temperature at which they took those days", ...WITHIN),
  `${BASE_TEMPERATURE} °C`,
);
export const threshold = optional(
  quantity("celsius", "Temperature below which eggs do not develop", [5, 20]),
  `${THRESHOLD} °C, fitted to four Asian colubrids`,
);

/**
 * Where no threshold is given, the one of another species may be meant: 8.4 to 17 °C were fitted to colubrids. A threshold
 * of the keeper's own is trusted to 1.5 K.
 */
export const THRESHOLDS = [8.4, 17] as const;
export const OWN_THRESHOLD = 1.5;
/** By so much the days of two clutches of a species differ at one temperature: a judgement, no source. */
export const CLUTCHES = 0.05;

export interface Base {
  readonly baseDays: number;
  readonly baseTemperature?: number | undefined;
  readonly threshold?: number | undefined;
}

/**
 * The share of its development that an egg goes through in a day at this temperature: straight from nothing at the
 * threshold, and no faster above `EGGS_MOST`. At 32 °C, where the straight line alone would end 5 % too soon, this ends
 * within 1 % of Du & Ji's mean.
 */
export const developmentPerDay = (
  temperature: number,
  { baseDays, baseTemperature = BASE_TEMPERATURE, threshold = THRESHOLD }: Base,
): number => Math.max(0, Math.min(temperature, EGGS_MOST) - threshold) / (baseDays * (baseTemperature - threshold));

/**
 * What may stand behind the keeper's figures: each end of the thresholds with the days of a quick and of a slow clutch.
 * Whatever is worked out with each of the four spans nine in ten of what was published of six colubrids, and more.
 */
export const spreadOf = ({ baseDays, threshold, ...base }: Base): readonly Base[] => {
  const ends = threshold === undefined ? THRESHOLDS : [threshold - OWN_THRESHOLD, threshold + OWN_THRESHOLD];
  return ends.flatMap((end) =>
    [1 - CLUTCHES, 1 + CLUTCHES].map((share) => ({ ...base, baseDays: baseDays * share, threshold: end })),
  );
};
