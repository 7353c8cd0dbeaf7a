import { differenceInCalendarMonths, isLastDayOfMonth } from "date-fns";
import { dateOf, isoOf } from "../dates";
import { cell, choice, date, defineFunction, optional } from "../define";
import { notUsable } from "../problem";
import { byWord, refusedIf } from "../twin";

const UNITS = ["months", "weeks", "days", "years"] as const;

/**
 * Whole calendar months: the most that can be added to the birthday without passing the day. A month that has no such
 * day ends on its last: born on the 31st, an animal turns a month on the 30th; born on 29 February, a year on the 28th.
 */
const wholeMonths = (born: number, on: number): number => {
  const [from, to] = [dateOf(born), dateOf(on)];
  const begun = differenceInCalendarMonths(to, from);
  return to.getDate() < from.getDate() && !isLastDayOfMonth(to) ? begun - 1 : begun;
};

export const age = defineFunction({
  name: "AGE",
  summary: "An animal's age in whole months, weeks, days or years.",
  parameters: {
    born: date("Day on which it hatched or was born"),
    on: date("Day on which its age is asked"),
    unit: optional(choice("What is counted", UNITS), '"months"'),
  },
  result: cell("none", "Age, rounded down"),
  sources: ["definition"],
  cautions: [],
  examples: [
    { given: ["2025-08-14", "2027-02-13"], gives: 17, within: 0 },
    { given: ["2025-08-14", "2027-02-14"], gives: 18, within: 0 },
    { given: ["2025-08-14", "2025-09-03", "days"], gives: 20, within: 0 },
  ],
  calculate({ born, on, unit = "months" }) {
    if (on < born) return notUsable(`on holds ${isoOf(on)}: give born, ${isoOf(born)}, or a later day`);
    switch (unit) {
      case "days":
        return on - born;
      case "weeks":
        return Math.floor((on - born) / 7);
      case "months":
        return wholeMonths(born, on);
      case "years":
        return Math.floor(wholeMonths(born, on) / 12);
    }
  },
  twin: ({ born, on, unit }) => {
    const months =
      `(YEAR(${on})-YEAR(${born}))*12+MONTH(${on})-MONTH(${born})` +
      `-IF(AND(DAY(${on})<DAY(${born}),DAY(${on}+1)>1),1,0)`;
    const counted = (word: string): string =>
      byWord(word, [
        ["days", `${on}-${born}`],
        ["weeks", `INT((${on}-${born})/7)`],
        ["years", `INT((${months})/12)`],
        ["months", months],
      ]);
    return refusedIf(`${on}<${born}`, unit(counted('"months"'), counted));
  },
});
