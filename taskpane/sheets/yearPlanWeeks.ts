import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { named, namedColumn, type Cell, type Column } from "./shared/names";
import { datesIn } from "./shared/winterPlan";
import { asked, WEEKS, whenReady } from "./yearPlanCare";
import { limits, months, NIGHTS_BY, year } from "./yearPlanInputs";

/** The weeks of the Year plan: the home's curve, and the set-points that follow from it. */

/** More than a year of meals, one every three days. */
const MEALS = 130;

const { start, warmSet, coldSet, dayLeast, dayMost, nightLeast, nightMost, nightsFrom, latitude, interval } = year;
const plan = datesIn(year);
const { dry, wet, cold } = limits;

/** A whole year of months is needed for a curve. */
const onCurve = (column: Column, formula: string): string =>
  f`IF(OR(COUNTBLANK(${column})>0,${start}=""),"",${formula})`;
const curve = (figures: unknown, week: Column): string => `VIV.ONDATE(${String(figures)},${week})`;
/** The months' rain as rain a day. The 0th day of a month is the last of the one before. */
const rainADay = `${months.rain}/DAY(DATE(YEAR(${start}),ROW(${months.rain})-ROW(${months.rain.at(1)})+2,0))`;

/** A curve held between two limits. */
const held = (figures: Column, least: Cell, most: Cell): string =>
  `IF(${figures}<${least},${least},IF(${figures}>${most},${most},${figures}))`;

export const mealsOn = log("mealsOn", MEALS, {
  date: {
    title: "Meals on",
    spilled: whenReady([interval], `VIV.MEALDATES(${start},${start}+363,${interval},${plan})`),
    format: "date",
  },
});
export const coldLine = log("coldLine", WEEKS, {
  celsius: {
    title: "Cold",
    unit: "°C",
    // A line by itself in an empty chart would say nothing.
    each: ({ celsius: { row } }) => once`IF(${named(`weeks.week[${row}]`)}="","",${cold})`,
    format: "tenth",
  },
});

/** The floor under the nights of the season, week by week. */
export const floor = log(
  "floor",
  WEEKS,
  {
    celsius: {
      title: "Nights from",
      unit: "°C",
      spilled: whenReady(
        [nightLeast],
        `IF(AND(${nightsFrom}="${NIGHTS_BY[1]}",COUNT(${months.ground})=12),IF(${curve(months.ground, namedColumn("weeks.week"))}>${nightLeast},${curve(months.ground, namedColumn("weeks.week"))},${nightLeast}),IF(${namedColumn("weeks.week")}="","",${nightLeast}))`,
      ),
      format: "tenth",
      note: "Your own limit by night, or the ground's low where that is higher and you follow it too.",
    },
  },
  { titleLines: 2 },
);

const { moisture, nights, share: lightShare } = asked;

export const weeks = log(
  "weeks",
  WEEKS,
  {
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
        whenReady(
          [high, warmSet, coldSet, dayLeast, dayMost],
          `IF(${stage}="Feeding",${held(high, dayLeast, dayMost)},VIV.SETPOINT(${week},${plan},${warmSet},${coldSet}))`,
        ),
      format: "tenth",
    },
    night: {
      title: "Night",
      unit: "°C",
      spilled: ({ low, day }) =>
        whenReady(
          [low, day, nightLeast, nightMost],
          `IF(${nights}="as the season",IF(${low}>${nightMost},${nightMost},IF(${low}>${floor.celsius},${low},IF(${floor.celsius}>${nightMost},${nightMost},${floor.celsius}))),${day})`,
        ),
      format: "tenth",
      note: "Warm until the gut is empty and for the first meals, in the plan its set-point, else the home's curve.",
    },
    light: {
      title: "Light",
      unit: "h",
      spilled: ({ week }) => whenReady([latitude], `VIV.DAYLENGTH(${latitude},${week})*${lightShare}`),
      format: "tenth",
      note: "Sunrise to sunset at the latitude given, less what the stage takes from it: none is left in the cold.",
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
      spilled: ({ rain }) =>
        whenReady(
          [rain],
          `IF(${moisture}<>"as the season",${moisture},IF(OR(${dry}="",${wet}=""),"",IF(${rain}<${dry},"dry",IF(${rain}>${wet},"wet","moist"))))`,
        ),
      rules: [{ when: (own) => `=${own}="moist, never wet"`, look: "cold" }],
    },
    meals: {
      title: "Meals",
      each: ({ week }) => once`COUNTIFS(${mealsOn.date},">="&${week},${mealsOn.date},"<"&${week}+7)`,
      format: "whole",
    },
  },
  { titleLines: 2 },
);
