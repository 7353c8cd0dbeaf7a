/** A figure with its spread. */
export interface Spread {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** Up to this temperature snakes used about half of what the formula says, °C. */
const COLD = 10;
/** From this temperature up the formula stands on its own data, °C. */
const WARM = 15;

/** What the formula is multiplied by in the cold: two measurements on garter snakes at 4 and 5 °C lie at 0.45 to 0.56. */
const IN_THE_COLD: Spread = { least: 0.4, likely: 0.5, most: 1 };
/** The least is a judgement of the spread between species, no source; the most is the resting factor 10^0.14, recalled. */
const IN_THE_WARM: Spread = { least: 0.7, likely: 1, most: 10 ** 0.14 };

/**
 * Oxygen use in ml per hour, dry at 0 °C and 1013.25 hPa, of a squamate of `mass` grams at `temperature` °C: Andrews &
 * Pough (1985), 0.013·M^0.80·10^(0.038·T), times the factors above; between 10 and 15 °C they run straight from one to
 * the other.
 */
export const oxygenPerHour = (mass: number, temperature: number): Spread => {
  const formula = 0.013 * mass ** 0.8 * 10 ** (0.038 * temperature);
  const share = Math.min(Math.max((temperature - COLD) / (WARM - COLD), 0), 1);
  const of = (key: keyof Spread): number => formula * (IN_THE_COLD[key] * (1 - share) + IN_THE_WARM[key] * share);
  return { least: of("least"), likely: of("likely"), most: of("most") };
};

/** g. A limit of our own: most of the data are of small squamates (recalled). */
export const MEASURED_MASS = [1, 20_000] as const;
/** °C. A limit of our own: most of the data lie from 15 to 35 °C (recalled). */
export const MEASURED_TEMPERATURE = [0, 35] as const;
