import { PLAN_ROWS } from "../../functions/shared/plan";
import { checks, stageWords } from "./coolingPlanPractice";
import { checkList } from "./shared/checkList";
import { boxFields, setPointFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import type { Column } from "./shared/names";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { animals, winter } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { PLAN_DATES } from "./shared/winterPlan";
import { isoText } from "./shared/words";

/** The longest legs that the plan takes; the table of weeks holds them all together. */
const MOST_DAYS = { clear: 120, cool: 150, cold: 200, warm: 150, settle: 60 } as const;
const WEEK_ROWS = Math.ceil(Object.values(MOST_DAYS).reduce((sum, days) => sum + days, 0) / 7) + 1;
/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 12;

const backwards = "backwards";
const days = (stage: keyof typeof MOST_DAYS, least: number) =>
  ({
    value: winter[stage],
    role: "setting",
    format: "whole",
    takes: whole([least, MOST_DAYS[stage]], "days"),
  }) as const;

const plan = form("plan", "The plan", {
  label: { label: "Animal", value: animals.juniper.label },
  way: {
    label: "Planned",
    value: "forwards",
    takes: oneOf("forwards", backwards),
    note: "Forwards from the last meal, or backwards from the first meal after the cold.",
  },
  when: {
    label: "Day of last or first meal",
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
});
const { way, when, clear, cool, cold, warm, settle, warmSet, coldSet } = plan;

const legs = `${when},${clear},${cool},${cold},${warm},${settle}`;
const dates = log(
  "dates",
  PLAN_ROWS.length,
  {
    words: {
      title: "The six dates",
      spilled: f`IF(OR(${way}="",${legs.replaceAll(",", '="",')}=""),"",IF(${way}="${backwards}",VIV.RAMPDATESTO(${legs}),VIV.RAMPDATES(${legs})))`,
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
const { lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal } = dates;

const air = form(
  "air",
  "Air in a shut box",
  {
    mass: {
      label: "Mass of the animal",
      unit: "g",
      value: animals.juniper.mass,
      format: "whole",
      takes: number(MASS),
      from: "animals.list.mass",
      by: "plan.label",
    },
    ...boxFields(),
  },
  { across: 2 },
);
const hoursUntil = (part: number): string =>
  once`INDEX(VIV.BOXAIR(${air.mass},${coldSet},${air.litres},${air.elevation}),1,${part})`;
const hours = log("hours", 1, {
  where: { title: "Hours until a box shut tight must be aired", label: ["In the cold"], wide: 3 },
  soonest: { title: "Soonest", each: () => hoursUntil(1), format: "whole" },
  likely: { title: "Likely", each: () => hoursUntil(2), format: "whole" },
  latest: { title: "Latest", each: () => hoursUntil(3), format: "whole" },
});

/** Whole sentences, which no line of a table would hold: worked out at the foot, and shown together at the top. */
const lines = log(
  "lines",
  MOST_LINES,
  {
    level: { title: null, spilled: once`VIV.RAMPCHECK(${dates.date},${warmSet},${coldSet})` },
    told: { title: null, covered: true, wide: 9 },
  },
  { title: "What stands out, line by line", titleLines: 0 },
);
/** Each line by itself: an IF over the whole column is one for every row only where formulas are arrays by nature. */
const oneByOne = Array.from({ length: MOST_LINES }, (_, i) => [lines.level.at(i + 1), lines.told.at(i + 1)] as const)
  .map(([level, told]) => `IF(${level}="","",${level}&": "&${told})`)
  .join(",");
const check = words("check", [7, 10], f`IF(OR(${lines.level.at(1)}=""),"",TEXTJOIN(CHAR(10),TRUE,${oneByOne}))`, {
  title: "What stands out in this plan (meals in the fast: see the Feeding log)",
  rules: LEVELS,
});

const summary = words(
  "summary",
  [2, 5],
  f`IF(OR(${lastMeal}="",${dates.setPoint.at(1)}=""),"","From "&${warmSet}&" °C on "&${isoText(`${coolingStarts}`)}&" down to "&${coldSet}&" °C on "&${isoText(`${intoTheCold}`)}&", cold until "&${isoText(`${warmingStarts}`)}&", "&${warmSet}&" °C again on "&${isoText(`${warmAgain}`)}&". No food from "&${isoText(`${lastMeal}`)}&" to "&${isoText(`${firstMeal}`)}&".")`,
);
const chart = picture([16, 5], {
  title: "Set-point through the winter",
  along: `${dates.date}`,
  axis: "°C",
  series: [{ draw: "line", name: "Set-point", values: `${dates.setPoint}` }],
  summary: `${summary.said}`,
});
const checked = checkList("checks", checks, { title: "Before the first cooling day", wide: [2, 3], joined: true });

const stages = log(
  "stages",
  stageWords.length,
  {
    stage: { title: null, label: stageWords.map(([stage]) => stage) },
    toDo: { title: null, skip: 2, wide: 7, joined: true, setting: stageWords.map(([, toDo]) => toDo) },
  },
  { title: "What to do in each stage (practice, yours to change)", titleLines: 0 },
);

/** The words of the day's stage, from the table below; the days of the two meals have their own. */
const toDo = (date: Column, stage: Column): string =>
  `IF(${date}>=${firstMeal},"First meal, half the usual.",IF(${date}=${lastMeal},"Last meal, a small one. No food after it.",` +
  `${stageWords.reduceRight((rest, [name], i) => `IF(${stage}="${name}",${stages.toDo.at(i + 1)},${rest})`, '""')}))`;

const weeks = log(
  "weeks",
  WEEK_ROWS,
  {
    date: {
      title: "Date",
      // No step hangs on the one before it: a long chain is slow to follow.
      each: ({ date: { row } }) =>
        once`IF(${lastMeal}+${7 * (row - 1)}<${firstMeal}+7,${lastMeal}+${7 * (row - 1)},"")`,
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
      spilled: ({ date }) => once`IF(${date}="","",VIV.SETPOINT(${date},${dates.date},${warmSet},${coldSet}))`,
      format: "tenth",
    },
    toDo: {
      title: "What to do",
      wide: 7,
      spilled: ({ date, stage }) => once`IF(${date}="","",${toDo(date, stage)})`,
    },
  },
  { title: "Week by week, down and up again" },
);

export const coolingPlan = page(
  {
    key: "coolingPlan",
    name: "Cooling plan",
    sentence: "From the last meal into the cold and back to the first meal, week by week.",
    cautions: ["coldKills", "noFoodInTheCold", "openTheBox", "noVet"],
    sources: ["practice", "bonaGalloLicht", "andrewsPough", "costanzo", "stubblefield"],
    widths: [24, 11.5, 7, 16, 11.5, 8, 1, 11, 11, 10.8],
    cautionColumns: ["H", "J"],
  },
  { A: [plan], D: [dates, air] },
  hours,
  check,
  { A: [chart, summary], F: [checked] },
  gap(1),
  weeks,
  gap(1),
  stages,
  gap(1),
  lines,
);
