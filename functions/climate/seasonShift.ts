import { count, defineFunction, list, optional } from "../define";
import { monthlyValues } from "./shared/monthlyValues";

export const seasonShift = defineFunction({
  name: "SEASONSHIFT",
  summary: "Twelve months moved along the calendar: a northern year read for a southern house, or the other way round.",
  parameters: {
    months: monthlyValues("Monthly values, January to December"),
    by: optional(
      count("none", "Months to move, later positive, earlier negative", [-12, 12], { plausibility: false }),
      "6",
    ),
  },
  result: list("none", "The same values, January to December of the new year", "months"),
  sources: ["definition"],
  cautions: ["turnedYear"],
  examples: [
    { given: [[[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]]], gives: [[7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5, 6]], within: 0 },
    {
      given: [[[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]], 1],
      gives: [[12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]],
      within: 0,
    },
  ],
  calculate({ months, by = 6 }) {
    return months.map((_, i) => months[(i - by + 12) % 12] as number);
  },
  twin: ({ months: { each }, by }) =>
    each.map((_, i) => by(each[(i + 6) % 12] as string, (own) => `CHOOSE(MOD(${i}-${own},12)+1,${each.join(",")})`)),
});
