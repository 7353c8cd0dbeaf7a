import { saturation } from "../../../functions/air/shared/vapour";
import type { Station } from "../../../functions/network/station";
import type { Listed, Report } from "./reports";

const ELEMENTS = ["high", "low", "vapour", "rain", "rainDays"] as const;
type Element = (typeof ELEMENTS)[number];

/** A mean outside of its high and low by more than this is a slip of one of the three. K */
const MEAN_OUTSIDE = 0.5;
/** How far a month may lie from the station's median of that month: so many median absolute deviations, and so much. */
const DEVIATIONS = 8;
const SLACK: Readonly<Record<Element, number>> = { high: 3, low: 3, vapour: 3, rain: 150, rainDays: 15 };
/** Fewer years than this in any month are no average. */
const LEAST_YEARS = 8;
/** Vapour above this share of saturation at the month's mid-point can't be. */
const WETTEST = 1.12;

const median = (values: readonly number[]): number => {
  const inOrder = [...values].sort((a, b) => a - b);
  const half = inOrder.length >> 1;
  return inOrder.length % 2 === 1
    ? (inOrder[half] as number)
    : ((inOrder[half - 1] as number) + (inOrder[half] as number)) / 2;
};

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What contradicts itself: its temperatures are not used. */
const contradicts = ({ high, low, mean: middle }: Report): boolean =>
  high < low || middle > high + MEAN_OUTSIDE || middle < low - MEAN_OUTSIDE;

interface Average {
  /** Twelve months, NaN where there are too few years. */
  readonly values: readonly number[];
  /** The fewest years behind a month. */
  readonly years: number;
}

/** Why something was left out, and how often, or of which station. */
export interface LeftOut {
  contradictions: number;
  strays: number;
  unlisted: string[];
  short: string[];
  supersaturated: string[];
}

/** The average year of every station that has one. */
export const averagesOf = (
  reports: readonly Report[],
  list: ReadonlyMap<string, Listed>,
): { readonly stations: readonly Station[]; readonly leftOut: LeftOut } => {
  const leftOut: LeftOut = { contradictions: 0, strays: 0, unlisted: [], short: [], supersaturated: [] };
  const byStation = new Map<string, Report[]>();
  for (const report of reports) {
    const own = byStation.get(report.station);
    if (own) own.push(report);
    else byStation.set(report.station, [report]);
  }

  const averages = (own: readonly Report[], element: Element): Average => {
    const months: Map<number, number>[] = Array.from({ length: 12 }, () => new Map<number, number>());
    // Of two reports of one month the later in the file is the correction.
    for (const report of own) {
      const isTemperature = element === "high" || element === "low";
      if (Number.isNaN(report[element]) || (isTemperature && contradicts(report))) continue;
      months[report.month]?.set(report.year, report[element]);
    }
    let years = Infinity;
    const values = months.map((month) => {
      const all = [...month.values()];
      const middle = all.length > 0 ? median(all) : NaN;
      const spread = all.length > 0 ? median(all.map((value) => Math.abs(value - middle))) : NaN;
      const kept = all.filter((value) => Math.abs(value - middle) <= DEVIATIONS * spread + SLACK[element]);
      leftOut.strays += all.length - kept.length;
      years = Math.min(years, kept.length);
      return kept.length >= LEAST_YEARS ? mean(kept) : NaN;
    });
    return { values, years };
  };

  const stations: Station[] = [];
  for (const [id, own] of [...byStation].sort(([one], [other]) => one.localeCompare(other, "en"))) {
    leftOut.contradictions += own.filter(contradicts).length;
    const listed = list.get(id);
    if (!listed) {
      leftOut.unlisted.push(id);
      continue;
    }
    const [high, low, vapour, rain, rainDays] = ELEMENTS.map((element) => averages(own, element)) as [
      Average,
      Average,
      Average,
      Average,
      Average,
    ];
    if ([...high.values, ...low.values].some(Number.isNaN)) {
      leftOut.short.push(id);
      continue;
    }
    const isTooWet = vapour.values.some(
      (value, i) => value > WETTEST * saturation(((high.values[i] as number) + (low.values[i] as number)) / 2),
    );
    if (isTooWet) leftOut.supersaturated.push(id);
    stations.push({
      network: "climat",
      ...listed,
      years: high.years,
      high: high.values,
      low: low.values,
      vapour: isTooWet ? vapour.values.map(() => NaN) : vapour.values,
      rain: rain.values,
      rainDays: rainDays.values,
    });
  }
  return { stations, leftOut };
};
