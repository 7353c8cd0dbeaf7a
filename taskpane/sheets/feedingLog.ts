import { meals } from "./feedingLogExample";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import type { RowCell } from "./shared/names";
import { mealLimitFields } from "./shared/mealLimitFields";
import { anyOutcome, isOutcome } from "./shared/outcomes";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { begins, saysSomething } from "./shared/rules";
import { words } from "./shared/running";
import { animals, day } from "./shared/scenario";
import { date, MASS, number, whole } from "./shared/takes";
import { fastWords, hasPartOfPlan, hasPlan, insideFast, winterPlan } from "./shared/winterPlan";
import { blanksKept, lastFigure } from "./shared/words";

const animal = form(
  "animal",
  "The animal, one a sheet",
  {
    label: { label: "Animal", value: animals.juniper.label },
    interval: {
      label: "Days between meals",
      value: animals.juniper.interval,
      format: "whole",
      takes: whole([1, 366], "days"),
      from: "animals.list.every",
      by: "animal.label",
    },
    ...mealLimitFields("Meal, share of body"),
    wait: {
      label: "Days if brought up",
      value: 14,
      role: "setting",
      format: "whole",
      takes: whole([1, 120], "days"),
      note: "Days to wait after a meal that was brought up. Practice.",
    },
    patience: {
      label: "Refusals to act on",
      value: 3,
      role: "setting",
      format: "whole",
      takes: whole([1, 50]),
      note: "So many refusals in a row call for a closer look. Practice.",
    },
  },
  { across: 2 },
);
const { interval, mealShare, itemShare, wait, patience } = animal;

const plan = winterPlan(2);
const { dates } = plan;
const fast = words("fast", [2, 3], fastWords(dates));

/** After a meal brought up the gut rests longer than between two others. */
const nextMeal = (date: RowCell, outcome: RowCell): string => {
  const days = `IF(AND(${isOutcome(`${outcome}`, "broughtUp")},${wait}<>""),MAX(${interval},${wait}),${interval})`;
  const planned = `VIV.NEXTMEAL(${date},${days},${dates})`;
  const free = `IF(${hasPartOfPlan(dates)},"",VIV.NEXTMEAL(${date},${days}))`;
  return f`IF(OR(${date}="",${interval}=""),"",IF(${hasPlan(dates)},${planned},${free}))`;
};

const fed = log(
  "log",
  LOG_ROWS,
  {
    date: {
      title: "Date",
      input: meals.map(({ iso }) => day(iso)),
      format: "date",
      takes: date,
      note: "Oldest first. A meal still to come has no outcome yet.",
    },
    body: {
      title: "Body,",
      unit: "g",
      input: meals.map(({ body }) => body),
      format: "tenth",
      takes: number(MASS),
      note: "Weighed before the meal.",
    },
    prey: { title: "Prey", input: meals.map(({ prey }) => prey) },
    items: { title: "Items", input: meals.map(({ items }) => items), format: "whole", takes: whole([1, 100]) },
    mass: {
      title: "Prey,",
      unit: "g",
      input: meals.map(({ mass }) => mass),
      format: "tenth",
      takes: number([0, 20_000]),
      note: "All items of the meal together.",
    },
    share: {
      title: "Share",
      each: ({ mass, body }) => once`VIV.PREYRATIO(${mass},${body})`,
      format: "percent",
      note: "Prey mass as a share of body mass.",
    },
    outcome: {
      title: "Outcome",
      input: meals.map(({ outcome }) => outcome),
      takes: anyOutcome,
    },
    notKept: {
      title: "Not kept in a row",
      each: ({ outcome }) => f`IF(${outcome}="","",VIV.REFUSALS(${blanksKept(outcome.upToHere)}))`,
      format: "whole",
      note: "Meals refused or brought up in a row, up to this one.",
    },
    next: {
      title: "Next meal",
      each: ({ date, outcome }) => nextMeal(date, outcome),
      format: "date",
      note: "Inside the fast it becomes the plan's first meal.",
    },
    standsOut: {
      title: "What stands out",
      // The gravest thing first. Inside the fast it is said as soon as anything is written in the row.
      each: ({ date, body, items, mass, outcome, notKept }) =>
        f`IF(${date}="","",IF(${insideFast(`${date}`, dates)},"Inside the fast: no food",IF(${isOutcome(`${outcome}`, "broughtUp")},"Brought up: wait, ask a vet",IF(AND(ISNUMBER(${notKept}),${patience}<>"",N(${notKept})>=${patience}),${notKept}&" not kept in a row: look",IF(OR(${body}="",${items}="",${mass}="",${itemShare}=""),"",IF(${mass}>${itemShare}*${body}*${items},"Item over "&ROUND(100*${itemShare},1)&" % of body",""))))))`,
      rules: [begins("Inside", "stop"), saysSomething("care")],
    },
  },
  { titleLines: 2 },
);
const { date: fedOn, body, items, mass, outcome, next } = fed;
const lastBody = lastFigure(`${body}`);

const now = form(
  "now",
  "Now",
  {
    notKept: {
      label: "Not kept in a row",
      value: f`IF(COUNTA(${outcome})=0,"",VIV.REFUSALS(${blanksKept(`${outcome}`)}))`,
      format: "whole",
      note: "Meals refused or brought up since the last that was kept.",
    },
    next: {
      label: "Next meal",
      value: f`IF(COUNT(${fedOn})=0,"",INDEX(${next},MATCH(MAX(${fedOn}),${fedOn},0)))`,
      format: "date",
    },
    prey: {
      label: "Prey for a meal",
      unit: "g",
      value: f`IF(OR(COUNT(${body})=0,${mealShare}=""),"",VIV.PREYMASS(${lastBody},${mealShare}))`,
      format: "tenth",
    },
    items: {
      label: "Items of that size",
      value: f`IF(OR(COUNT(${body})=0,COUNT(${items})=0,COUNT(${mass})=0,${mealShare}="",${itemShare}=""),"",VIV.PREYITEMS(${lastBody},${lastFigure(`${mass}`)}/${lastFigure(`${items}`)},${mealShare},${itemShare}))`,
      format: "whole",
      note: "Items of the size given last that make such a meal, one at least.",
    },
  },
  { across: 2 },
);
const advice = words(
  "advice",
  [1, 3],
  once`IF(${now.notKept}>=${patience},"Look at warmth, hide, weight","Below your limit of "&${patience})`,
  { rules: [begins("Look", "care")] },
);

export const feedingLog = page(
  {
    key: "feedingLog",
    name: "Feeding log",
    sentence: "What one animal was offered, what it kept, and when to feed it next.",
    cautions: ["noFoodInTheCold", "refusing", "meal", "feedTheAnimal", "noVet"],
    sources: ["practice", "definition"],
    widths: [11.5, 8, 13.5, 6.5, 8, 8, 12.5, 9.2, 11.5, 22.5],
    cautionColumns: ["I", "J"],
  },
  { A: [animal, gap(1), now], E: [plan, fast, advice] },
  gap(1),
  fed,
);
