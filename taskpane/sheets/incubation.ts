import { EGGS_DEADLY, EGGS_LEAST, EGGS_MOST } from "../../functions/breeding/shared/development";
import { cautions } from "../../functions/cautions";
import { daily, temperatures } from "./incubationReadings";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { namedColumn, type Cell, type RowCell } from "./shared/names";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { over } from "./shared/rules";
import { words } from "./shared/running";
import { clutch, day } from "./shared/scenario";
import { figure } from "./shared/systems";
import { date, number, whole } from "./shared/takes";
import { blanksKept, isoText, rounded } from "./shared/words";

const CLUTCH_ROWS = 10;
const EGG_RANGE = number([EGGS_LEAST, EGGS_MOST]);

const own = form(
  "own",
  "Your own figures",
  {
    days: {
      label: "Days that your eggs took",
      needed: true,
      value: clutch.baseDays,
      format: "whole",
      takes: whole([20, 200], "days"),
      note: "Of your own clutches of this kind, held steady.",
    },
    temperature: {
      label: "at",
      needed: "at which temperature",
      unit: "°C",
      value: clutch.incubator,
      format: "tenth",
      takes: EGG_RANGE,
    },
    threshold: {
      label: "No growth below",
      unit: "°C",
      value: 14,
      role: "setting",
      format: "tenth",
      takes: number([5, 20]),
      note: "14 °C was fitted to four Asian colubrids.",
    },
    soonest: {
      label: "Soonest",
      unit: "days",
      value: 55,
      role: "setting",
      format: "whole",
      takes: whole([20, 200]),
      note: "At the temperature above; 55 to 65 days at 26 °C is practice, no source.",
    },
    latest: {
      label: "Latest",
      unit: "days",
      value: 65,
      role: "setting",
      format: "whole",
      takes: whole([20, 200]),
    },
  },
  { across: 2 },
);

const [labels, laid, hatched] = ["clutch", "laid", "hatchedOn"].map((one) => namedColumn(`clutches.${one}`));
const { on: readOn, high, mid } = daily;

const forecast = (laidOn: Cell, part: 1 | 2 | 3 | 6): string =>
  `=IF(OR(${laidOn}="",COUNT(${mid})=0,${own.days}="",${own.temperature}="",${own.threshold}=""),"",` +
  `INDEX(VIV.HATCHFORECAST(${laidOn},IF(${mid}="","",${readOn}),${blanksKept(`${mid}`)},${own.days},${own.temperature},${own.threshold},${blanksKept(`${high}`)}),1,${part}))`;

const chosen = form(
  "chosen",
  "Forecast, one clutch",
  {
    clutch: {
      label: "Clutch",
      value: clutch.label,
      note: "As it is called in the table: its readings stand at the bottom.",
    },
    laid: {
      label: "Laid",
      value: ({ clutch: name }) => {
        const found = `INDEX(${laid},MATCH(${name},${labels},0))`;
        return `=IF(${name}="","",IFNA(IF(${found}="","",${found}),"not in the table"))`;
      },
      format: "date",
    },
    developed: {
      label: "Developed",
      value: ({ laid: laidOn }) => forecast(laidOn, 1),
      format: "percent",
      note: "By the end of the last day read.",
    },
    hatching: {
      label: "Hatching",
      value: ({ laid: laidOn }) => forecast(laidOn, 2),
      format: "date",
      note: "If the mean of the last seven days goes on.",
    },
    outside: {
      label: "Days outside",
      value: ({ laid: laidOn }) => forecast(laidOn, 3),
      format: "whole",
      note: `Days with a mean outside ${EGGS_LEAST}-${EGGS_MOST} °C.`,
    },
    hottest: {
      label: "Hottest",
      unit: "°C",
      value: ({ laid: laidOn }) => forecast(laidOn, 6),
      format: "tenth",
      note: `Highest since laying. Above ${EGGS_DEADLY} °C eggs may be dead, and no date is given.`,
      rules: [over(figure(EGGS_DEADLY, "°C"), "stop")],
    },
    until: { label: "Read until", value: f`IF(COUNT(${mid})=0,"",MAX(${readOn}))`, format: "date" },
  },
  { across: 2 },
);

/** Of the chosen clutch; an error where it is not in the table, which `chosen.laid` says first. */
const hatchedOn = `INDEX(${hatched},MATCH(${chosen.clutch},${labels},0))`;
const summary = words(
  "summary",
  [2, 6],
  `=IF(OR(${chosen.laid}="",${chosen.developed}=""),"",IF(ISERROR(${chosen.hatching}),` +
    `IF(${chosen.hottest}>${figure(EGGS_DEADLY, "°C")},${chosen.clutch}&": "&${rounded(`${chosen.hottest}`)}&" °C were reached. Above ${EGGS_DEADLY} °C eggs may be dead: no date. Ask a reptile vet, never open an egg.",` +
    `${chosen.clutch}&": no date from a last week outside ${EGGS_LEAST}-${EGGS_MOST} °C."),${chosen.clutch}&": "&ROUND(100*${chosen.developed},0)&" % developed when last read. "&IF(N(${hatchedOn})>0,"Hatched on "&${isoText(hatchedOn)}&".",` +
    `IF(${chosen.developed}>=1,"Should have hatched by now: wait, never open an egg.","Go on reading, every eighth day at least."))))`,
);

/** The practice range, longer or shorter where the eggs are held cooler or warmer than the keeper's own figure. */
const expected = (row: { readonly laid: RowCell; readonly days: RowCell }, part: 1 | 2): string => {
  const { days, soonest, latest } = own;
  const scaled = (limit: unknown): string => `ROUND(${String(limit)}*${row.days}/${days},0)`;
  return `=IF(OR(${[row.laid, row.days, days, soonest, latest].map((one) => `${one}=""`).join(",")}),"",INDEX(VIV.HATCHDATES(${row.laid},${scaled(soonest)},${scaled(latest)}),1,${part}))`;
};

const clutches = log(
  "clutches",
  CLUTCH_ROWS,
  {
    clutch: { title: "Clutch", needed: "A clutch", input: ["Juniper 2025", clutch.label] },
    laid: { title: "Laid", needed: "Its day", input: [day("2025-06-24"), clutch.laid], format: "date", takes: date },
    eggs: { title: "Eggs", input: [6, clutch.eggs], format: "whole", takes: whole([1, 100], "eggs") },
    held: {
      title: "Held",
      unit: "°C",
      input: [clutch.incubator, clutch.incubator],
      format: "tenth",
      takes: EGG_RANGE,
      note: cautions.dailySwing,
    },
    days: {
      title: "Days",
      each: ({ held }) => once`INDEX(VIV.INCUBATIONDAYS(${held},${own.days},${own.temperature},${own.threshold}),1,1)`,
      format: "tenth",
      note: "At that temperature, from your own figure.",
    },
    expected: { title: "Expected", each: ({ laid: on, days }) => once`${on}+ROUND(${days},0)`, format: "date" },
    soonest: { title: "Soonest", each: (row) => expected(row, 1), format: "date" },
    latest: { title: "Latest", each: (row) => expected(row, 2), format: "date" },
    hatchedOn: { title: "Hatched on", input: [day("2025-08-23"), clutch.hatched], format: "date", takes: date },
    hatched: { title: "Hatched", input: [5, clutch.hatchlings], format: "whole", takes: whole([0, 100]) },
    share: { title: "Share", each: ({ eggs, hatched: out }) => once`${out}/${eggs}`, format: "percent" },
  },
  { grows: true },
);

export const incubation = page(
  {
    key: "incubation",
    name: "Incubation",
    sentence: "Clutches, when they should hatch, and a forecast.",
    cautions: ["hatchingSuccess", "eggSpecies", "lateEggs", "noVet"],
    sources: ["duJi", "eggThresholds", "singleSine", "practice"],
    widths: [13.5, 11.5, 7, 8, 8, 11.5, 11.5, 11.5, 11.5, 8, 8],
    cautionColumns: ["H", "K"],
  },
  { A: [own], D: [chosen] },
  gap(1),
  summary,
  gap(1),
  clutches,
  gap(1),
  ...temperatures,
  gap(1),
  daily,
);
