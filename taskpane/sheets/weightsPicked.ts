import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import type { Column } from "./shared/names";
import { named } from "./shared/names";
import { hasPlan } from "./shared/winterPlan";
import { blanksKept } from "./shared/words";
import { animal, plan, weekly } from "./weightsLog";

/** The weighings of the animal looked at, by their days, and what they come to. */

const { label, window } = animal;
const { date: dates, animal: names, mass: masses, length: lengths } = weekly;
const count = named("now.count");

const its = `(${names}=${label})*ISNUMBER(${dates})*ISNUMBER(${masses})`;
/** The rows of a column that are in use: a picture must find no text below them. */
const inUse = (column: Column): string => `${column.at(1)}:INDEX(${column},${count})`;
const whenAny = (formula: string): string => f`IF(OR(${count}="",${count}=0),"",${formula})`;

export const picked = log(
  "picked",
  LOG_ROWS,
  {
    date: {
      title: "Date",
      spilled: whenAny(
        `SMALL(IF(${its},${dates},""),ROW(${dates.at(1)}:INDEX(${dates},${count}))-ROW(${dates.at(1)})+1)`,
      ),
      format: "date",
    },
    mass: {
      title: "Mass",
      unit: "g",
      // Two weighings of one day: their mean. A formula a row: LibreOffice works the sums out for a column of days once only.
      each: ({ date }) =>
        f`IF(${date}="","",SUMIFS(${masses},${names},${label},${dates},${date})/COUNTIFS(${names},${label},${dates},${date},${masses},">0"))`,
      format: "tenth",
    },
    stage: {
      title: "Stage",
      spilled: ({ date }) => whenAny(`IF(${hasPlan(plan.dates)},VIV.STAGE(${inUse(date)},${plan.dates}),"")`),
    },
  },
  { title: "Of the animal looked at, for the picture" },
);

const last = (column: Column): string => `INDEX(${column},${count})`;
const [usedDates, usedMasses] = [inUse(picked.date), inUse(picked.mass)];
const recent = `${usedDates}>=${last(picked.date)}-${window}`;
export const now = form("now", "Now", {
  count: {
    label: "Weighings",
    value: f`IF(OR(${label}="",COUNT(${masses})=0),"",SUMPRODUCT(${its}))`,
    format: "whole",
    note: "Of the animal looked at.",
  },
  on: { label: "The last on", value: whenAny(last(picked.date)), format: "date" },
  mass: { label: "Mass", unit: "g", value: whenAny(last(picked.mass)), format: "tenth" },
  length: {
    label: "Length",
    unit: "cm",
    value: f`IF(OR(${label}="",COUNT(${lengths})=0),"",IFNA(INDEX(VIV.LATEST(${blanksKept(`${dates}`)},${blanksKept(`${lengths}`)},"",IF(${names}="","?",${names}),${label}),1,1),""))`,
    format: "tenth",
  },
  trend: {
    label: "Trend",
    unit: "g a week",
    value: once`IF(${count}=0,"",IF(SUMPRODUCT((${recent})*1)<3,"",VIV.MASSTREND(IF(${recent},${usedDates},""),IF(${recent},${usedMasses},""))))`,
    format: "hundredth",
    note: "Over the days given on the left, three weighings or more.",
  },
  growth: {
    label: "Growth",
    unit: "% a day",
    value: whenAny(
      `IF(${picked.date.at(1)}=${last(picked.date)},"",VIV.GROWTHRATE(${picked.mass.at(1)},${picked.date.at(1)},${last(picked.mass)},${last(picked.date)}))`,
    ),
    format: "thousandth",
    note: "From the first weighing to the last, share of the body gained each day.",
  },
});
