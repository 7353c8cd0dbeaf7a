import { serial } from "../../functions/dates";
import { Problem } from "../../functions/problem";
import type { Band } from "../../functions/network/network";
import { homeYear } from "../../taskpane/sheets/shared/scenario";
import { dailyOf, dayOfYear } from "../../taskpane/pictures/year/daily";
import { DAYS, type Daily, type DrawnYear, type YearLine } from "../../taskpane/pictures/year/drawnYear";
import { networkAsShipped } from "../network";

/** Years for the tests of their pictures. */

const exactly = (name: string, likely: Daily): YearLine => ({ name, least: likely, likely, most: likely });

/** The example's home, 1500 m in a Spanish range. */
export const sierra: DrawnYear = {
  title: "A mountain in Spain",
  subtitle: "1500 m",
  system: "metric",
  lines: [exactly("daily highs", dailyOf(homeYear.high)), exactly("daily lows", dailyOf(homeYear.low))],
  cold: 10,
  counted: "lows",
  rain: homeYear.rain,
  stages: [],
};

/** The southern Andes as the network estimates them: wide bands, and the winter in July. */
export const cajon: DrawnYear = (() => {
  const year = networkAsShipped().yearAt(-33, -70, 1800);
  if (year instanceof Problem) throw new Error(year.message);
  const line = (name: string, bands: readonly Band[]): YearLine => ({
    name,
    least: dailyOf(bands.map(({ least }) => least)),
    likely: dailyOf(bands.map(({ likely }) => likely)),
    most: dailyOf(bands.map(({ most }) => most)),
  });
  const { high, low, rain } = year;
  return {
    title: "Where the animal lives, far in the south",
    subtitle: "1800 m, estimated from the stations around",
    system: "metric",
    lines: [line("daily highs", high), line("daily lows", low)],
    cold: 10,
    counted: "lows",
    rain,
    stages: [],
  };
})();

/** The example's plan: stages by its dates, set-points in steps. */
const dates = [
  ["Feeding", serial(2026, 3, 29)],
  ["Clearing", serial(2026, 9, 21)],
  ["Cooling", serial(2026, 10, 5)],
  ["Cold", serial(2026, 11, 16)],
  ["Warming", serial(2027, 2, 8)],
  ["Settling", serial(2027, 3, 22)],
  ["Feeding", serial(2027, 3, 29)],
] as const;
const stages = Array<string>(DAYS).fill("");
for (const [i, [stage, from]] of dates.slice(0, -1).entries())
  for (let day = from; day < (dates[i + 1]?.[1] ?? from); day++) stages[dayOfYear(day)] = stage;
const stepped = (warm: number): Daily =>
  stages.map((stage) => (stage === "Cold" ? 8 : stage === "Feeding" ? warm : 20));
const { counted: _, ...home } = sierra;
export const planned: DrawnYear = {
  ...home,
  title: "The year by the plan",
  lines: [exactly("set-point by day", stepped(26)), exactly("set-point by night", stepped(17))],
  stages,
};
