/** A figure with its spread. */
export interface Spread {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** °C. From here up the formula lies among its own data and stands as published; below, the fall measured on snakes. */
const MIDDLE = 25;
/**
 * Falls by 95 % from 30 to 5 °C (Stubblefield, Ultsch & Secor): 20^(10/25) = 3.31 for every 10 °C. The formula's own 2.4
 * would fall by 89 %.
 */
const Q10 = 3.3;
/**
 * Species, and animals of one species, differ by about half either way. The whole of Andrews & Pough's formula from 15 to
 * 30 °C, and what garter snakes of 50 to 150 g used at 4 °C (Costanzo 1985), lie inside.
 */
const BETWEEN_SNAKES = { least: 0.5, most: 1.5 } as const;

/**
 * Oxygen use in ml per hour, dry at 0 °C and 1013.25 hPa, of one quiet, fasting squamate of `mass` grams at `temperature`
 * °C: Andrews & Pough (1985), 0.013·M^0.80·10^(0.038·T), from 25 °C up; below, its value at 25 °C times 3.3^((T − 25)/10).
 */
export const oxygenPerHour = (mass: number, temperature: number): Spread => {
  const likely =
    0.013 *
    mass ** 0.8 *
    10 ** (0.038 * Math.max(temperature, MIDDLE)) *
    Q10 ** (Math.min(temperature - MIDDLE, 0) / 10);
  return { least: BETWEEN_SNAKES.least * likely, likely, most: BETWEEN_SNAKES.most * likely };
};

/**
 * ml of carbon dioxide given off for a ml of oxygen: 0.80 was measured in boas and pythons at 20 °C (Chappell & Ellis
 * 1987, 0.795); by the chemistry of the fuel it is 0.7 for fat and 1 for glycogen.
 */
export const EXCHANGE: Spread = { least: 0.7, likely: 0.8, most: 1 };

/** g. A limit of our own: most of the data are of small squamates (recalled). */
export const MEASURED_MASS = [1, 20_000] as const;
/** °C. A limit of our own: most of the data lie from 15 to 35 °C (recalled). */
export const MEASURED_TEMPERATURE = [0, 35] as const;

/** Least, likely and most in a formula. */
export const oxygenText = (mass: string, temperature: string): [string, string, string] => {
  const likely = `0.013*${mass}^0.8*10^(0.038*MAX(${temperature},${MIDDLE}))*${Q10}^(MIN(${temperature}-${MIDDLE},0)/10)`;
  return [`${BETWEEN_SNAKES.least}*${likely}`, likely, `${BETWEEN_SNAKES.most}*${likely}`];
};
