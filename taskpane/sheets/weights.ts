import { form } from "./shared/form";
import { f } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import type { RowCell } from "./shared/names";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { begins, saysSomething } from "./shared/rules";
import { words } from "./shared/running";
import { animals, day, junipersWeights as weighings } from "./shared/scenario";
import { date, MASS, number } from "./shared/takes";
import { fastWords, insideFast, winterPlan } from "./shared/winterPlan";
import { isoText, lastFigure, rounded } from "./shared/words";
import { sideBySide } from "./weightsSideBySide";

const animal = form(
  "animal",
  "The animal, one a sheet",
  {
    label: { label: "Animal", needed: true, value: animals.juniper.label },
    alarm: {
      label: "Flag a loss of",
      value: 0.05,
      role: "setting",
      format: "percent",
      takes: number([0.001, 1]),
      note: "Share lost from one weighing to the next that calls for a look. Practice; laying costs far more.",
    },
    window: {
      label: "Trend of last days",
      value: 90,
      role: "setting",
      format: "whole",
      takes: number([14, 3660], "days"),
    },
  },
  { across: 2 },
);
const { alarm, window } = animal;

const plan = winterPlan(2);
const fast = words("fast", [2, 3], fastWords(plan.dates));

/** The mass or the date of the weighing before this one: a row without a mass is passed over. */
const massBefore = (mass: RowCell): string => lastFigure(mass.above);
const dateBefore = (mass: RowCell, date: RowCell): string => lastFigure(mass.above, date.above);
/** Empty in the first row, and while no weighing stands above. */
const sinceBefore = (date: RowCell, mass: RowCell, formula: () => string): string =>
  mass.isFirst ? '=""' : f`IF(OR(${date}="",${mass}="",COUNT(${mass.above})=0),"",${formula()})`;

const weekly = log("log", LOG_ROWS, {
  date: {
    title: "Date",
    needed: "First weighing",
    input: weighings.map(([iso]) => day(iso)),
    format: "date",
    takes: date,
    note: "Oldest first.",
  },
  mass: { title: "Mass", unit: "g", input: weighings.map(([, mass]) => mass), format: "tenth", takes: number(MASS) },
  length: {
    title: "Length",
    unit: "cm",
    input: weighings.map(([, , length]) => length),
    format: "tenth",
    takes: number([1, 1000]),
    note: "From snout to tail tip, or to the vent: always the same way.",
  },
  change: {
    title: "Change",
    unit: "g",
    each: ({ date, mass }) => sinceBefore(date, mass, () => `${mass}-${massBefore(mass)}`),
    format: "tenth",
    note: "Since the last weighing.",
  },
  share: {
    title: "Change",
    each: ({ date, mass }) => sinceBefore(date, mass, () => `-VIV.MASSLOSS(${massBefore(mass)},${mass})`),
    format: "percent",
    note: "Since the last weighing; a loss is negative.",
  },
  daily: {
    title: "% a day",
    each: ({ date, mass }) =>
      sinceBefore(
        date,
        mass,
        () =>
          `IF(${date}=${dateBefore(mass, date)},"",VIV.GROWTHRATE(${massBefore(mass)},${dateBefore(mass, date)},${mass},${date}))`,
      ),
    format: "thousandth",
    note: "Growth since the last weighing.",
  },
  seen: {
    title: "Seen",
    input: weighings.map(([, , , seen]) => seen ?? null),
    note: "Begin with Laid or Birth on the day of either: the loss is told as such.",
  },
  standsOut: {
    title: "What stands out",
    skip: 1,
    wide: 2,
    each: ({ date, mass, share, seen }) =>
      f`IF(OR(${date}="",${mass}=""),"",IF(${insideFast(`${date}`, plan.dates)},"In the fast: see the Winter log",IF(OR(${share}="",${alarm}=""),"",IF(${share}<=-${alarm},IF(OR(LEFT(${seen},4)="Laid",LEFT(${seen},4)="Birt"),"Laying or birth: ","Lost ")&${rounded(`-100*${share}`)}&" % since the last",""))))`,
    rules: [begins("In", "note"), saysSomething("care")],
  },
});
const { date: dates, mass: masses, length: lengths } = weekly;

/** Weighings of the last so many days; a row whose date or mass is blank belongs to none. */
const recent = `(${dates}<>"")*(${masses}<>"")*(${dates}>=MAX(${dates})-${window})`;
const firstWeighed = `MATCH(TRUE,${masses}<>"",0)`;
const now = form("now", "Now", {
  mass: {
    label: "Mass",
    unit: "g",
    value: f`IF(COUNT(${masses})=0,"",${lastFigure(`${masses}`)})`,
    format: "tenth",
  },
  length: {
    label: "Length",
    unit: "cm",
    value: f`IF(COUNT(${lengths})=0,"",${lastFigure(`${lengths}`)})`,
    format: "tenth",
  },
  trend: {
    label: "Trend",
    unit: "g a week",
    value: f`IF(OR(COUNT(${dates})=0,COUNT(${masses})=0,${window}=""),"",IF(SUMPRODUCT(${recent})<3,"",VIV.MASSTREND(IF(${recent},${dates},""),IF(${recent},${masses},""))))`,
    format: "hundredth",
    note: "Over the days given on the left, three weighings or more.",
  },
  growth: {
    label: "Growth",
    unit: "% a day",
    value: f`IF(OR(COUNT(${dates})<2,COUNT(${masses})<2,COUNT(${masses})<>SUMPRODUCT((${dates}<>"")*(${masses}<>""))),"",VIV.GROWTHRATE(INDEX(${masses},${firstWeighed}),INDEX(${dates},${firstWeighed}),${lastFigure(`${masses}`)},${lastFigure(`${masses}`, `${dates}`)}))`,
    format: "thousandth",
    note: "From the first weighing to the last, share of the body gained each day.",
  },
});

const [first, latest] = [isoText(`MIN(${dates})`), isoText(`MAX(${dates})`)];
const trend = `IF(${now.trend}="","","; "&${rounded(`${now.trend}`)}&" g a week in the last "&${window}&" days")`;
const summary = words(
  "summary",
  [2, 10],
  f`IF(OR(COUNT(${dates})=0,COUNT(${masses})=0),"",${animal.label}&": "&COUNT(${masses})&" weighings from "&${first}&" to "&${latest}&", "&${rounded(`MIN(${masses})`)}&" to "&${rounded(`MAX(${masses})`)}&" g, "&${rounded(lastFigure(`${masses}`))}&" g at the last"&${trend}&".")`,
);
const chart = picture([14, 4], {
  title: "Mass",
  along: `${dates}`,
  axis: "g",
  series: [{ draw: "line", name: "Mass", values: `${masses}` }],
  summary: `${summary.said}`,
});

export const weights = page(
  {
    key: "weights",
    name: "Weights",
    sentence: "Mass and length of one animal over time; below, animals side by side.",
    cautions: ["sameScales", "narrowLengths", "noVet"],
    sources: ["theilSen", "peigGreen", "practice", "definition"],
    widths: [11.5, 8, 11.5, 9, 8.5, 8.5, 19, 1, 19, 10],
    cautionColumns: ["I", "J"],
  },
  { A: [animal, plan, fast], D: [chart], I: [now] },
  summary,
  gap(1),
  weekly,
  gap(2),
  sideBySide,
);
