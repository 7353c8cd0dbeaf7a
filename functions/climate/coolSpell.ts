import { columns, count, defineFunction, optional, quantity } from "../define";
import { isoOf, serial } from "../dates";
import { notAvailable } from "../problem";
import { figures } from "../shared/figure";
import { curveThrough } from "./shared/monthlyCurve";
import { MONTHLY_VALUE, monthlyValues } from "./shared/monthlyValues";

/** Stands in for a year that is not given. The curve's calendar hardly differs from year to year. */
const SOME_YEAR = 2026;

export const coolSpell = defineFunction({
  name: "COOLSPELL",
  summary: "Longest unbroken time that the year's curve stays below a temperature: first day, last day, days.",
  parameters: {
    months: monthlyValues("Monthly temperatures, January to December"),
    threshold: quantity("none", "Temperature to stay below, in the unit of the months", MONTHLY_VALUE),
    year: optional(
      count("none", "Year in which the spell begins; it may run over the new year", [1901, 9997], {
        plausibility: false,
      }),
      String(SOME_YEAR),
    ),
  },
  result: columns(
    { name: "first day", unit: "date", about: "First day below the threshold" },
    { name: "last day", unit: "date", about: "Last day below it" },
    { name: "days", unit: "day", about: "Length, both days counted" },
  ),
  sources: ["histospline"],
  cautions: ["smoothCurve"],
  examples: [
    {
      given: [[[-6.8, -5.3, -0.1, 6.8, 13.7, 18.4, 21.3, 20.3, 15.9, 9.2, 2.9, -2.9]], 5, 2026],
      gives: [["2026-11-05", "2027-04-07", 154]],
      within: 0,
    },
  ],
  calculate({ months, threshold, year = SOME_YEAR }) {
    const curve = curveThrough(months);
    const isBelow = (day: number): boolean => curve(day) < threshold;
    const newYear = serial(year, 1, 1);
    const nextYear = serial(year + 1, 1, 1);
    const days = Array.from({ length: nextYear - newYear }, (_, i) => newYear + i);

    const begins = days.filter((day) => isBelow(day) && (day === newYear ? !isBelow(nextYear - 1) : !isBelow(day - 1)));
    const spells = begins.map((first) => {
      // It ends: the day of this year that is not below comes again, in eight years at the latest.
      let last = first;
      while (isBelow(last + 1)) last++;
      return { first, last };
    });
    // Nothing begins: the curve is below all the year round, or never.
    if (spells.length === 0 && isBelow(newYear)) spells.push({ first: newYear, last: nextYear - 1 });
    const longest = spells.reduce<(typeof spells)[number] | undefined>(
      (best, spell) => (best && best.last - best.first >= spell.last - spell.first ? best : spell),
      undefined,
    );
    if (longest) return [longest.first, longest.last, longest.last - longest.first + 1];

    const coldest = days.reduce((best, day) => (curve(day) < curve(best) ? day : best), newYear);
    const [most, least] = figures([threshold, curve(coldest)], "none");
    return notAvailable(`months never fall below ${most}: the coldest day is ${isoOf(coldest)} with ${least}`);
  },
});
