import { form } from "./shared/form";
import { f } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import type { RowCell } from "./shared/names";
import { begins, saysSomething } from "./shared/rules";
import { animals } from "./shared/scenario";
import { date, MASS, number } from "./shared/takes";
import { insideFast, winterPlan } from "./shared/winterPlan";
import { rounded } from "./shared/words";
import { weighings } from "./weightsExample";

/** What is filled in on the sheet Weights: the animal looked at, the winter plan, and the weighings of all animals. */

export const animal = form(
  "animal",
  "The animal looked at",
  {
    label: {
      label: "Animal",
      needed: true,
      value: animals.juniper.label,
      note: "A name from the log below; the figures, the words and the picture are of this animal.",
    },
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
const { alarm } = animal;

export const plan = winterPlan(2);

type Row = Readonly<Record<"date" | "animal" | "mass", RowCell>>;
/** A figure of the same animal's weighing before this one: a row without a mass is passed over. */
const before = ({ animal, mass }: Row, column: RowCell): string =>
  `LOOKUP(2,1/((${animal.above}=${animal})*(${mass.above}<>"")),${column.above})`;
/** Empty in the first row, and while no weighing of the same animal stands above. */
const sinceBefore = ({ date, animal, mass }: Row, formula: () => string): string =>
  mass.isFirst
    ? '=""'
    : f`IF(OR(${date}="",${animal}="",${mass}=""),"",IF(SUMPRODUCT((${animal.above}=${animal})*(${mass.above}<>""))=0,"",${formula()}))`;

export const weekly = log(
  "log",
  LOG_ROWS,
  {
    date: {
      title: "Date",
      needed: "First weighing",
      input: weighings.map(({ on }) => on),
      format: "date",
      takes: date,
      note: "Oldest first. Blue: in the winter fast.",
      rules: [{ when: (own) => `=AND(ISNUMBER(${own}),${insideFast(`${own}`, plan.dates)})`, look: "cold", over: 3 }],
    },
    animal: { title: "Animal", needed: "Its name in the log", input: weighings.map(({ animal }) => animal) },
    mass: { title: "Mass", unit: "g", input: weighings.map(({ mass }) => mass), format: "tenth", takes: number(MASS) },
    length: {
      title: "Length",
      unit: "cm",
      input: weighings.map(({ length }) => length),
      format: "tenth",
      takes: number([1, 1000]),
      note: "From snout to tail tip, or to the vent: always the same way.",
    },
    change: {
      title: "Change",
      unit: "g",
      each: (row) => sinceBefore(row, () => `${row.mass}-${before(row, row.mass)}`),
      format: "tenth",
      note: "Since the same animal's last weighing.",
    },
    share: {
      title: "Change",
      each: (row) => sinceBefore(row, () => `-VIV.MASSLOSS(${before(row, row.mass)},${row.mass})`),
      format: "percent",
      note: "Since the last weighing; a loss is negative.",
    },
    daily: {
      title: "% a day",
      each: (row) =>
        sinceBefore(
          row,
          () =>
            `IF(${row.date}=${before(row, row.date)},"",VIV.GROWTHRATE(${before(row, row.mass)},${before(row, row.date)},${row.mass},${row.date}))`,
        ),
      format: "thousandth",
      note: "Growth since the last weighing.",
    },
    seen: {
      title: "Seen",
      input: weighings.map(({ seen }) => seen),
      note: "Begin with Laid or Birth on the day of either: the loss is told as such.",
    },
    standsOut: {
      title: "What stands out",
      skip: 1,
      wide: 2,
      // A loss comes first: the plan is of one winter, and whoever does not follow it is weighed in its days too.
      each: ({ date, animal, mass, share, seen }) =>
        f`IF(OR(${date}="",${mass}=""),"",IF(${animal}="","Whose weighing? Name the animal.",IF(NOT(ISNUMBER(${mass})),"No number: not counted",IF(AND(N(${alarm})>0,N(${share})<=-N(${alarm})),IF(OR(LEFT(${seen},4)="Laid",LEFT(${seen},4)="Birt"),"Laying or birth: ","Lost ")&${rounded(`-100*${share}`)}&IF(${insideFast(`${date}`, plan.dates)}," % in the fast"," % since the last"),IF(${insideFast(`${date}`, plan.dates)},"In the fast: see the Winter log",IF(AND(ISNUMBER(${share}),N(${alarm})=0),"Not judged: no limit of loss",""))))))`,
      note: "In the fast the Winter log holds a loss against what you agreed with your vet. An animal that does not follow the plan has no fast.",
      rules: [begins("In", "note"), saysSomething("care")],
    },
  },
  { grows: true },
);
