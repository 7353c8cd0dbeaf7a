import { cautions } from "../../functions/cautions";
import { COLD_LEAST, WARM_MOST } from "../../functions/rules/limits";
import { EXAMPLE } from "./shared/assemble";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { named, namedColumn, type Cell, type Column } from "./shared/names";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { saysSomething } from "./shared/rules";
import { words } from "./shared/running";
import { STATION_TERMS } from "./shared/scenario";
import { figure } from "./shared/systems";
import { datesIn, hasPlan } from "./shared/winterPlan";
import { isoText, rounded } from "./shared/words";
import { asked, food, WEEKS, whenReady } from "./yearPlanCare";
import { limits, months, NIGHTS_BY, year } from "./yearPlanInputs";

/** More than a year of meals, one every three days. */
const MEALS = 130;

const { start, warmSet, coldSet, dayLeast, dayMost, nightLeast, nightMost, nightsFrom, latitude, interval } = year;
const plan = datesIn(year);

const { dry, wet, cold } = limits;
const explained = words(
  "explained",
  [2, 10],
  "While it feeds, day and night follow the home's curve within your limits, and moisture the rain there. From the last meal to the first the winter plan has its own set-points, light and moisture. A warm night is as warm as the day.",
);

const nightWords = words(
  "nightWords",
  [3, 10],
  f`IF(${nightsFrom}="${NIGHTS_BY[1]}",IF(COUNT(${months.ground})<12,"Still needed for nights by the ground: its twelve lows. Until then they keep to your own limits alone.","Nights follow the ground's lows too, never past your own limits. ${cautions.bareGround}"),"Nights keep to your own limits alone.")`,
);

/** A whole year of months is needed for a curve. */
const onCurve = (column: Column, formula: string): string =>
  f`IF(OR(COUNTBLANK(${column})>0,${start}=""),"",${formula})`;
const curve = (figures: unknown, week: Column): string => `VIV.ONDATE(${String(figures)},${week})`;
/** The months' rain as rain a day. The 0th day of a month is the last of the one before. */
const rainADay = `${months.rain}/DAY(DATE(YEAR(${start}),ROW(${months.rain})-ROW(${months.rain.at(1)})+2,0))`;

/** A curve held between two limits. */
const held = (figures: Column, least: Cell, most: Cell): string =>
  `IF(${figures}<${least},${least},IF(${figures}>${most},${most},${figures}))`;

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

/** The floor under the nights of the season, week by week. */
const floor = log(
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

const weeks = log(
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

const { day, night, meals } = weeks;
/** What of the keeper's own limits cannot be meant, or can hurt: the set-points follow them all the same. */
const amiss = [
  [`${dayLeast}>${dayMost}`, "By day at least is above by day at most: the least was taken."],
  [`${nightLeast}>${nightMost}`, "By night at least is above by night at most: the most was taken."],
  [
    `SUMPRODUCT(ISNUMBER(${night})*ISNUMBER(${day})*(${night}>${day}))>0`,
    "In some weeks the night is warmer than the day.",
  ],
  [
    `MAX(${day},${night})>${figure(WARM_MOST, "°C")}`,
    `Above ${WARM_MOST} °C: a montane snake with no cooler place can die of heat.`,
  ],
  [
    `AND(COUNT(${night})>0,MIN(${day},${night})<${figure(COLD_LEAST, "°C")})`,
    `Below ${COLD_LEAST} °C: there is little room for a fault of the thermostat.`,
  ],
].map(([isAmiss = "", said = ""]) => `IF(${isAmiss},"${said} ","")`);
const warning = words(
  "warning",
  [3, 10],
  f`IF(OR(${[start, dayLeast, dayMost, nightLeast, nightMost].map((one) => `${one}=""`).join(",")}),"",${amiss.join("&")})`,
  { rules: [saysSomething("stop")] },
);
const summary = words(
  "summary",
  [2, 10],
  f`IF(${start}="","",IF(NOT(${hasPlan(plan)}),"Not all six dates of the winter plan are given, or some cannot be read: without them no set-point, light, moisture or food is told.",IF(OR(${day.at(1)}="",${night.at(1)}=""),"","By day "&${rounded(`MIN(${day})`)}&" to "&${rounded(`MAX(${day})`)}&" °C, by night "&${rounded(`MIN(${night})`)}&" to "&${rounded(`MAX(${night})`)}&" °C. Cold from "&${isoText(`${year.intoTheCold}`)}&" to "&${isoText(`${year.warmingStarts}`)}&", no food from "&${isoText(`${year.lastMeal}`)}&" to "&${isoText(`${year.firstMeal}`)}&IF(${mealsOn.date.at(1)}="","",". "&SUM(${meals})&" meals in the year")&".")))`,
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
  cautions: ["coldKills", "noFoodInTheCold"],
});

export const yearPlan = page(
  {
    key: "yearPlan",
    name: "Year plan",
    sentence: "Fifty-two weeks: set-points, stage, light, moisture and meals.",
    cautions: ["coldKills", "noFoodInTheCold", "smoothCurve", "noVet"],
    sources: ["histospline", "meeus", "heatEquation", "practice"],
    widths: [11, 8.5, 6.2, 7, 6.2, 7.3, 6.2, 6.2, 14.2, 11, 0.6, 12.4, 11.7, 4, 11, 9, 9, 1, 29, 12, 16, 14, 25, 9],
    inView: [weeks, food],
    cautionColumns: ["L", "M"],
    years: [
      {
        title: "The year by the plan",
        along: `${weeks.week}`,
        lines: [
          { name: "set-point by day", likely: `${day}` },
          { name: "set-point by night", likely: `${night}` },
        ],
        cold: `${cold}`,
        plan: plan,
        cautions: ["coldKills", "noFoodInTheCold"],
      },
    ],
    example: `${EXAMPLE} invented limits and plan; the station is real, terms at the foot.`,
    foot: [STATION_TERMS],
  },
  gap(1),
  { A: [months, gap(2), limits, explained, nightWords, warning], F: [year] },
  chart,
  summary,
  gap(1),
  { A: [weeks], L: [food], O: [mealsOn], P: [coldLine], Q: [floor], S: [asked] },
);
