import { FEWEST_HOURS } from "../../functions/readings/shared/days";
import { limits, plan, setPoints } from "./readingsInputs";
import { byDay, DAYS, ready, silences, temperatures, times } from "./readingsRead";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import type { Cell } from "./shared/names";
import { moreThanNone, over, says, under } from "./shared/rules";
import { hasPlan } from "./shared/winterPlan";

/** The readings by the day, beside the limits and the plan, and the gaps. */

const { low, high, longest } = limits;
const { warmSet, coldSet } = setPoints;

export const days = log("days", DAYS, {
  date: {
    title: "Date",
    spilled: ready(byDay(`VIV.DAYTABLE(${times},${temperatures},"metric",${longest})`), longest),
    format: "date",
  },
  high: { title: "High", measures: "°C", covered: true, format: "tenth", rules: [over(high, "stop")] },
  low: { title: "Low", measures: "°C", covered: true, format: "tenth", rules: [under(low, "cold")] },
  swing: { title: "Swing", measures: "K", covered: true, format: "tenth", note: "High less low, K." },
  mid: { title: "Mid", measures: "°C", covered: true, format: "tenth", note: "Half-way between high and low." },
  mean: {
    title: "Mean",
    measures: "°C",
    covered: true,
    format: "tenth",
    note: `Weighted by time. Blank, with Swing and Mid, where fewer than ${FEWEST_HOURS} hours are covered.`,
  },
  read: { title: "Read", covered: true, format: "whole", note: "Readings of the day." },
  skip: {
    title: "Skip",
    covered: true,
    format: "whole",
    note: "Rows of the day without a temperature that can be read.",
    rules: [moreThanNone("care")],
  },
  covered: {
    title: "Hours",
    covered: true,
    format: "tenth",
    note: "Hours of the day that the readings cover, joined up to the minutes above.",
    rules: [under(FEWEST_HOURS, "care")],
  },
  sign: {
    title: "Sign",
    each: ({ high: most, low: least }) =>
      once`IF(${most}>${high},IF(${least}<${low},"both","warm"),IF(${least}<${low},"cold","ok"))`,
    note: "warm: above the upper limit at some time. cold: below the lower one. both: both.",
    rules: [says("warm", "stop"), says("both", "stop"), says("cold", "cold")],
  },
  tracked: {
    title: "Date",
    spilled: ready(
      `IF(${hasPlan(plan.dates)},${byDay(`VIV.TRACKING(${times},${temperatures},${plan.dates},${warmSet},${coldSet},"metric",1,${longest})`)},"")`,
      warmSet,
      coldSet,
      longest,
    ),
    format: "date",
  },
  setPoint: {
    title: "Plan",
    measures: "°C",
    covered: true,
    format: "tenth",
    note: "The set-point of the winter plan, °C.",
  },
  trackedMean: { title: "Mean", measures: "°C", covered: true, format: "tenth" },
  off: { title: "Off K", covered: true, format: "tenth", note: "Mean less set-point: above 0 is too warm." },
});
export const silent = log("gaps", DAYS, {
  from: { title: "Gap from", spilled: ready(`IFNA(${silences},"no gap")`, longest), format: "moment" },
  to: { title: "to", covered: true, format: "moment" },
  hours: { title: "Hours", covered: true, format: "tenth" },
});
const along = (row: number, limit: Cell): string => f`IF(OR(${days.date.at(row)}="",${limit}=""),"",${limit})`;
/** The limits along the days, for the picture. */
export const bounds = log("bounds", DAYS, {
  low: { title: "Not below", measures: "°C", each: ({ low: { row } }) => along(row, low), format: "tenth" },
  high: { title: "Not above", measures: "°C", each: ({ high: { row } }) => along(row, high), format: "tenth" },
});
