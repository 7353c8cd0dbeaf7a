import { cautions } from "../../functions/cautions";
import { COLD_LEAST, WARM_MOST } from "../../functions/rules/limits";
import { EXAMPLE } from "./shared/assemble";
import { f } from "./shared/formula";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { saysSomething } from "./shared/rules";
import { words } from "./shared/running";
import { STATION_TERMS } from "./shared/scenario";
import { figure } from "./shared/systems";
import { datesIn, hasPlan } from "./shared/winterPlan";
import { isoText, rounded } from "./shared/words";
import { asked, food, WEEKS } from "./yearPlanCare";
import { limits, months, NIGHTS_BY, year } from "./yearPlanInputs";
import { coldLine, floor, mealsOn, weeks } from "./yearPlanWeeks";

const { start, dayLeast, dayMost, nightLeast, nightMost, nightsFrom } = year;
const plan = datesIn(year);

const { cold } = limits;
const explained = words(
  "explained",
  [2, 10],
  "While it feeds, day and night follow the home's curve within your limits, and moisture the rain there. From the last meal to the first the winter plan has its own set-points, light and moisture. A warm night is as warm as the day.",
);

/** Beside the limits, under the cautions: what is silent as a rule leaves no room free above the picture. */
const nightWords = words(
  "nightWords",
  [13, 2],
  f`IF(${nightsFrom}="${NIGHTS_BY[1]}",IF(COUNT(${months.ground})<12,"Still needed for nights by the ground: its twelve lows. Until then they keep to your own limits alone.","Nights follow the ground's lows too, never past your own limits. ${cautions.bareGround}"),"Nights keep to your own limits alone.")`,
);

const { day, night, meals } = weeks;
const { lastMeal } = year;
const lastWeek = `${start}+${7 * (WEEKS - 1)}`;
/** A plan is of one winter; the weeks may hold another, or another alone. */
const nextWinter = `DATE(YEAR(${lastMeal})+1,MONTH(${lastMeal}),DAY(${lastMeal}))`;
const elsewhere = [
  [`${lastMeal}>${lastWeek}`, '"The winter plan begins after these weeks: a winter before it is not shown. "'],
  [
    `${nextWinter}<=${lastWeek}`,
    `"The winter plan is of one winter: from about "&${isoText(nextWinter)}&" on the next is not shown. Make its plan before. "`,
  ],
].reduceRight((otherwise, [when = "", said = ""]) => `IF(${when},${said},${otherwise})`, '""');
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
  [16, 2],
  f`IF(OR(${[start, dayLeast, dayMost, nightLeast, nightMost].map((one) => `${one}=""`).join(",")}),"",${amiss.join("&")}&IF(${hasPlan(plan)},${elsewhere},""))`,
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
    printTo: "M",
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
  { A: [months, gap(2), limits, explained, chart, summary], F: [year], L: [warning, nightWords] },
  gap(1),
  { A: [weeks], L: [food], O: [mealsOn], P: [coldLine], Q: [floor], S: [asked] },
);
