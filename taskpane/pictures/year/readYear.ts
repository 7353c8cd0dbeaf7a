import { orderedPlan, PLAN_ROWS, stageOn } from "../../../functions/shared/plan";
import { Problem } from "../../../functions/problem";
import type { System } from "../../../functions/units";
import type { Year } from "../../sheets/sheet";
import { figure, word } from "../cells";
import { betweenDays, dailyOf, dayOfYear } from "./daily";
import { DAYS, isFigure, type DrawnYear } from "./drawnYear";

type Read = (range: string) => readonly (readonly unknown[])[];

/** The stage on each day of the year that begins on a day; none while the plan is not whole. */
const stagesOf = (dates: readonly number[], first: number | undefined): readonly string[] => {
  if (dates.length !== PLAN_ROWS.length || !dates.every(isFigure)) return [];
  const plan = orderedPlan(dates);
  if (plan instanceof Problem) return [];
  // Without a year of its own the plan stands in the middle of one.
  const from = first ?? plan.lastMeal - Math.floor((DAYS - (plan.firstMeal - plan.lastMeal)) / 2);
  const stages = Array<string>(DAYS).fill("");
  for (let i = DAYS - 1; i >= 0; i--) stages[dayOfYear(from + i)] = stageOn(plan, from + i);
  return stages;
};

/** Days that make a year, within which a plan has its place. */
const WHOLE = 360;

/** A sheet's year with its figures. */
export const readYear = (year: Year, read: Read, system: System): DrawnYear => {
  const cells = (range: string | undefined): readonly unknown[] => (range === undefined ? [] : read(range).flat());
  const figures = (range: string | undefined): readonly number[] => cells(range).map(figure);
  const days = figures(year.along);
  const daily = (range: string) =>
    year.along === undefined ? dailyOf(figures(range)) : betweenDays(days, figures(range));
  const known = days.filter(isFigure);
  const [first, last] = [Math.min(...known), Math.max(...known)];
  const rain = figures(year.rain);
  return {
    title: word(cells(year.nameFrom)[0]) || year.title,
    subtitle: word(cells(year.subtitle)[0]),
    system,
    lines: year.lines.map(({ name, likely, least = likely, most = likely }) => ({
      name,
      least: daily(least),
      likely: daily(likely),
      most: daily(most),
    })),
    cold: figures(year.cold)[0] ?? NaN,
    ...(year.counted === undefined ? {} : { counted: year.counted }),
    rain: rain.length === 12 && rain.some(isFigure) ? rain : [],
    stages: stagesOf(figures(year.plan), last - first >= WHOLE ? first : undefined),
  };
};
