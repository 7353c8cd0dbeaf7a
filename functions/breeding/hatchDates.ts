import { LAST_DAY } from "../dates";
import { columns, count, date, defineFunction, optional } from "../define";
import { notUsable } from "../problem";
import { laidTooLate } from "./shared/laidTooLate";
import { refusedIf } from "../twin";

/** The practice range for montane ratsnakes at 26 °C. */
const EARLIEST = 55;
const LATEST = 65;
const DAYS = [20, 200] as const;
/** Days at 26 °C by the lines fitted to the published means of seven colubrids: three of the seven lie inside practice. */
const MEASURED = [37, 72] as const;

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
    { name: "Likely", unit: "date", about: "The middle of the two" },
    { name: "Soonest measured", unit: "date", about: "By the quickest colubrid measured at 26 °C; your own, if given" },
    { name: "Latest measured", unit: "date", about: "By the slowest colubrid measured at 26 °C; your own, if given" },
  ),
  sources: ["practice", "eggThresholds"],
  cautions: ["practiceDays", "lateEggs"],
  examples: [
    {
      given: ["2026-06-20"],
      gives: [["2026-08-14", "2026-08-24", "2026-08-19", "2026-07-27", "2026-08-31"]],
      within: 0,
    },
    {
      given: ["2026-06-20", 60, 75],
      gives: [["2026-08-19", "2026-09-03", "2026-08-27", "2026-08-19", "2026-09-03"]],
      within: 0,
    },
  ],
  calculate({ laid, earliest: given, latest: ownLatest }) {
    const [earliest, latest] = [given ?? EARLIEST, ownLatest ?? LATEST];
    if (earliest > latest) {
      return notUsable(
        given === undefined
          ? `latest holds ${latest} days: give earliest, ${earliest} days, or more`
          : `earliest holds ${earliest} days: give latest, ${latest} days, or less`,
      );
    }
    const [soonest, slowest] = given === undefined && ownLatest === undefined ? MEASURED : [earliest, latest];
    if (laid + slowest > LAST_DAY) return notUsable(laidTooLate(laid));
    return [earliest, latest, Math.round((earliest + latest) / 2), soonest, slowest].map((days) => laid + days);
  },
  twin: ({ laid, earliest, latest }) => {
    const [first, last] = [earliest(String(EARLIEST)), latest(String(LATEST))];
    const measured = [
      earliest(
        latest(String(MEASURED[0]), () => String(EARLIEST)),
        (own) => own,
      ),
      latest(
        earliest(String(MEASURED[1]), () => String(LATEST)),
        (own) => own,
      ),
    ];
    return [first, last, `ROUND((${first}+${last})/2,0)`, ...measured].map((days) =>
      refusedIf(`${first}>${last}`, `${laid}+${days}`),
    );
  },
});
