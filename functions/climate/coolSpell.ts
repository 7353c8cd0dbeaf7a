import { columns, count, defineFunction, optional, quantity } from "../define";
import { isoOf, serial } from "../dates";
import { notAvailable } from "../problem";
import { figures } from "../shared/figure";
import { curveThrough } from "./shared/monthlyCurve";
import { MONTHLY_VALUE, monthlyValues } from "./shared/monthlyValues";

/** Stands in for a year that is not given. The curve's calendar hardly differs from year to year. */
const SOME_YEAR = 2026;

/** How far off a mean of thirty years, a thermometer or a threshold may well be, in the unit of the months. */
const DEGREE = 1;

interface Spell {
  readonly first: number;
  readonly last: number;
}

const lengthOf = (spell: Spell | undefined): number => (spell ? spell.last - spell.first + 1 : 0);

/** The longest time below a limit that begins on one of the days of a year; of two as long, the first of the year. */
const longestBelow = (curve: (day: number) => number, limit: number, days: readonly number[]): Spell | undefined => {
  const isBelow = (day: number): boolean => curve(day) < limit;
  const [newYear, yearsEnd] = [days[0] as number, days.at(-1) as number];
  const begins = days.filter((day) => isBelow(day) && (day === newYear ? !isBelow(yearsEnd) : !isBelow(day - 1)));
  const spells = begins.map((first): Spell => {
    // It ends: the day of this year that is not below comes again, in eight years at the latest.
    let last = first;
    while (isBelow(last + 1)) last++;
    return { first, last };
  });
  // Nothing begins: the curve is below all the year round, or never.
  if (spells.length === 0 && isBelow(newYear)) spells.push({ first: newYear, last: yearsEnd });
  return spells.reduce<Spell | undefined>(
    (best, spell) => (best && lengthOf(best) >= lengthOf(spell) ? best : spell),
    undefined,
  );
};

/** The days are told to the day; how little that means, the two lengths beside them say. */
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
    { name: "days, least", unit: "day", about: "Length below a threshold one degree lower" },
    { name: "days, most", unit: "day", about: "Length below a threshold one degree higher" },
  ),
  sources: ["histospline"],
  cautions: ["smoothCurve"],
  examples: [
    {
      given: [[[-6.8, -5.3, -0.1, 6.8, 13.7, 18.4, 21.3, 20.3, 15.9, 9.2, 2.9, -2.9]], 5, 2026],
      gives: [["2026-11-05", "2027-04-07", 154, 145, 164]],
      within: 0,
    },
  ],
  calculate({ months, threshold, year = SOME_YEAR }) {
    const curve = curveThrough(months);
    const newYear = serial(year, 1, 1);
    const nextYear = serial(year + 1, 1, 1);
    const days = Array.from({ length: nextYear - newYear }, (_, i) => newYear + i);
    const spell = longestBelow(curve, threshold, days);
    if (spell) {
      const length = (limit: number): number => lengthOf(longestBelow(curve, limit, days));
      return [spell.first, spell.last, lengthOf(spell), length(threshold - DEGREE), length(threshold + DEGREE)];
    }

    const coldest = days.reduce((best, day) => (curve(day) < curve(best) ? day : best), newYear);
    const [most, least] = figures([threshold, curve(coldest)], "none");
    return notAvailable(`months never fall below ${most}: the coldest day is ${isoOf(coldest)} with ${least}`);
  },
});
