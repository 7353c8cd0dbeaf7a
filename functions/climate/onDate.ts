import { cell, date, defineFunction } from "../define";
import { curveThrough } from "./shared/monthlyCurve";
import { monthlyValues } from "./shared/monthlyValues";

export const onDate = defineFunction({
  name: "ONDATE",
  summary: "Value on a date from twelve monthly means, by a smooth curve whose days average to each month's mean.",
  parameters: {
    months: monthlyValues("Monthly means, January to December: temperature, rain per day, anything"),
    dates: date("Day wanted, of any year"),
  },
  result: cell("none", "Value on that day, in the unit of the months"),
  sources: ["histospline"],
  cautions: ["smoothCurve"],
  examples: [
    {
      given: [[[-6.8, -5.3, -0.1, 6.8, 13.7, 18.4, 21.3, 20.3, 15.9, 9.2, 2.9, -2.9]], "2026-11-15"],
      gives: 3.0,
      within: 0.05,
    },
  ],
  calculate({ months, dates }) {
    return curveThrough(months)(dates);
  },
});
