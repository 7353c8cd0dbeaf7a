import { fromMetric, symbol, type System, type Unit } from "../units";

const DECIMALS = 2;
/** As many as a number carries. */
const MOST_DECIMALS = 15;

/**
 * Metric figures as the keeper reads them beside one another in a message: "8 °C", "46.4 °F". Two decimals at most, or as
 * many as it takes for figures that differ to read differently, so that no message says that 10 °C is above 10 °C.
 */
export const figures = <const V extends readonly number[]>(
  values: V,
  unit: Unit,
  system: System = "metric",
): { readonly [K in keyof V]: string } => {
  const mark = symbol(unit, system);
  const shown = values.map((value) => fromMetric(value, unit, system));
  const different = new Set(shown).size;
  let decimals = DECIMALS;
  const rounded = (): number[] => shown.map((value) => Number(value.toFixed(decimals)));
  while (decimals < MOST_DECIMALS && new Set(rounded()).size < different) decimals++;
  return rounded().map((value) => `${value}${mark && ` ${mark}`}`) as unknown as { readonly [K in keyof V]: string };
};

/** One figure: "8 °C". */
export const figure = (value: number, unit: Unit, system: System = "metric"): string =>
  figures([value], unit, system)[0];
