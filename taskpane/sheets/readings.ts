import { FEWEST_HOURS } from "../../functions/readings/shared/days";
import { answers } from "./shared/answers";
import { limits, pasted, plan, ROOM, setPoints } from "./readingsInputs";
import { EXAMPLE } from "./shared/assemble";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { named, type Cell, type Column } from "./shared/names";
import { cellOf, page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { moreThanNone, over, says, under } from "./shared/rules";
import { words } from "./shared/running";
import { hasPlan } from "./shared/winterPlan";
import { blanksKept, isoText, rounded } from "./shared/words";

/** Days that the day table has room for. */
const DAYS = 200;

const { low, high, longest } = limits;
const { warmSet, coldSet } = setPoints;

/** The row of a column's last figure, counted from the first; 0 where there is none. */
const lastRow = (column: Column): string => `IFNA(MATCH(9E+300,${column}),0)`;
/** The rows of the paste area that are in use; formulas look at these only. */
const used = named("read.rows");
const inUse = (column: Column): string => `${column.at(1)}:INDEX(${column},${used})`;
const times = inUse(pasted.time);
const temperatures = blanksKept(inUse(pasted.celsius));
/** Start, end and hours of each gap; #N/A where there is none. */
const silences = `VIV.READINGGAPS(${times},${longest})`;

const ready = (formula: string, ...more: readonly Cell[]): string =>
  f`IF(OR(${[used, ...more].map((cell) => `${cell}=""`).join(",")}),"",${formula})`;
/** A table of days, or why there is none: a spill that meets the words below it would show nothing at all. */
const byDay = (formula: string): string =>
  `IF(INT(MAX(${times}))-INT(MIN(${times}))>=${DAYS},"More than ${DAYS} days: one winter a sheet",${formula})`;

const read = form(
  "read",
  "What was read",
  {
    rows: {
      label: "Rows down to the last",
      wide: 3,
      value: f`IF(COUNT(${pasted.time},${pasted.celsius})=0,"",MAX(${lastRow(pasted.time)},${lastRow(pasted.celsius)}))`,
      format: "whole",
    },
    gaps: {
      label: "Gaps",
      wide: 3,
      value: ready(`IFNA(ROWS(${silences}),0)`, longest),
      format: "whole",
      note: "Listed from column S on.",
      rules: [moreThanNone("care")],
    },
    longestGap: {
      label: "Longest gap",
      unit: "hours",
      wide: 3,
      value: ready(`IFNA(MAX(INDEX(${silences},0,3)),"none")`, longest),
      format: "tenth",
    },
  },
  { across: 3 },
);

const outside = answers(
  "outside",
  "Time outside the limits",
  ready(`TRANSPOSE(VIV.TIMEOUTSIDE(${times},${temperatures},${low},${high},${longest}))`, low, high, longest),
  {
    cold: { label: "Hours too cold", rules: [moreThanNone("cold")] },
    warm: { label: "Hours too warm", rules: [moreThanNone("stop")] },
    longestWarm: { label: "Longest too warm, hours", rules: [moreThanNone("stop")] },
    lowest: "Lowest, °C",
    highest: "Highest, °C",
    degreeHours: "Too warm, degree-hours",
    notCovered: { label: "Hours not covered", rules: [moreThanNone("care")] },
    skipped: { label: "Rows skipped", format: "whole", rules: [moreThanNone("care")] },
    longestCold: { label: "Longest too cold, hours", rules: [moreThanNone("cold")] },
    degreeHoursCold: "Too cold, degree-hours",
  },
  { across: 6, format: "tenth" },
);

const days = log("days", DAYS, {
  date: {
    title: "Date",
    spilled: ready(byDay(`VIV.DAYTABLE(${times},${temperatures},"metric",${longest})`), longest),
    format: "date",
  },
  high: { title: "High", measures: "°C", covered: true, format: "tenth", rules: [over(high, "stop")] },
  low: { title: "Low", measures: "°C", covered: true, format: "tenth", rules: [under(low, "cold")] },
  swing: { title: "Swing", measures: "K", covered: true, format: "tenth", note: "High less low, K." },
  mid: { title: "Mid", measures: "°C", covered: true, format: "tenth", note: "Half-way between high and low." },
  mean: {
    title: "Mean",
    measures: "°C",
    covered: true,
    format: "tenth",
    note: `Weighed by time. Blank, with Swing and Mid, where fewer than ${FEWEST_HOURS} hours are covered.`,
  },
  read: { title: "Read", covered: true, format: "whole", note: "Readings of the day." },
  skip: {
    title: "Skip",
    covered: true,
    format: "whole",
    note: "Rows of the day without a temperature that can be read.",
    rules: [moreThanNone("care")],
  },
  covered: {
    title: "Hours",
    covered: true,
    format: "tenth",
    note: "Hours of the day that the readings cover, joined up to the minutes above.",
    rules: [under(FEWEST_HOURS, "care")],
  },
  sign: {
    title: "Sign",
    each: ({ high: most, low: least }) =>
      once`IF(${most}>${high},IF(${least}<${low},"both","warm"),IF(${least}<${low},"cold","ok"))`,
    note: "warm: above the upper limit at some time. cold: below the lower one. both: both.",
    rules: [says("warm", "stop"), says("both", "stop"), says("cold", "cold")],
  },
  tracked: {
    title: "Date",
    spilled: ready(
      `IF(${hasPlan(plan.dates)},${byDay(`VIV.TRACKING(${times},${temperatures},${plan.dates},${warmSet},${coldSet},"metric",1,${longest})`)},"")`,
      warmSet,
      coldSet,
      longest,
    ),
    format: "date",
  },
  setPoint: {
    title: "Plan",
    measures: "°C",
    covered: true,
    format: "tenth",
    note: "The set-point of the winter plan, °C.",
  },
  trackedMean: { title: "Mean", measures: "°C", covered: true, format: "tenth" },
  off: { title: "Off K", covered: true, format: "tenth", note: "Mean less set-point: above 0 is too warm." },
});
const silent = log("gaps", DAYS, {
  from: { title: "Gap from", spilled: ready(`IFNA(${silences},"no gap")`, longest), format: "moment" },
  to: { title: "to", covered: true, format: "moment" },
  hours: { title: "Hours", covered: true, format: "tenth" },
});

const { cold, warm, lowest, highest, notCovered } = outside;
const dayWords = words(
  "dayWords",
  [2, 14],
  f`IF(OR(COUNT(${days.date})=0,${cold}=""),"",COUNT(${days.date})&" days from "&${isoText(`MIN(${days.date})`)}&" to "&${isoText(`MAX(${days.date})`)}&", "&${rounded(`${lowest}`)}&" to "&${rounded(`${highest}`)}&" °C. Too warm for "&${rounded(`${warm}`)}&" hours, too cold for "&${rounded(`${cold}`)}&", not covered "&${rounded(`${notCovered}`)}&".")`,
);
const { off } = days;
const planWords = words(
  "planWords",
  [2, 14],
  f`IF(COUNT(${off})=0,"","Against the plan, by the day's mean: up to "&${rounded(`MAX(0,MAX(${off}))`)}&" K too warm and "&${rounded(`MAX(0,-MIN(${off}))`)}&" K too cold, "&${rounded(`AVERAGE(${off})`)}&" K on average.")`,
);
const dayChart = picture([14, 14], {
  title: "Lowest to highest, day by day",
  along: `${days.date}`,
  axis: "°C",
  series: [
    { draw: "band", name: "Lowest to highest", low: `${days.low}`, high: `${days.high}` },
    { draw: "line", name: "Mean", values: `${days.mean}` },
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
    widths: [17, 5.9, 0.6, 11, 5.2, 5.2, 5.2, 5.2, 5.2, 5, 5, 5.4, 5, 11, 6, 5.8, 6.2, 1, 17, 17, 8],
    cautionColumns: ["K", "P"],
    example: `${EXAMPLE} an invented box. Look, clear, put in your own.`,
    footColumn: "D",
  },
  {
    A: [pasted],
    D: [limits, plan, setPoints, read, gap(2), dayChart, dayWords, gap(1), planChart, planWords, gap(1), days],
    K: [outside],
    S: [silent],
  },
);

/** Where readings are written or pasted: time in the first column, °C in the second. */
export const paste = {
  sheet: readings.key,
  at: cellOf(readings, "pasted.time[1]"),
  rows: ROOM,
  columns: 2,
} as const;
