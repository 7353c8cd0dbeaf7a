import { BROUGHT_UP_WAIT } from "../../functions/rules/limits";
import { form } from "./shared/form";
import { f } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { isOutcome, anyOutcome } from "./shared/outcomes";
import { meals } from "./feedingLogExample";
import { day } from "./shared/scenario";
import { date, MASS, number, whole } from "./shared/takes";
import { winterPlans } from "./shared/winterPlans";

/** What Today goes by: the days between meals and weighings, the winter plans, and the meals of the Feeding log. */

const days = (label: string, value: number, most: number) =>
  ({ label, unit: "days", value, role: "setting", format: "whole", takes: whole([1, most]) }) as const;

export const settings = form(
  "settings",
  "How often (practice, yours to change)",
  {
    youngUntil: {
      label: "Young below",
      unit: "months",
      value: 18,
      role: "setting",
      format: "whole",
      takes: whole([1, 120]),
    },
    youngEvery: days("Young fed every", 5, 60),
    adultEvery: days("Adults fed every", 7, 60),
    weighEvery: days("Weighed every", 28, 366),
    wait: {
      ...days("Brought up: rest", BROUGHT_UP_WAIT, 120),
      from: "feedingLog.limits.wait",
      note: "No food for so long after a meal that was brought up. From the sheet Feeding log.",
    },
  },
  { across: 2 },
);

export const plans = winterPlans(1, [1, 1, 1, 1]);

/** The rows of the Feeding log, linked or pasted: last meals and last body masses are read from them by name. */
export const fed = log(
  "fed",
  LOG_ROWS,
  {
    animal: {
      title: "Animal",
      input: meals.map(({ animal }) => animal),
      from: "feedingLog.log.animal",
      note: "From the sheet Feeding log. The cells may point there: type = and click its first row.",
    },
    date: {
      title: "Date",
      input: meals.map(({ iso }) => day(iso)),
      from: "feedingLog.log.date",
      format: "date",
      takes: date,
    },
    outcome: {
      title: "Outcome",
      input: meals.map(({ outcome }) => outcome),
      from: "feedingLog.log.outcome",
      takes: anyOutcome,
    },
    body: {
      title: "Body, g",
      input: meals.map(({ body }) => body),
      from: "feedingLog.log.body",
      format: "tenth",
      takes: number(MASS),
    },
    taken: {
      title: "Taken",
      each: ({ outcome }) => f`IF(${outcome}="","",IF(${isOutcome(`${outcome}`, "taken")},"taken",""))`,
    },
    broughtUp: {
      title: "Brought up",
      each: ({ outcome }) => f`IF(${outcome}="","",IF(${isOutcome(`${outcome}`, "broughtUp")},"brought up",""))`,
    },
  },
  { title: "Meals, from the Feeding log: last meals and weighings are read from here by name", grows: true },
);
