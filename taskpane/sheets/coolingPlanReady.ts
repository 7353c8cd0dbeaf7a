import { dates, plan } from "./coolingPlanInputs";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { joinedLines } from "./shared/lines";
import { log } from "./shared/log";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { animals, day } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { blanksKept } from "./shared/words";

/** Whether this animal may be cooled at all, and how a winter is ended that has to end now. */

/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 8;

export const ready = form("ready", "May it be cooled?", {
  sex: {
    label: "Sex",
    value: animals.juniper.sex,
    takes: oneOf("female", "male", "unknown"),
    from: "animals.list.sex",
    by: "plan.label",
  },
  age: {
    label: "Age, months",
    value: 63,
    format: "whole",
    takes: whole([0, 600]),
    from: "animals.list.age",
    by: "plan.label",
  },
  mass: {
    label: "Mass now",
    unit: "g",
    value: animals.juniper.mass,
    format: "tenth",
    takes: number(MASS),
    from: "animals.list.mass",
    by: "plan.label",
    note: "Weigh it anew before you cool it: the figure on Today is as old as its Weighed on.",
  },
  before: {
    label: "Mass a year ago",
    unit: "g",
    value: 305,
    format: "tenth",
    takes: number(MASS),
    note: "Before the last winter, or in another good autumn.",
  },
  shedding: { label: "In shed", value: "no", takes: oneOf("yes", "no") },
  gravid: {
    label: "Gravid",
    value: "no",
    takes: oneOf("yes", "no"),
    note: "With eggs or young: she stays out of the cold.",
  },
  breathing: { label: "Breath", value: "clear", takes: oneOf("clear", "noisy") },
  vetSeen: { label: "Seen by a reptile vet", value: "yes", takes: oneOf("yes", "no") },
  parasites: { label: "Parasites", value: "none", takes: oneOf("none", "found") },
});
const seen = [
  ready.sex,
  ready.age,
  ready.mass,
  ready.before,
  ready.shedding,
  ready.gravid,
  ready.breathing,
  ready.vetSeen,
  ready.parasites,
];
export const readyLines = log(
  "readyLines",
  MOST_LINES,
  {
    level: {
      title: null,
      spilled: f`IF(AND(${seen.map((cell) => `${cell}=""`).join(",")}),"",VIV.WINTERREADY(${[...seen, dates.lastMeal, dates.coolingStarts].map((cell) => blanksKept(`${cell}`)).join(",")}))`,
    },
    told: { title: null, covered: true, wide: 9 },
  },
  { title: "Whether it may be cooled, line by line", titleLines: 0 },
);
export const readySaid = words(
  "readySaid",
  [9, 7],
  f`IF(${readyLines.level.at(1)}="","Nothing is filled in: whether it may be cooled was not looked at.",${joinedLines(MOST_LINES, readyLines)})`,
  {
    title: "Stop: do not cool. Care: not looked at, or know why",
    rules: LEVELS,
  },
);

/** A degree a row and one before food: from 0 to 40 °C, also where the vet wants it slower. */
const STEPS = 84;
export const ending = form("ending", "If this winter has to end now: call your reptile vet first", {
  from: { label: "Warming begins on", value: day("2027-01-11"), format: "date", takes: date },
  temperature: { label: "Box on that day", unit: "°C", value: 8, format: "tenth", takes: number([0, 40]) },
  pace: {
    label: "Rise a day",
    unit: "K",
    value: 0.5,
    role: "setting",
    format: "tenth",
    takes: number([0.25, 5]),
    note: "Practice; faster only if your vet says so.",
  },
});
export const early = log("early", STEPS, {
  date: {
    title: "Date",
    spilled: once`IF(${ending.temperature}>${plan.warmSet},"",VIV.ENDEARLY(${ending.from},${ending.temperature},${plan.warmSet},${ending.pace},${plan.settle}))`,
    format: "date",
  },
  setPoint: { title: "°C", covered: true, format: "tenth" },
  words: { title: "What to do: no food until it is warm and has settled", covered: true, wide: 8 },
});
