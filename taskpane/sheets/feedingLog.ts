import { limits, plans, who } from "./feedingLogInputs";
import { datesOf, fed, isKeptWarm, isToWinter, named, planOf } from "./feedingLogMeals";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { form } from "./shared/form";
import { f } from "./shared/formula";
import type { Cell, Column } from "./shared/names";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { animals } from "./shared/scenario";
import { isPlan, ofPlan } from "./shared/winterPlans";
import { blanksKept, isoText } from "./shared/words";

const { mealShare, itemShare } = limits;

/** The last entry of a column for the animal that is looked at. */
const last = (column: Column, looked: Cell): string =>
  `IFNA(INDEX(VIV.LATEST(${blanksKept(`${fed.date}`)},${blanksKept(`${column}`)},"",${named(fed.animal)},${looked}),1,1),"")`;
const once = (looked: Cell, formula: string): string =>
  f`IF(OR(${looked}="",COUNTIF(${fed.animal},${looked})=0),"",${formula})`;

/** A date of a plan by its name; empty where it is not there. */
const dayOf = (key: "lastMeal" | "firstMeal", plan: Cell): string => {
  const day = ofPlan(plans, `${plan}`, plans.each(key));
  return f`IF(N(${day})=0,"",${day})`;
};

const now = form(
  "now",
  "The animal looked at",
  {
    label: {
      label: "Animal",
      value: animals.juniper.label,
      note: "A name from the log below; all here is of this animal.",
    },
    next: { label: "Next meal", value: ({ label }) => once(label, last(fed.next, label)), format: "date" },
    body: { label: "Body at that meal, g", value: ({ label }) => once(label, last(fed.body, label)), format: "tenth" },
    prey: {
      label: "Prey for a meal, g",
      value: ({ body }) => f`IF(OR(${body}="",${mealShare}=""),"",VIV.PREYMASS(${body},${mealShare}))`,
      format: "tenth",
    },
    items: {
      label: "Items of that size",
      value: ({ label, body }) =>
        once(
          label,
          `IF(OR(${body}="",${mealShare}="",${itemShare}="",N(${last(fed.mass, label)})=0,N(${last(fed.items, label)})=0),"",VIV.PREYITEMS(${body},${last(fed.mass, label)}/${last(fed.items, label)},${mealShare},${itemShare}))`,
        ),
      format: "whole",
      note: "Items of the size given last that make such a meal, one at least.",
    },
    size: { label: "The size given last", value: ({ label }) => once(label, last(fed.prey, label)) },
    notKept: {
      label: "Not kept in a row",
      value: ({ label }) => once(label, last(fed.notKept, label)),
      format: "whole",
      note: "Meals refused or brought up since the last that was kept.",
    },
    plan: {
      label: "Winter plan",
      value: ({ label }) => f`IF(${label}="","",${planOf(label)})`,
      rules: [{ when: (own) => `=AND(${own}<>"",NOT(${isPlan(plans, `${own}`)}))`, look: "care" }],
    },
    lastMeal: { label: "Last meal before it", value: ({ plan }) => dayOf("lastMeal", plan), format: "date" },
    firstMeal: { label: "First meal after it", value: ({ plan }) => dayOf("firstMeal", plan), format: "date" },
  },
  { across: 2 },
);
const { label, plan, lastMeal, firstMeal } = now;

/** The level and words of its last meal in the log, or of one still to come, whole. */
const said = words(
  "said",
  [3, 8],
  f`IF(${label}="","Whose meals? Name the animal to be looked at.",IF(COUNTIF(${fed.animal},${label})=0,"No meal of that animal in the log.",${last(fed.level, label)}&": "&${last(fed.words, label)}))`,
  { title: "Its last meal in the log, or the one to come", rules: LEVELS },
);
const counted = words(
  "counted",
  [1, 8],
  f`IF(COUNTA(${fed.date})=0,"",COUNTIF(${fed.level},"stop")&" rows of the log say stop, "&COUNTIF(${fed.level},"care")&" say care, of all animals.")`,
);
const dates = `COUNT(${datesOf(plan)})`;
/** The fast of the animal looked at: which it is, that there is none, or what is missing, which must not pass for either. */
const fast = words(
  "fast",
  [4, 4],
  f`IF(${label}="","",IF(AND(${plan}<>"",NOT(${isPlan(plans, `${plan}`)})),${plan}&" No food until that is known.",IF(${dates}=${PLAN_ROWS.length},"No food after "&${isoText(`${lastMeal}`)}&" until "&${isoText(`${firstMeal}`)}&", by "&${plan}&".",IF(${plan}<>"","A date of its plan is missing: no next meal is worked out.",IF(${isToWinter(label)},"It winters, but has no plan: no next meal is worked out.",IF(${isKeptWarm(label)},"It does not winter: it has no fast.","No plan: no fast is known here."))))))`,
  { title: "Its winter fast" },
);

export const feedingLog = page(
  {
    key: "feedingLog",
    name: "Feeding log",
    sentence: "What each animal was offered, what it kept, whether the next meal is fit, and when it is due.",
    cautions: ["noFoodInTheCold", "refusing", "meal", "feedTheAnimal", "noVet"],
    sources: ["practice", "ownLimit", "definition"],
    widths: [11.5, 9.5, 12.5, 5.8, 7, 7.5, 7.5, 11.5, 6.2, 29, 26, 26, 11.5, 8, 9, 8, 8, 11.5, 8, 30, 16, 8, 30],
    inView: [fed],
    cautionColumns: ["I", "J"],
    printTo: "M",
  },
  said,
  counted,
  gap(1),
  { A: [now], E: [fast] },
  gap(1),
  { A: [limits], E: [who] },
  gap(1),
  plans,
  gap(1),
  fed,
);
