import type { Band, SiteYear } from "../../../functions/network/network";
import type { Station } from "../../../functions/network/station";

/** Twelve months as they are drawn; a station's own band has no width. Rain is NaN where it is not reported. */
export interface YearFigures {
  readonly high: readonly Band[];
  readonly low: readonly Band[];
  readonly rain: readonly number[];
}

export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

const exactly = (value: number): Band => ({ least: value, likely: value, most: value });

export const estimated = ({ high, low, rain }: SiteYear): YearFigures => ({ high, low, rain });
export const recorded = ({ high, low, rain }: Station): YearFigures => ({
  high: high.map(exactly),
  low: low.map(exactly),
  rain,
});

/** What one picture reaches from and to; several that are to be compared share it. */
export interface Reach {
  readonly coldest: number;
  readonly warmest: number;
  /** mm; 0 where none of them reports rain. */
  readonly wettest: number;
}

const STEP = 5; // °C

export const reachOf = (years: readonly YearFigures[]): Reach => {
  const ends = years.flatMap(({ high, low }) => [...high, ...low].flatMap(({ least, most }) => [least, most]));
  const rain = years.flatMap((year) => year.rain).filter((value) => !Number.isNaN(value));
  return {
    coldest: Math.floor(Math.min(...ends) / STEP) * STEP,
    warmest: Math.ceil(Math.max(...ends) / STEP) * STEP,
    wettest: Math.ceil(Math.max(0, ...rain) / 50) * 50,
  };
};

const fromTo = (values: readonly number[]): string =>
  `${Math.round(Math.min(...values))} to ${Math.round(Math.max(...values))}`;
const likely = (bands: readonly Band[]): readonly number[] => bands.map((band) => band.likely);

/** "Daily highs from -1 to 17 °C, lows from -7 to 8 °C over the months; 900 mm of rain and melted snow a year." */
export const inWords = ({ high, low, rain }: YearFigures): string => {
  const sum = rain.reduce((total, value) => total + value, 0);
  return `Daily highs from ${fromTo(likely(high))} °C, lows from ${fromTo(likely(low))} °C over the months${
    Number.isNaN(sum) ? "; rain is not reported" : `; ${Math.round(sum / 10) * 10} mm of rain and melted snow a year`
  }.`;
};
