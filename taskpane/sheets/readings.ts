import { bounds, days, silent } from "./readingsDays";
import { limits, pasted, plan, ROOM, setPoints } from "./readingsInputs";
import { outside, read } from "./readingsRead";
import { EXAMPLE } from "./shared/assemble";
import { f } from "./shared/formula";
import { cellOf, page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { words } from "./shared/running";
import { hasPlan } from "./shared/winterPlan";
import { isoText, rounded } from "./shared/words";

const { cold: tooCold, warm, lowest, highest, notCovered } = outside;
const dayWords = words(
  "dayWords",
  [2, 14],
  f`IF(OR(COUNT(${days.date})=0,${tooCold}=""),"",COUNT(${days.date})&" days from "&${isoText(`MIN(${days.date})`)}&" to "&${isoText(`MAX(${days.date})`)}&", "&${rounded(`${lowest}`)}&" to "&${rounded(`${highest}`)}&" °C. Too warm for "&${rounded(`${warm}`)}&" hours, too cold for "&${rounded(`${tooCold}`)}&", not covered "&${rounded(`${notCovered}`)}&".")`,
);
const { off } = days;
/** Which plan it is stands in the words: a workbook may hold several, and this sheet follows one. */
const cold = `${isoText(`${plan.intoTheCold}`)}&" to "&${isoText(`${plan.warmingStarts}`)}`;
const { warmSet, coldSet } = setPoints;
const planWords = words(
  "planWords",
  [2, 14],
  f`IF(COUNT(${days.date})=0,"",IF(NOT(${hasPlan(plan.dates)}),"No whole winter plan stands here, or it cannot be read: the days are held against your limits alone.",IF(OR(${warmSet}="",${coldSet}=""),"A set-point of the winter plan is blank: the days are held against your limits alone.",IF(COUNT(${off})=0,"","Against the plan that is cold from "&${cold}&", by the day's mean: up to "&${rounded(`MAX(0,MAX(${off}))`)}&" K too warm and "&${rounded(`MAX(0,-MIN(${off}))`)}&" K too cold, "&${rounded(`AVERAGE(${off})`)}&" K on average."))))`,
);
const dayChart = picture([14, 14], {
  title: "Lowest to highest, day by day",
  along: `${days.date}`,
  axis: "°C",
  series: [
    { draw: "band", name: "Lowest to highest", low: `${days.low}`, high: `${days.high}` },
    { draw: "line", name: "Mean", values: `${days.mean}` },
    { draw: "threshold", name: "Not above", values: `${bounds.high}` },
    { draw: "threshold", name: "Not below", values: `${bounds.low}` },
  ],
  summary: `${dayWords.said}`,
});
const planChart = picture([14, 14], {
  title: "Mean of the day and the plan",
  along: `${days.tracked}`,
  axis: "°C",
  series: [
    { draw: "line", name: "Set-point", values: `${days.setPoint}` },
    { draw: "line", name: "Mean", values: `${days.trackedMean}` },
  ],
  summary: `${planWords.said}`,
});

export const readings = page(
  {
    key: "readings",
    name: "Readings",
    sentence: "A logger's readings by the day, against limits and the plan.",
    cautions: ["probePlace", "skippedReadings", "coldKills", "noVet"],
    sources: ["definition", "practice"],
    widths: [17, 5.9, 0.6, 11, 5.2, 5.2, 5.2, 5.2, 5.2, 5, 4.6, 5, 4.6, 11, 5.6, 7.4, 6.2, 1, 17, 17, 8, 1, 11, 11],
    inView: [pasted, days],
    cautionColumns: ["K", "P"],
    example: `${EXAMPLE} an invented box. Look, clear, put in your own.`,
    footColumn: "D",
  },
  {
    A: [pasted],
    D: [limits, plan, setPoints, read, gap(2), dayChart, dayWords, gap(1), planChart, planWords, gap(1), days],
    K: [outside],
    S: [silent],
    W: [bounds],
  },
);

/** Where readings are written or pasted: time in the first column, °C in the second. */
export const paste = {
  sheet: readings.key,
  at: cellOf(readings, "pasted.time[1]"),
  rows: ROOM,
  columns: 2,
} as const;
