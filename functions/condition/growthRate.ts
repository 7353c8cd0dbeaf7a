import { isoOf } from "../dates";
import { cell, date, defineFunction, quantity } from "../define";
import { notUsable } from "../problem";
import { BODY_MASS } from "../shared/limits";
import { refusedIf } from "../twin";

/**
 * The specific growth rate, 100 · ln(m2 / m1) / days: the same figure for a hatchling and for an adult that grow by the
 * same share. The two weighings may stand in either order; two of the same day give no rate.
 */
export const growthRate = defineFunction({
  name: "GROWTHRATE",
  summary: "Growth between two weighings, in % of body mass per day; a loss is negative.",
  parameters: {
    mass1: quantity("gram", "Body mass at one weighing", BODY_MASS),
    date1: date("Day of that weighing"),
    mass2: quantity("gram", "Body mass at the other weighing", BODY_MASS),
    date2: date("Day of the other weighing, later or earlier"),
  },
  result: cell("percentPerDay", "Specific growth rate"),
  sources: ["definition"],
  cautions: ["sameScales"],
  examples: [
    { given: [20, "2026-04-01", 30, "2026-06-10"], gives: 0.579236, within: 1e-6 },
    { given: [152, "2026-11-16", 146, "2027-02-08"], gives: -0.047945, within: 1e-6 },
  ],
  calculate({ mass1, date1, mass2, date2 }) {
    if (date1 === date2) return notUsable(`date2 holds ${isoOf(date2)} like date1: give weighings of two days`);
    return (100 * Math.log(mass2 / mass1)) / (date2 - date1);
  },
  twin: ({ mass1, date1, mass2, date2 }) =>
    refusedIf(`${date1}=${date2}`, `100*LN(${mass2}/${mass1})/(${date2}-${date1})`),
});
