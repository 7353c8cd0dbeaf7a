import { count, defineFunction, optional, plan, table, unitsParameter } from "../define";
import { Problem } from "../problem";
import { orderedPlan, setPointOn, type Plan } from "../shared/plan";
import { setPoints, coldAboveWarm } from "../shared/setPoints";
import { daysOf } from "./shared/days";
import { joinedUpTo, uncountedTemperatures, uncountedTimes } from "./shared/readingRange";
import { seriesOf } from "./shared/series";

/** The day on which the thermostat was last turned: on either leg every `step` days, and at its end. */
const turnedOn = (
  { coolingStarts, intoTheCold, warmingStarts, warmAgain }: Plan,
  day: number,
  step: number,
): number => {
  const from = day >= warmingStarts && day < warmAgain ? warmingStarts : coolingStarts;
  const isOnALeg = (day >= coolingStarts && day < intoTheCold) || from === warmingStarts;
  return isOnALeg ? from + Math.floor((day - from) / step) * step : day;
};

export const tracking = defineFunction({
  name: "TRACKING",
  summary: "A row a day: the winter plan's set-point, what the logger's mean was, and how far off that is.",
  parameters: {
    times: uncountedTimes,
    temperatures: uncountedTemperatures,
    plan: plan(),
    ...setPoints,
    units: unitsParameter,
    step: optional(count("day", "Days between two turns of the thermostat, as in RAMP", [1, 1000]), "1, every day"),
    longestGap: joinedUpTo,
  },
  result: table(
    { name: "Date", unit: "date", about: "A day with readings" },
    { name: "Set-point", unit: "celsius", about: "What SETPOINT answers for the day, or RAMP with that step" },
    {
      name: "Mean",
      unit: "celsius",
      about: "Mean of the day, as DAYTABLE answers it; blank where too few hours are covered",
    },
    { name: "Difference", unit: "kelvin", about: "Mean less set-point: above 0 is too warm" },
  ),
  sources: ["definition", "practice"],
  cautions: ["coldKills", "probePlace", "skippedReadings"],
  examples: [
    {
      given: [
        [["2026-10-25T00:00"], ["2026-10-25T12:00"], ["2026-10-26T00:00"], ["2026-11-20T12:00"]],
        [[17], [17], [17], [7]],
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        24,
        8,
        "metric",
        1,
        720,
      ],
      gives: [
        ["2026-10-25", 16.380952, 17, 0.619048],
        ["2026-10-26", 16, "", ""],
        ["2026-11-20", 8, "", ""],
      ],
      within: 1e-6,
    },
  ],
  calculate({ times, temperatures, plan, warm, cold, units, step = 1, longestGap }) {
    const ordered = orderedPlan(plan);
    if (ordered instanceof Problem) return ordered;
    const fault = coldAboveWarm(warm, cold, units);
    if (fault) return fault;
    const series = seriesOf(times, temperatures);
    if (series instanceof Problem) return series;
    return daysOf(series, longestGap).map(({ day, mean }) => {
      const wanted = setPointOn(ordered, warm, cold, turnedOn(ordered, day, step));
      return mean === undefined ? [day, wanted, "", ""] : [day, wanted, mean, mean - wanted];
    });
  },
});
