import { air, condenses, hours, NEEDS_VENTS } from "./coolingPlanAir";
import { dates, plan } from "./coolingPlanInputs";
import { checks } from "./coolingPlanPractice";
import { early, ending, ready, readyLines, readySaid } from "./coolingPlanReady";
import { stages, weeks } from "./coolingPlanStages";
import { checkList } from "./shared/checkList";
import { f } from "./shared/formula";
import { joinedLines } from "./shared/lines";
import { log } from "./shared/log";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { blanksKept, isoText } from "./shared/words";

/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 12;
const { way, when, warmSet, coldSet, tooCold, tooWarm } = plan;
const { lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal } = dates;

const own = `${blanksKept(`${tooCold}`)},${blanksKept(`${tooWarm}`)}`;
/** Whole sentences, which no line of a table would hold: worked out at the foot, and shown together at the top. */
const lines = log(
  "lines",
  MOST_LINES,
  {
    level: {
      title: null,
      spilled: f`IF(OR(${dates.date.at(1)}="",${warmSet}="",${coldSet}=""),"",VIV.RAMPCHECK(${dates.date},${warmSet},${coldSet},"","",${own}))`,
    },
    told: { title: null, covered: true, wide: 9 },
  },
  { title: "What stands out, line by line", titleLines: 0 },
);
/** Where there are no dates there is nothing to judge, which must not pass for nothing that stands out. */
const undated = `IF(ISERROR(${dates.words.at(1)}),"stop: The six dates cannot be worked out: the error in their first line says why.",IF(AND(${way}<>"",${when}<>"",${dates.words.at(1)}=""),"stop: There are no dates: Planned is neither forwards nor backwards, or a number of days is blank.",""))`;
/** Of the box the line below speaks, which may say stop: nothing may seem to be said of it before. */
const check = words(
  "check",
  [9, 6],
  f`IF(${dates.date.at(1)}="",${undated},IF(OR(${lines.level.at(1)}=""),"",SUBSTITUTE(${joinedLines(MOST_LINES, lines)},"Nothing stands out.","Nothing stands out in its dates and set-points.")))`,
  { title: "What stands out in its dates and set-points (meals: see the Feeding log)", rules: LEVELS },
);
/** The dates and set-points may be right, and the box still be too small for its air. */
const stifles = words(
  "stifles",
  [1, 6],
  f`IF(COUNTIF(${hours.words},"${NEEDS_VENTS}")=0,"","stop: Shut, the box below would have to be opened more than once a day: it needs vents.")`,
  { rules: LEVELS },
);

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
  cautions: ["coldKills", "noFoodInTheCold"],
});
const checked = checkList("checks", checks, { title: "Before the first cooling day", wide: [2, 3], joined: true });

export const coolingPlan = page(
  {
    key: "coolingPlan",
    name: "Cooling plan",
    sentence: "Whether it may be cooled, and from the last meal into the cold and back to the first, week by week.",
    cautions: ["coldKills", "noFoodInTheCold", "openTheBox", "noVet"],
    sources: ["practice", "bonaGalloLicht", "andrewsPough", "costanzo", "stubblefield", "wmo8", "ownLimit"],
    widths: [24, 11.5, 7, 16, 11.5, 8, 1, 11, 11, 10.8, 1, 29, 12, 16, 14, 25, 9],
    cautionColumns: ["H", "J"],
    printTo: "J",
    years: [
      {
        title: "The winter by the plan",
        along: `${weeks.date}`,
        lines: [{ name: "set-point", likely: `${weeks.setPoint}` }],
        plan: `${dates.date}`,
        cautions: ["coldKills", "noFoodInTheCold"],
      },
    ],
  },
  check,
  stifles,
  gap(1),
  { A: [plan], D: [dates, gap(1), air] },
  gap(1),
  hours,
  condenses,
  gap(1),
  { A: [ready], D: [readySaid] },
  gap(1),
  { A: [chart, summary], F: [checked] },
  gap(1),
  stages,
  gap(1),
  weeks,
  gap(1),
  ending,
  early,
  gap(1),
  lines,
  gap(1),
  readyLines,
);
