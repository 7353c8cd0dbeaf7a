import { EXAMPLE } from "./shared/assemble";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { Column, named, type Cell } from "./shared/names";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { words } from "./shared/running";
import { STATION_TERMS } from "./shared/scenario";
import { datesIn } from "./shared/winterPlan";
import { isoText, rounded } from "./shared/words";
import { limits, months, year } from "./yearPlanInputs";

const WEEKS = 52;
/** More than a year of meals, one every three days. */
const MEALS = 130;

const { start, warmSet, coldSet, dayLeast, dayMost, nightLeast, nightMost, latitude, interval } = year;
const plan = datesIn(year);

const { dry, wet, cold } = limits;
const explained = words(
  "explained",
  [2, 10],
  "Day and night follow the home's curve within your limits, in the winter plan never above its set-point. Moisture follows the rain there; bedding is never wet in the cold.",
);

const whenReady = (more: readonly (Cell | Column)[], formula: string): string => {
  const blank = [start, ...more].map((one) => `${one instanceof Column ? one.at(1) : one}=""`);
  return f`IF(OR(COUNTBLANK(${plan})>0,${blank.join(",")}),"",${formula})`;
};
/** A whole year of months is needed for a curve. */
const onCurve = (column: Column, formula: string): string =>
  f`IF(OR(COUNTBLANK(${column})>0,${start}=""),"",${formula})`;
const curve = (figures: unknown, week: Column): string => `VIV.ONDATE(${String(figures)},${week})`;
/** The months' rain as rain a day. The 0th day of a month is the last of the one before. */
const rainADay = `${months.rain}/DAY(DATE(YEAR(${start}),ROW(${months.rain})-ROW(${months.rain.at(1)})+2,0))`;

/** A curve held between two limits, and in the winter plan no warmer than its set-point. */
const setPoint = (week: Column, stage: Column, figures: Column, least: Cell, most: Cell): string => {
  const held = `IF(${figures}<${least},${least},IF(${figures}>${most},${most},${figures}))`;
  const planned = `VIV.SETPOINT(${week},${plan},${warmSet},${coldSet})`;
  const inPlan = ["Cooling", "Cold", "Warming"].map((name) => `(${stage}="${name}")`).join("+");
  return `IF(${inPlan},IF(${planned}<${held},${planned},${held}),${held})`;
};

const mealsOn = log("mealsOn", MEALS, {
  date: {
    title: "Meals on",
    spilled: whenReady([interval], `VIV.MEALDATES(${start},${start}+363,${interval},${plan})`),
    format: "date",
  },
});
const coldLine = log("coldLine", WEEKS, {
  celsius: {
    title: "Cold",
    unit: "°C",
    // A line by itself in an empty chart would say nothing.
    each: ({ celsius: { row } }) => once`IF(${named(`weeks.week[${row}]`)}="","",${cold})`,
    format: "tenth",
  },
});

const weeks = log("weeks", WEEKS, {
  week: {
    title: "Week of",
    each: ({ week }) => (week.isFirst ? once`${start}` : once`${week.before}+7`),
    format: "date",
  },
  stage: { title: "Stage", spilled: ({ week }) => whenReady([], `VIV.STAGE(${week},${plan})`) },
  high: {
    title: "High",
    unit: "°C",
    spilled: ({ week }) => onCurve(months.high, curve(months.high, week)),
    format: "tenth",
    note: "Of the home's curve on that day.",
  },
  low: {
    title: "Low",
    unit: "°C",
    spilled: ({ week }) => onCurve(months.low, curve(months.low, week)),
    format: "tenth",
    note: "Of the home's curve on that day.",
  },
  day: {
    title: "Day",
    unit: "°C",
    spilled: ({ week, stage, high }) =>
      whenReady([high, warmSet, coldSet, dayLeast, dayMost], setPoint(week, stage, high, dayLeast, dayMost)),
    format: "tenth",
  },
  night: {
    title: "Night",
    unit: "°C",
    spilled: ({ week, stage, low }) =>
      whenReady([low, warmSet, coldSet, nightLeast, nightMost], setPoint(week, stage, low, nightLeast, nightMost)),
    format: "tenth",
  },
  light: {
    title: "Light",
    unit: "h",
    spilled: ({ week }) => f`IF(OR(${start}="",${latitude}=""),"",VIV.DAYLENGTH(${latitude},${week}))`,
    format: "tenth",
    note: "Sunrise to sunset at the latitude given.",
  },
  rain: {
    title: "Rain",
    unit: "mm",
    // Negative for a day or two in a desert's curve: not below 0.
    spilled: ({ week }) => onCurve(months.rain, `IF(${curve(rainADay, week)}<0,0,7*${curve(rainADay, week)})`),
    format: "whole",
    note: "Of the home's curve, mm a week.",
  },
  moisture: {
    title: "Moisture",
    spilled: ({ rain }) => once`IF(${rain}<${dry},"dry",IF(${rain}>${wet},"wet","moist"))`,
  },
  meals: {
    title: "Meals",
    each: ({ week }) => once`COUNTIFS(${mealsOn.date},">="&${week},${mealsOn.date},"<"&${week}+7)`,
    format: "whole",
  },
});

const { day, night, meals } = weeks;
const summary = words(
  "summary",
  [2, 10],
  f`IF(OR(${day.at(1)}="",${night.at(1)}=""),"","By day "&${rounded(`MIN(${day})`)}&" to "&${rounded(`MAX(${day})`)}&" °C, by night "&${rounded(`MIN(${night})`)}&" to "&${rounded(`MAX(${night})`)}&" °C. Cold from "&${isoText(`${year.intoTheCold}`)}&" to "&${isoText(`${year.warmingStarts}`)}&", no food from "&${isoText(`${year.lastMeal}`)}&" to "&${isoText(`${year.firstMeal}`)}&IF(${mealsOn.date.at(1)}="","",". "&SUM(${meals})&" meals in the year")&".")`,
);
const chart = picture([17, 10], {
  title: "The year: day and night set-points, stages and meals",
  along: `${weeks.week}`,
  axis: "°C",
  series: [
    { draw: "band", name: "Set-points, night to day", low: `${night}`, high: `${day}` },
    { draw: "threshold", name: "Cold", values: `${coldLine.celsius}` },
    { draw: "stages", name: "Stage", values: `${weeks.stage}` },
    { draw: "ticks", name: "Meals", values: `${meals}` },
  ],
  summary: `${summary.said}`,
});

export const yearPlan = page(
  {
    key: "yearPlan",
    name: "Year plan",
    sentence: "Fifty-two weeks: set-points, stage, light, moisture and meals.",
    cautions: ["coldKills", "noFoodInTheCold", "smoothCurve", "noVet"],
    sources: ["histospline", "meeus", "practice"],
    widths: [11, 9, 7, 7, 7, 7.5, 7, 7, 8, 11, 1, 13, 12, 1, 11, 9],
    cautionColumns: ["L", "M"],
    example: `${EXAMPLE} invented limits and plan; the station is real, terms at the foot.`,
    foot: [STATION_TERMS],
  },
  gap(1),
  { A: [months, gap(2), limits, explained], F: [year] },
  chart,
  summary,
  gap(1),
  { A: [weeks], O: [mealsOn], P: [coldLine] },
);
