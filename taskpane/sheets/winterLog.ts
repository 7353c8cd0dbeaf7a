import { answers } from "./shared/answers";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { joinedLines } from "./shared/lines";
import { log } from "./shared/log";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { blanksKept, isoText, lastFigure, rounded } from "./shared/words";
import { animal, weekly } from "./winterLogRows";

/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 13;

const { start, warming, many, box: boxKind, litres, elevation, tooCold, tooWarm, agreed } = animal;
const { date: dates, box, mass } = weekly;

/** Whole sentences, worked out at the foot and shown together at the top. */
const told = [dates, box, mass].map((column) => blanksKept(`${column}`)).join(",");
const limits = [start, tooCold, tooWarm, agreed].map((cell) => blanksKept(`${cell}`)).join(",");
/** One animal's share of a box lasts it as long as all of the box lasts all of them. */
const litresEach = `IF(${litres}="","",${litres}/MAX(1,N(${many})))`;
const more = [
  ...[weekly.humidity, weekly.opened].map((one) => blanksKept(`${one}`)),
  `IF(${boxKind}="vented","vented",${litresEach})`,
  blanksKept(`${elevation}`),
].join(",");
const lines = log(
  "lines",
  MOST_LINES,
  {
    on: {
      title: null,
      spilled: f`IF(COUNTA(${dates})=0,"",VIV.WINTERSIGNS(${told},${limits},${more},"",${blanksKept(`${warming}`)}))`,
      format: "date",
    },
    level: { title: null, covered: true },
    words: { title: null, covered: true },
  },
  { title: "What stands out, line by line", titleLines: 0 },
);
const signs = words(
  "signs",
  [9, 7],
  // An error is one cell, and leaves the levels beside it blank: it must not pass for nothing.
  f`IF(COUNTA(${dates})=0,"",IF(ISERROR(${lines.on.at(1)}),"stop: Nothing is judged: a figure, a date or a limit of this sheet cannot be read. The error under the last table says which.",${joinedLines(MOST_LINES, { ...lines, told: lines.words })}))`,
  {
    title: "What stands out, the gravest first",
    rules: LEVELS,
  },
);

/** What a quiet animal burns from the first day to the last weighing; the rest of a loss is mostly water. */
const lastMass = lastFigure(`${mass}`);
const [lastOn, days] = [lastFigure(`${mass}`, `${dates}`), `${lastFigure(`${mass}`, `${dates}`)}-MIN(${dates})`];
const burnt = (part: number): string => `INDEX(VIV.METABOLICLOSS(${start},AVERAGE(${box}),${days}),1,${part})`;
const water = words(
  "water",
  [3, 7],
  f`IF(OR(${start}="",COUNT(${mass})=0,COUNT(${box})=0,COUNT(${dates})=0),"",IF(${days}<1,"",IF(1-${lastMass}/${start}>${burnt(3)},"Lost ","Burnt, not dried out: lost ")&${rounded(`100*(1-${lastMass}/${start})`)}&" % by "&${isoText(lastOn)}&"; a quiet animal burns "&${rounded(`100*${burnt(1)}`)}&" to "&${rounded(`100*${burnt(3)}`)}&" % in that time"&IF(1-${lastMass}/${start}>${burnt(3)},". The rest is mostly water, or droppings: look at humidity and fresh water first, then ask your vet.",".")))`,
);

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
  },
  { across: 3 },
);

const summary = words(
  "summary",
  [1, 7],
  f`IF(COUNT(${mass})=0,"",COUNT(${mass})&" weighings from "&${isoText(`MIN(${dates})`)}&" to "&${isoText(`MAX(${dates})`)}&", "&${rounded(`MAX(${mass})`, 1, "g")}&" down to "&${rounded(`MIN(${mass})`, 1, "g")}&" g"&IF(${weekly.least.at(1)}="",", no loss agreed.",", agreed down to "&${rounded(`${weekly.least.at(1)}`, 1, "g")}&" g."))`,
);
const boxWords = words(
  "boxWords",
  [1, 7],
  f`IF(COUNT(${box})=0,"",COUNT(${box})&" readings of the box, "&ROUND(MIN(${box}),1)&" to "&ROUND(MAX(${box}),1)&" °C.")`,
);
const chart = picture([14, 7], {
  title: "Mass in the cold, and the mass at the agreed loss",
  along: `${dates}`,
  axis: "g",
  series: [
    { draw: "line", name: "Mass", values: `${mass}` },
    { draw: "threshold", name: "Agreed with your vet", values: `${weekly.least}` },
  ],
  summary: `${summary.said}`,
});

export const winterLog = page(
  {
    key: "winterLog",
    name: "Winter log",
    sentence: "Box, mass, humidity and air through the cold: what stands out, and where the loss is heading.",
    cautions: ["noLossLimit", "openTheBox", "waterLoss", "noVet"],
    sources: ["theilSen", "andrewsPough", "costanzo", "stubblefield", "practice", "ownLimit"],
    widths: [23.5, 11, 8, 8, 8, 10.5, 14, 1, 15, 9.5, 10],
    inView: [weekly],
    cautionColumns: ["I", "J"],
  },
  signs,
  water,
  gap(1),
  { A: [animal], D: [trend, gap(1), now] },
  gap(1),
  chart,
  summary,
  boxWords,
  gap(2),
  weekly,
  gap(2),
  lines,
);
