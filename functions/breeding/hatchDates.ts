import { LAST_DAY } from "../dates";
import { columns, count, date, defineFunction, optional } from "../define";
import { notUsable } from "../problem";
import { laidTooLate } from "./shared/laidTooLate";

/** The practice range for montane ratsnakes at 26 °C. */
const EARLIEST = 55;
const LATEST = 65;
const DAYS = [20, 200] as const;

export const hatchDates = defineFunction({
  name: "HATCHDATES",
  summary: "The days between which a clutch should hatch.",
  parameters: {
    laid: date("Day on which the eggs were laid"),
    earliest: optional(count("day", "Shortest incubation to expect", DAYS), "55, practice at 26 °C"),
    latest: optional(count("day", "Longest incubation to expect", DAYS), "65, practice at 26 °C"),
  },
  result: columns(
    { name: "Earliest", unit: "date", about: "First day to expect hatchlings" },
    { name: "Latest", unit: "date", about: "Last day to expect them" },
  ),
  sources: ["practice"],
  cautions: ["lateEggs"],
  examples: [
    { given: ["2026-06-20"], gives: [["2026-08-14", "2026-08-24"]], within: 0 },
    { given: ["2026-06-20", 60, 75], gives: [["2026-08-19", "2026-09-03"]], within: 0 },
  ],
  calculate({ laid, earliest: given, latest = LATEST }) {
    const earliest = given ?? EARLIEST;
    if (earliest > latest) {
      return notUsable(
        given === undefined
          ? `latest holds ${latest} days: give earliest, ${earliest} days, or more`
          : `earliest holds ${earliest} days: give latest, ${latest} days, or less`,
      );
    }
    if (laid + latest > LAST_DAY) return notUsable(laidTooLate(laid));
    return [laid + earliest, laid + latest];
  },
});
