import { answers } from "./shared/answers";
import { boxFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { eachLine, f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { over, says, under } from "./shared/rules";
import { words } from "./shared/running";
import { animals, day, winter } from "./shared/scenario";
import { date, MASS, number } from "./shared/takes";
import { blanksKept, isoText } from "./shared/words";
import { readings } from "./winterLogExample";

const animal = form("animal", "This animal", {
  label: { label: "Animal", value: animals.juniper.label, from: "coolingPlan.plan.label" },
  start: { label: "Mass into the cold", unit: "g", value: 306, format: "tenth", takes: number(MASS) },
  warming: {
    label: "Warming starts on",
    value: winter.dates[3] ?? null,
    from: "coolingPlan.dates.warmingStarts",
    format: "date",
    takes: date,
    note: "From the sheet Cooling plan. The cell may point there: type = and click that date.",
  },
  ...boxFields("coolingPlan.air"),
  tooCold: { label: "Too cold below", unit: "°C", value: 4, role: "setting", format: "tenth", takes: number([0, 30]) },
  tooWarm: { label: "Too warm above", unit: "°C", value: 10, role: "setting", format: "tenth", takes: number([0, 30]) },
  agreed: {
    label: "Loss agreed with your vet",
    value: 0.05,
    format: "percent",
    takes: number([0.001, 0.5]),
    note: "A share of the mass into the cold: 5 % is 0.05. Invented in the example.",
  },
});
const { start, warming, litres, elevation, tooCold, tooWarm, agreed } = animal;

const weekly = log("log", LOG_ROWS, {
  date: { title: "Date", input: readings.map(({ iso }) => day(iso)), format: "date", takes: date },
  box: {
    title: "Box",
    unit: "°C",
    input: readings.map(({ box }) => box),
    format: "tenth",
    takes: number([-30, 60]),
    rules: [under(tooCold, "stop"), over(tooWarm, "care")],
  },
  mass: {
    title: "Mass",
    unit: "g",
    input: readings.map(({ mass }) => mass),
    format: "tenth",
    takes: number(MASS),
  },
  lost: {
    title: "Lost",
    spilled: ({ mass }) => eachLine`VIV.MASSLOSS(${start},${mass})`,
    format: "percent",
    note: "Of the mass into the cold. A gain is negative.",
    rules: [over(agreed, "stop")],
  },
  air: {
    title: "Air",
    unit: "h",
    spilled: ({ box }) => eachLine`INDEX(VIV.BOXAIR(${start},${box},${litres},${elevation}),0,1)`,
    format: "whole",
    note: "Hours until a box that is shut tight must be aired, at the soonest, for the mass into the cold.",
  },
  sign: {
    title: "Sign",
    each: ({ box }) => f`IF(${box}="","",IF(${box}<${tooCold},"too cold",IF(${box}>${tooWarm},"too warm","ok")))`,
    rules: [says("too cold", "stop"), says("too warm", "care")],
  },
  seen: { title: "Seen and done", input: readings.map(({ seen }) => seen ?? null) },
});
const { date: dates, box, mass } = weekly;

const trend = answers(
  "trend",
  "Loss by the trend",
  f`IF(OR(COUNT(${mass})<3,${warming}="",${start}=""),"",IFNA(TRANSPOSE(VIV.LOSSTREND(${blanksKept(`${dates}`)},${blanksKept(`${mass}`)},MAX(${warming},${dates}),${start})),"too few"))`,
  {
    soFar: "So far",
    monthly: "Per 30 days",
    atWarming: "When warming starts",
    monthlyLeast: "Per 30 days, at least",
    monthlyMost: "Per 30 days, at most",
    warmingLeast: "When it starts, at least",
    warmingMost: "When it starts, at most",
  },
  { across: 3, format: "percent" },
);

const now = form(
  "now",
  "Now",
  {
    last: { label: "Last reading on", value: f`IF(COUNT(${dates})=0,"",MAX(${dates}))`, format: "date" },
    left: {
      label: "Days left in the cold",
      value: ({ last }) => once`IF(${warming}>${last},${warming}-${last},"over")`,
      format: "whole",
    },
    standsOut: { label: "What stands out" },
  },
  { across: 3 },
);

const heading = `IF(COUNT(${trend.atWarming})=0,"",IF(${trend.atWarming}>${agreed},"CARE: heading past the agreed loss. ",""))`;
const standsOut = words(
  "standsOut",
  [3, 4],
  f`IF(COUNTA(${dates})=0,"",IF(COUNTIF(${box},"<"&${tooCold})>0,"STOP: the box was too cold. ","")&IF(COUNTIF(${box},">"&${tooWarm})>0,"CARE: the box was too warm. ","")&IF(OR(${agreed}="",COUNT(${weekly.lost})=0),"",IF(MAX(${weekly.lost})>${agreed},"STOP: lost more than agreed, ask your vet. ",${heading})))`,
);

const summary = words(
  "summary",
  [2, 7],
  f`IF(COUNT(${mass})=0,"",COUNT(${box})&" readings from "&${isoText(`MIN(${dates})`)}&" to "&${isoText(`MAX(${dates})`)}&": box "&ROUND(MIN(${box}),1)&" to "&ROUND(MAX(${box}),1)&" °C, mass "&ROUND(MAX(${mass}),1)&" down to "&ROUND(MIN(${mass}),1)&" g.")`,
);
const chart = picture([14, 7], {
  title: "Mass in the cold",
  along: `${dates}`,
  axis: "g",
  series: [{ draw: "line", name: "Mass", values: `${mass}` }],
  summary: `${summary.said}`,
});

export const winterLog = page(
  {
    key: "winterLog",
    name: "Winter log",
    sentence: "Box temperature, mass and air through the cold, and where the loss is heading.",
    cautions: ["noLossLimit", "openTheBox", "quietAnimal", "noVet"],
    sources: ["theilSen", "andrewsPough", "costanzo", "stubblefield", "practice"],
    widths: [23.5, 11, 8, 8, 8, 10.5, 14, 1, 15, 9.5],
    cautionColumns: ["I", "J"],
  },
  { A: [animal], D: [trend, gap(1), now, standsOut] },
  gap(1),
  chart,
  summary,
  gap(2),
  weekly,
);
