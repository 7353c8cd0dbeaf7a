import { eaters, moves, prey } from "./preyStockExample";
import { form } from "./shared/form";
import { once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { mealLimitFields } from "./shared/mealLimitFields";
import { namedColumn, type Cell } from "./shared/names";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { begins, says, saysSomething } from "./shared/rules";
import { words } from "./shared/running";
import { day, TODAY } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { fastWords, hasPlan, winterPlan } from "./shared/winterPlan";
import { rounded } from "./shared/words";

const time = form("time", "The time", {
  from: { label: "From", needed: true, value: TODAY + 1, format: "date", takes: date },
  until: {
    label: "Until",
    needed: true,
    value: day("2027-06-30"),
    format: "date",
    takes: date,
    note: "Ten years at most.",
  },
  ...mealLimitFields("Meal of body mass"),
});
const { from, until, mealShare, itemShare, leastShare } = time;
const grow = words(
  "grow",
  [3, 2],
  "Bodies grow, young ones fastest: buy for two months at a time, and look again at the sizes.",
);

const plan = winterPlan(3, 2);
const { dates } = plan;
const fast = words("fast", [2, 5], fastWords(dates));

const [moved, into, out] = ["size", "in", "out"].map((one) => namedColumn(`log.${one}`));
const [eaten, toCome] = ["size", "toCome"].map((one) => namedColumn(`eaters.${one}`));

const sizes = log(
  "sizes",
  8,
  {
    size: { title: "Size of prey", needed: "A size of prey", input: prey.map(([size]) => size) },
    toDo: {
      title: "What to do",
      each: ({ spare, toCome: due }) => once`IF(${due}=0,"None needed",IF(${spare}<0,"Buy "&-${spare},"Enough"))`,
      rules: [begins("Buy", "care"), says("Enough", "good")],
    },
    grams: {
      title: "g each",
      needed: "g each",
      input: prey.map(([, mass]) => mass),
      format: "tenth",
      takes: number([0.1, 5000], "g"),
    },
    stock: {
      title: "In stock",
      each: ({ size }) => `=IF(${size}="","",SUMIFS(${into},${moved},${size})-SUMIFS(${out},${moved},${size}))`,
      format: "whole",
      note: "What went into the freezer less what came out, from the log below.",
    },
    toCome: {
      title: "To come",
      each: ({ size }) => `=IF(${size}="","",SUMIFS(${toCome},${eaten},${size}))`,
      format: "whole",
      note: "Items of this size still to be fed.",
    },
    spare: { title: "Spare", each: ({ stock, toCome: due }) => once`${stock}-${due}`, format: "whole" },
  },
  { grows: true },
);

/** The mass of one item of a size. */
const itemMass = (size: Cell): string => `INDEX(${sizes.grams},MATCH(${size},${sizes.size},0))`;
const isKnown = (size: Cell): string => `COUNTIF(${sizes.size},${size})>0`;

const eating = log(
  "eaters",
  15,
  {
    who: { title: "Who eats", needed: "Who eats", input: eaters.map(({ who }) => who) },
    size: { title: "Size of prey", input: eaters.map(({ size }) => size), note: "As it is called in the table above." },
    many: { title: "Animals", input: eaters.map(({ many }) => many), format: "whole", takes: whole([1, 500]) },
    body: {
      title: "Body",
      unit: "g",
      input: eaters.map(({ body }) => body),
      format: "tenth",
      takes: number(MASS),
      from: "animals.list.mass",
      by: "eaters.who",
    },
    days: {
      title: "Days",
      from: "animals.list.every",
      by: "eaters.who",
      input: eaters.map(({ days }) => days),
      format: "whole",
      takes: whole([1, 366], "days"),
      note: "Between two meals.",
    },
    winters: {
      title: "Winters",
      from: "animals.list.winters",
      by: "eaters.who",
      input: eaters.map(({ winters }) => winters),
      takes: oneOf("yes", "no"),
      note: "Whether it fasts by the plan above; one of another plan has other meals than are counted here.",
    },
    items: {
      title: "Items",
      each: ({ size, body }) =>
        `=IF(OR(${size}="",${body}="",${mealShare}="",${itemShare}=""),"",IF(NOT(${isKnown(size)}),"",IF(${itemMass(size)}="","",VIV.PREYITEMS(${body},${itemMass(size)},${mealShare},${itemShare}))))`,
      format: "whole",
      note: "Each meal, for one animal.",
    },
    meals: {
      title: "Meals",
      each: ({ size, days, winters }) =>
        `=IF(OR(${size}="",${days}="",${from}="",${until}=""),"",IF(AND(${winters}="yes",${hasPlan(dates)}),VIV.MEALCOUNT(${from},${until},${days},${dates}),VIV.MEALCOUNT(${from},${until},${days})))`,
      format: "whole",
      note: "For one animal, the first on the day From.",
    },
    toCome: {
      title: "To come",
      each: ({ many, items, meals }) => once`${many}*${items}*${meals}`,
      format: "whole",
      note: "Items, for all animals of the row.",
    },
    standsOut: {
      title: "What stands out",
      skip: 1,
      wide: 2,
      each: ({ size, body, winters }) => {
        const share = `N(${itemMass(size)})/N(${body})`;
        const outgrown = `IF(AND(${leastShare}<>"",${share}<N(${leastShare})),"Item "&${rounded(`100*${share}`)}&" % of body: outgrown","")`;
        const tooBig = `IF(N(${itemMass(size)})>N(${body})*N(${itemShare}),"Item "&${rounded(`100*${share}`, 0)}&" % of body: too big",${outgrown})`;
        return `=IF(${size}="","",IF(NOT(${isKnown(size)}),"No such size above",IF(AND(${winters}="yes",NOT(${hasPlan(dates)})),"Winters, but no whole plan",IF(OR(${body}="",${itemShare}="",N(${itemMass(size)})=0),"",${tooBig}))))`;
      },
      rules: [saysSomething("care")],
    },
  },
  { grows: true },
);

const freezer = log(
  "log",
  LOG_ROWS,
  {
    date: { title: "Freezer log, date", input: moves.map(({ iso }) => day(iso)), format: "date", takes: date },
    size: { title: "Size of prey", input: moves.map(({ size }) => size) },
    in: { title: "In", input: moves.map((move) => move.into ?? null), format: "whole", takes: whole([0, 10_000]) },
    out: { title: "Out", input: moves.map((move) => move.out ?? null), format: "whole", takes: whole([0, 10_000]) },
    sign: {
      title: "Sign",
      each: ({ size }) => `=IF(${size}="","",IF(COUNTIF(${sizes.size},${size})=0,"No such size above",""))`,
      rules: [{ ...saysSomething("care"), over: 3 }],
    },
  },
  { grows: true },
);

export const preyStock = page(
  {
    key: "preyStock",
    name: "Prey stock",
    sentence: "Meals still to come, by size of prey, and what the freezer must hold for them.",
    cautions: ["noFoodInTheCold", "meal", "noVet"],
    sources: ["practice", "definition"],
    widths: [15.5, 13.5, 7.5, 10, 7, 8, 7, 7.5, 8.5, 1, 12, 12],
    cautionColumns: ["K", "L"],
  },
  { A: [time, gap(1), grow], D: [plan, fast] },
  gap(1),
  sizes,
  gap(2),
  eating,
  gap(2),
  freezer,
);
