import { isoOf } from "../dates";
import { column, columns, date, defineFunction, quantity } from "../define";
import { notUsable, Problem } from "../problem";
import { BODY_MASS } from "../shared/limits";
import { weighingsOf } from "../shared/weighings";

/** Days of the period for which the loss is told. */
const PERIOD = 30;

/**
 * Three shares of the first weighing, a gain negative. So far: first weighing less the last. Per 30 days: the slope of
 * the Theil-Sen line, the median of the slopes of all pairs of weighings, which one wet or mistyped weighing hardly
 * moves. At `end`: first weighing less the line's value on that day. Rows may be in any order; a row whose mass is blank
 * is left out.
 */
export const lossTrend = defineFunction({
  name: "LOSSTREND",
  summary: "Share of body mass lost so far, lost per 30 days, and lost by a date if the trend goes on.",
  parameters: {
    dates: column(date("Days of the weighings"), { blank: "keep" }),
    masses: column(quantity("gram", "Masses, row by row with the dates; three or more", BODY_MASS), { blank: "keep" }),
    end: date("Day to look ahead to, such as the end of the cold"),
  },
  result: columns(
    { name: "So far", unit: "share", about: "Lost from the first weighing to the last" },
    { name: "Per 30 days", unit: "share", about: "Lost in 30 days by the trend" },
    { name: "At the end", unit: "share", about: "Lost from the first weighing to the end, by the trend" },
  ),
  sources: ["theilSen"],
  cautions: ["noLossLimit", "sameScales", "noVet"],
  examples: [
    {
      given: [
        [["2026-11-16"], ["2026-12-01"], ["2026-12-16"], ["2026-12-31"]],
        [[320], [318], [316.5], [314]],
        "2027-02-08",
      ],
      gives: [[0.01875, 0.0125, 0.035]],
      within: 1e-9,
    },
  ],
  calculate({ dates, masses, end }) {
    const weighings = weighingsOf(dates, masses);
    if (weighings instanceof Problem) return weighings;
    const { line } = weighings;
    const [first, last] = [weighings.masses[0] as number, weighings.masses.at(-1) as number];
    const massAtEnd = line.intercept + line.slope * (end - (weighings.dates[0] as number));
    return massAtEnd > 0
      ? [(first - last) / first, (-line.slope * PERIOD) / first, (first - massAtEnd) / first]
      : notUsable(`end holds ${isoOf(end)}: give an earlier day, by then the trend would leave no animal`);
  },
});
