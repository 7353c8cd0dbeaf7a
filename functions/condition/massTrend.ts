import { cell, column, count, date, defineFunction, optional, quantity } from "../define";
import { Problem } from "../problem";
import { BODY_MASS } from "../shared/limits";
import { weighingsOf } from "../shared/weighings";

/**
 * The Theil-Sen slope: the median over all pairs of weighings, so that one wrong weighing hardly moves it. The order of
 * the rows is of no matter, a row without a mass is left out, and two weighings of one day both count, though the pair
 * that they make has no slope.
 */
export const massTrend = defineFunction({
  name: "MASSTREND",
  summary: "Gain or loss of mass per week, or per any number of days, from three or more weighings.",
  parameters: {
    dates: column(date("Days of the weighings, in any order; a day may stand twice"), { blank: "keep" }),
    masses: column(quantity("gram", "Body mass on each; a blank is left out", BODY_MASS), { blank: "keep" }),
    days: optional(count("day", "Days that the answer is for", [1, 366]), "7"),
  },
  forEach: "animal",
  result: cell("gramPerPeriod", "Gain per that many days; a loss is negative"),
  sources: ["theilSen"],
  cautions: ["sameScales", "noVet"],
  examples: [
    {
      given: [
        [["2026-04-01"], ["2026-04-08"], ["2026-04-22"], ["2026-05-06"]],
        [[140], [142], [null], [150]],
      ],
      gives: 2,
      within: 1e-9,
    },
    {
      given: [
        [["2026-04-01"], ["2026-04-01"], ["2026-04-08"], ["2026-04-08"], ["2026-04-15"], ["2026-04-15"]],
        [[140], [310], [142], [309], [144], [308]],
        7,
        [["Ash"], ["Birch"], ["Ash"], ["Birch"], ["Ash"], ["Birch"]],
        [["Ash"], ["Birch"]],
      ],
      gives: [[2], [-1]],
      within: 1e-9,
    },
  ],
  calculate({ dates, masses, days = 7, named }) {
    const weighings = weighingsOf(dates, masses, named);
    return weighings instanceof Problem ? weighings : weighings.line.slope * days;
  },
});
