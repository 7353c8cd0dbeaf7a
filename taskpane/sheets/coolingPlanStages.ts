import { FIRST_MEAL_DAYS } from "../../functions/rules/limits";
import { care, type Phase } from "../../functions/rules/stages";
import { dates, plan, WEEK_ROWS } from "./coolingPlanInputs";
import { once } from "./shared/formula";
import { log } from "./shared/log";
import type { Column } from "./shared/names";

/** What each stage asks for, in the rules' words, and the weeks in which it does. */

const { lastMeal, intoTheCold, warmingStarts, firstMeal } = dates;
const PHASES = [
  "Last meal",
  "Clearing",
  "Cooling",
  "Cold",
  "Warming",
  "Settling",
  "First meals",
] as const satisfies readonly Phase[];

export const stages = log(
  "stages",
  PHASES.length,
  {
    stage: { title: "Stage", label: PHASES },
    toDo: {
      title: "What to do (common practice, no source)",
      wide: 5,
      joined: true,
      label: PHASES.map((one) => care[one].toDo),
    },
    never: { title: "What never to do", skip: 1, wide: 3, joined: true, label: PHASES.map((one) => care[one].never) },
  },
  { rowLines: 3 },
);

const named = (phase: (typeof PHASES)[number]): unknown => stages.toDo.at(PHASES.indexOf(phase) + 1);
/** The words of the day's stage, from the table; the days of the last and of the first meals have their own. */
const toDo = (date: Column, stage: Column): string =>
  `IF(${date}>=${firstMeal},"Food: ${care["First meals"].food}. "&${String(named("First meals"))},IF(${date}=${lastMeal},"Food: ${care["Last meal"].food}. "&${String(named("Last meal"))},"No food. "&` +
  `${(["Clearing", "Cooling", "Cold", "Warming", "Settling"] as const).reduceRight((rest, name) => `IF(${stage}="${name}",${String(named(name))},${rest})`, '""')}))`;

export const weeks = log(
  "weeks",
  WEEK_ROWS,
  {
    date: {
      title: "Date",
      // No step hangs on the one before it: a long chain is slow to follow.
      each: ({ date: { row } }) =>
        once`IF(${lastMeal}+${7 * (row - 1)}<${firstMeal}+${FIRST_MEAL_DAYS},${lastMeal}+${7 * (row - 1)},"")`,
      format: "date",
      note: "A step a week from the last meal on. The exact days of each change stand in the six dates above.",
      rules: [
        {
          when: (own) => `=AND(ISNUMBER(${own}),${own}>=${intoTheCold},${own}<${warmingStarts})`,
          look: "cold",
          over: 3,
        },
      ],
    },
    stage: { title: "Stage", spilled: ({ date }) => once`IF(${date}="","",VIV.STAGE(${date},${dates.date}))` },
    setPoint: {
      title: "°C",
      spilled: ({ date }) =>
        once`IF(${date}="","",VIV.SETPOINT(${date},${dates.date},${plan.warmSet},${plan.coldSet}))`,
      format: "tenth",
    },
    toDo: {
      title: "What to do",
      wide: 7,
      spilled: ({ date, stage }) => once`IF(${date}="","",${toDo(date, stage)})`,
    },
    food: {
      title: "Food",
      skip: 1,
      spilled: ({ date }) => once`IF(${date}="","",VIV.STAGECARE(${date},${dates.date}))`,
    },
    light: { title: "Light", covered: true },
    moisture: { title: "Moisture", covered: true },
    nights: { title: "Nights", covered: true },
    soaking: { title: "Soaking", covered: true },
    share: { title: "Of day length", covered: true, format: "percent" },
  },
  { title: "Week by week, down and up again" },
);
