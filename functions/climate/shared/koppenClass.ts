const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The half-year that begins in April, or in October. */
export type Half = "april" | "october";

const inApril = (_: number, i: number): boolean => i >= 3 && i <= 8;
const inOctober = (_: number, i: number): boolean => i < 3 || i > 8;

/** The warmer half of the year, which is summer; undefined where both are equally warm. */
export const warmerHalf = (temperatures: readonly number[]): Half | undefined => {
  const difference = sum(temperatures.filter(inApril)) - sum(temperatures.filter(inOctober));
  return difference > 0 ? "april" : difference < 0 ? "october" : undefined;
};

/**
 * Köppen-Geiger class after Peel, Finlayson & McMahon 2007, Table 1, of which the variables and the limit of dryness were
 * read. The other limits, and which side of them counts, were read in the program of Beck et al. 2018: a warmest month of
 * 10 °C is polar, and where a year is dry both in summer and in winter, the drier half in sum decides, summer where they
 * are equal. Polar classes are tested first, as in other rules after Beck; his program tests dry ones first, which calls
 * polar deserts BW or BS, not ET or EF. `coldLimit` (°C, coldest month) parts C from D.
 */
export const koppenClass = (
  temperatures: readonly number[],
  rains: readonly number[],
  summer: Half,
  coldLimit: number,
): string => {
  const meanTemperature = sum(temperatures) / 12;
  const hottest = Math.max(...temperatures);
  const coldest = Math.min(...temperatures);
  const yearRain = sum(rains);
  const summerRains = rains.filter(summer === "april" ? inApril : inOctober);
  const winterRains = rains.filter(summer === "april" ? inOctober : inApril);

  if (hottest <= 10) return hottest > 0 ? "ET" : "EF";

  const most = 0.7 * yearRain;
  const threshold = 2 * meanTemperature + (sum(summerRains) >= most ? 28 : sum(winterRains) >= most ? 0 : 14);
  if (yearRain < 10 * threshold) {
    return `B${yearRain < 5 * threshold ? "W" : "S"}${meanTemperature >= 18 ? "h" : "k"}`;
  }

  const driest = Math.min(...rains);
  if (coldest >= 18) return driest >= 60 ? "Af" : driest >= 100 - yearRain / 25 ? "Am" : "Aw";

  const summerDriest = Math.min(...summerRains);
  const isSummerDry = summerDriest < 40 && summerDriest < Math.max(...winterRains) / 3;
  const isWinterDry = Math.min(...winterRains) < Math.max(...summerRains) / 10;
  const season =
    isSummerDry && isWinterDry
      ? sum(summerRains) <= sum(winterRains)
        ? "s"
        : "w"
      : isSummerDry
        ? "s"
        : isWinterDry
          ? "w"
          : "f";
  const isCold = coldest <= coldLimit;
  const mildMonths = temperatures.filter((temperature) => temperature > 10).length;
  const warmth = hottest >= 22 ? "a" : mildMonths >= 4 ? "b" : coldest < -38 ? "d" : "c";
  return `${isCold ? "D" : "C"}${season}${warmth}`;
};
