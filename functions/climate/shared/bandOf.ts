import type { Kind, Spread } from "./observedRates";

/**
 * K. Stations differ from one another by slope, valley and coast, however near their elevations: so much more on either side,
 * in quadrature with what the rate leaves open. Held by a test against pairs of every gap from 50 m on.
 */
const MARGIN: Readonly<Record<Kind, number>> = { high: 1.8, low: 2.8, median: 1.7 };

/** Least, likely and most at a place so many km above the temperature's own, °C. */
export const bandOf = (
  temperature: number,
  km: number,
  kind: Kind,
  [slow, middle, fast]: Spread,
): readonly [least: number, likely: number, most: number] => {
  const likely = temperature - middle * km;
  const [warmer, colder] = km > 0 ? [middle - slow, fast - middle] : [fast - middle, middle - slow];
  return [likely - Math.hypot(colder * km, MARGIN[kind]), likely, likely + Math.hypot(warmer * km, MARGIN[kind])];
};

/** How a figure of a kind and its rates stands in a formula. */
type Figure = (of: (kind: Kind, rates: Spread) => number) => string;

/** The same in formulas. */
export const bandText = (temperature: string, km: string, figure: Figure): readonly [string, string, string] => {
  const likely = `${temperature}-${figure((_, [, middle]) => middle)}*${km}`;
  const slower = figure((_, [slow, middle]) => middle - slow);
  const faster = figure((_, [, middle, fast]) => fast - middle);
  const margin = figure((kind) => MARGIN[kind]);
  const reach = (above: string, below: string): string => `SQRT((IF(${km}>0,${above},${below})*${km})^2+${margin}^2)`;
  return [`${likely}-${reach(faster, slower)}`, likely, `${likely}+${reach(slower, faster)}`];
};
