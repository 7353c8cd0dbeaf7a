import { count, defineFunction, table } from "../define";
import { serial } from "../dates";
import { curveThrough } from "./shared/monthlyCurve";
import { monthlyValues } from "./shared/monthlyValues";

export const daily = defineFunction({
  name: "DAILY",
  summary: "Date and value for every day of a year from twelve monthly means, by the curve of ONDATE.",
  parameters: {
    months: monthlyValues("Monthly means, January to December: temperature, rain per day, anything"),
    year: count("none", "Year", [1901, 9998], { plausibility: false }),
  },
  result: table(
    { name: "date", unit: "date", about: "Each day of the year" },
    { name: "value", unit: "none", about: "Value on that day, in the unit of the months" },
  ),
  sources: ["histospline"],
  cautions: ["smoothCurve"],
  examples: [
    {
      given: [[[-6.8, -5.3, -0.1, 6.8, 13.7, 18.4, 21.3, 20.3, 15.9, 9.2, 2.9, -2.9]], 2028],
      gives: [
        ["2028-01-01", -5.62],
        ["2028-01-02", -5.77],
      ],
      within: 0.005,
      rows: 366,
    },
  ],
  calculate({ months, year }) {
    const curve = curveThrough(months);
    const first = serial(year, 1, 1);
    return Array.from({ length: serial(year + 1, 1, 1) - first }, (_, i) => [first + i, curve(first + i)]);
  },
});
