import { symbol, type System } from "../../../functions/units";

/** Days of the round year: 0 is 1 January; 29 February is one with the 28th. */
export const DAYS = 365;
export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
/** The day on which each month begins, and the end of the last. */
export const STARTS = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, DAYS] as const;

/** A temperature on each day of the year; NaN where there is none. */
export type Daily = readonly number[];

/** A line about the year, in a band where `least` and `most` lie apart. */
export interface YearLine {
  readonly name: string;
  readonly least: Daily;
  readonly likely: Daily;
  readonly most: Daily;
}

/** A whole year as it is pictured: a strip, a ring, or one of two side by side. */
export interface DrawnYear {
  readonly title: string;
  readonly subtitle: string;
  /** The system in which its figures stand. */
  readonly system: System;
  /** The upper line first; the last is the colder one. */
  readonly lines: readonly YearLine[];
  /** Below it is cold; NaN where nothing is said. */
  readonly cold: number;
  /** What is counted below it: "lows". Where nothing is said, no days are counted. */
  readonly counted?: string;
  /** Rain in each month; NaN where not reported, none where rain is not spoken of. */
  readonly rain: readonly number[];
  /** The stage on each day of the year, "" where there is none; none at all where none is spoken of. */
  readonly stages: readonly string[];
}

export const isFigure = (value: number): boolean => !Number.isNaN(value);

export const hasFigures = ({ lines }: Pick<DrawnYear, "lines">): boolean =>
  lines.some(({ likely }) => likely.some(isFigure));

/** The days on which the colder line lies below the cold; undefined where not every day has a figure. */
export const coldDays = ({ lines, cold, counted }: DrawnYear): number | undefined => {
  const lows = lines.at(-1)?.likely ?? [];
  return counted === undefined || Number.isNaN(cold) || lows.length < DAYS || !lows.every(isFigure)
    ? undefined
    : lows.filter((low) => low < cold).length;
};

/** K, or °F. Days as near to the coldest as this are as cold. */
const AS_COLD = 0.5;

/** The month in which the picture begins: half a year before the coldest days, so that the winter is whole in the middle. */
export const firstMonthOf = ({ lines }: Pick<DrawnYear, "lines">): number => {
  const lows = lines.at(-1)?.likely ?? [];
  const least = Math.min(...lows.filter(isFigure));
  // The middle of days that may lie about the new year: their mean direction on the round year.
  const angle = (day: number): number => (2 * Math.PI * (day + 0.5)) / DAYS;
  const coldest = lows.flatMap((low, day) => (low <= least + AS_COLD ? [angle(day)] : []));
  const [east, north] = [Math.sin, Math.cos].map((part) => coldest.reduce((sum, one) => sum + part(one), 0)) as [
    number,
    number,
  ];
  const middle = ((Math.atan2(east, north) / (2 * Math.PI)) * DAYS + DAYS) % DAYS;
  const month = STARTS.findLastIndex((start) => start <= middle);
  return (Math.max(month, 0) + 6) % 12;
};

/** Days of one stage that follow one another from a day on, the year round; `to` is the day after the last. */
export interface StageRun {
  readonly stage: string;
  readonly from: number;
  readonly to: number;
}

export const stageRuns = (stages: readonly string[], first: number): readonly StageRun[] => {
  const runs: { stage: string; from: number; to: number }[] = [];
  for (let day = first; stages.length === DAYS && day < first + DAYS; day++) {
    const stage = stages[day % DAYS] as string;
    const last = runs.at(-1);
    if (last?.stage === stage && last.to === day) last.to = day + 1;
    else if (stage !== "") runs.push({ stage, from: day, to: day + 1 });
  }
  return runs;
};

/** What pictures reach from and to; those that are to be compared share it. */
export interface Reach {
  readonly coldest: number;
  readonly warmest: number;
  /** Between two lines of the grid. */
  readonly step: number;
  /** 0 where none of them has rain. */
  readonly wettest: number;
}

export const reachOf = (years: readonly DrawnYear[]): Reach => {
  const ends = years
    .flatMap(({ lines, cold }) => [cold, ...lines.flatMap(({ least, most }) => [...least, ...most])])
    .filter(isFigure);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const step = high - low > 60 ? 20 : high - low > 30 ? 10 : 5;
  return {
    step,
    coldest: Math.floor(low / 5) * 5,
    warmest: Math.max(Math.ceil(high / 5) * 5, Math.floor(low / 5) * 5 + step),
    wettest: Math.max(0, ...years.flatMap(({ rain }) => rain).filter(isFigure)),
  };
};

/** °C and mm, or °F and in. */
export const degreesOf = ({ system }: Pick<DrawnYear, "system">): string => symbol("celsius", system);
export const rainUnitOf = ({ system }: Pick<DrawnYear, "system">): string => symbol("millimetre", system);
/** Inches of rain need a decimal. */
export const rainFigure = (rain: number, { system }: Pick<DrawnYear, "system">): string =>
  system === "metric" ? String(Math.round(rain)) : rain.toFixed(1);

/** The grid's lines between two ends. */
export const gridOf = ({ coldest, warmest, step }: Reach): readonly number[] => {
  const first = Math.ceil(coldest / step) * step;
  return Array.from({ length: Math.floor((warmest - first) / step) + 1 }, (_, i) => first + i * step);
};
