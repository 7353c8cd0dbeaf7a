import { PLAN_ROWS } from "../../functions/shared/plan";
import { setPointFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { animals, winter } from "./shared/scenario";
import { date, number, oneOf, whole } from "./shared/takes";
import { PLAN_DATES } from "./shared/winterPlan";

/** What the Cooling plan is made from, and the six dates that follow. */

/** The longest legs that the plan takes; the table of weeks holds them all together. */
const MOST_DAYS = { clear: 120, cool: 150, cold: 200, warm: 150, settle: 60 } as const;
export const WEEK_ROWS = Math.ceil(Object.values(MOST_DAYS).reduce((sum, days) => sum + days, 0) / 7) + 1;
const [forwards, backwards] = ["forwards", "backwards"];
const days = (stage: keyof typeof MOST_DAYS, least: number) =>
  ({
    value: winter[stage],
    role: "setting",
    format: "whole",
    takes: whole([least, MOST_DAYS[stage]], "days"),
  }) as const;

export const plan = form("plan", "The plan", {
  label: { label: "Animal", value: animals.juniper.label },
  way: {
    label: "Planned",
    needed: true,
    value: forwards,
    takes: oneOf(forwards, backwards),
    note: "Forwards from the last meal, or backwards from the first meal after the cold.",
  },
  when: {
    label: "Day of last or first meal",
    needed: "Day of meal",
    value: winter.lastMeal,
    format: "date",
    takes: date,
    note: "Forwards: the last meal. Backwards: the first.",
  },
  clear: { label: "Days to clear the gut", ...days("clear", 0) },
  cool: { label: "Days to cool down", ...days("cool", 1) },
  cold: { label: "Days in the cold", ...days("cold", 0) },
  warm: { label: "Days to warm up", ...days("warm", 1) },
  settle: { label: "Days to settle", ...days("settle", 0) },
  ...setPointFields(),
  tooCold: {
    label: "Too cold for it below",
    needed: "Too cold",
    unit: "°C",
    value: 4,
    format: "tenth",
    takes: number([0, 30]),
    note: "This animal's own limit at any time; with your vet.",
  },
  tooWarm: {
    label: "Too warm for it above",
    needed: "Too warm",
    unit: "°C",
    value: 28,
    format: "tenth",
    takes: number([0, 50]),
    note: "This animal's own limit at any time; with your vet.",
  },
});
const { way, when, clear, cool, cold, warm, settle, warmSet, coldSet } = plan;

const legs = `${when},${clear},${cool},${cold},${warm},${settle}`;
export const dates = log(
  "dates",
  PLAN_ROWS.length,
  {
    words: {
      title: "The six dates",
      spilled: f`IF(OR(${way}="",${legs.replaceAll(",", '="",')}=""),"",IF(${way}="${backwards}",VIV.RAMPDATESTO(${legs}),IF(${way}="${forwards}",VIV.RAMPDATES(${legs}),"")))`,
    },
    date: { title: "Date", covered: true, format: "date" },
    setPoint: {
      title: "°C",
      spilled: ({ date }) => once`VIV.SETPOINT(${date},${date},${warmSet},${coldSet})`,
      format: "tenth",
    },
  },
  { named: { column: "date", rows: PLAN_DATES } },
);
