import { cited } from "../../functions/rules/cited";
import { NO_PLAN } from "../../functions/rules/meal";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { meals, NIGHT } from "./feedingLogExample";
import { limits, plans, who } from "./feedingLogInputs";
import { f } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { type Column, type RowCell } from "./shared/names";
import { anyOutcome, isOutcome } from "./shared/outcomes";
import { says } from "./shared/rules";
import { day } from "./shared/scenario";
import { date, MASS, number, whole } from "./shared/takes";
import { isPlan, ofPlan, onlyPlan } from "./shared/winterPlans";
import { blanksKept } from "./shared/words";

/** The log of meals: what is filled in, what is said of each meal, and behind it the figures that this rests on. */

const { least, wait, patience, mealShare, itemShare, leastShare } = limits;

/** Whose rows a column's are: a row without a name is nobody's, and must not spoil the others. */
export const named = (animals: unknown): string => `IF(${String(animals)}="","?",${String(animals)})`;
/** The last entry of one animal on or before a day, and its day. */
const latestOf = (days: Column, values: Column, on: string, animals: Column, animal: RowCell): string =>
  `VIV.LATEST(${blanksKept(`${days}`)},${blanksKept(`${values}`)},${on},${named(animals)},${animal})`;

const isListed = (animal: unknown): string => `COUNTIF(${who.label},${String(animal)})>0`;
/**
 * The plan that an animal follows: its name, nothing, or in words what has to be said first. One that is not in the list is
 * held to the only plan there is.
 */
export const planOf = (animal: unknown): string =>
  `IF(${isListed(animal)},INDEX(${who.follows},MATCH(${String(animal)},${who.label},0))&"",${onlyPlan(plans, "It is not in the list of animals: which winter plan it follows is not known.")})`;
/** The six dates of a plan by its name. */
export const datesOf = (plan: unknown): string => ofPlan(plans, String(plan), plans.dates);

/** What an animal says of its winter, yes or no, inside a formula. */
const saysOfWinter = (animal: unknown, word: "yes" | "no"): string =>
  `COUNTIFS(${who.label},${String(animal)},${who.winters},"${word}")>0`;
/** Whether an animal winters by its own word. */
export const isToWinter = (animal: unknown): string => saysOfWinter(animal, "yes");
/** Whether it does not. */
export const isKeptWarm = (animal: unknown): string => saysOfWinter(animal, "no");

const every = (animal: RowCell): string => `INDEX(${who.every},MATCH(${animal},${who.label},0))`;

type Row = Readonly<
  Record<"date" | "animal" | "items" | "mass" | "body" | "night" | "atLeast" | "ate" | "plan" | "days", RowCell>
>;
/** Where a mass is not filled in, one that says nothing stands in: the fast, the days and the nights are judged all the same. */
const check = ({ date, animal, items, mass, body, night, atLeast, ate, plan, days }: Row): string => {
  const missing = `OR(${body}="",${items}="",${mass}="")`;
  const called = (withPlan: string): string => {
    const rest = `${withPlan},IF(N(${atLeast})=0,"",${ate}),IF(N(${atLeast})=0,"",${atLeast}),IF(${night}="","",${night}),"",${date},IF(${mealShare}="","",${mealShare}),IF(${itemShare}="","",${itemShare})`;
    return `IF(${missing},VIV.MEALCHECK(${date},100,1,1,${rest}),VIV.MEALCHECK(${date},${body},${mass},${mass}/${items},${rest},${blanksKept(`${leastShare}`)}))`;
  };
  return f`IF(OR(${date}="",${animal}=""),"",IF(${days}=${PLAN_ROWS.length},${called(datesOf(plan))},${called('""')}))`;
};

/** After a meal brought up the gut rests longer than between two others. */
const nextMeal = ({
  date,
  animal,
  outcome,
  plan,
  days,
}: Record<"date" | "animal" | "outcome" | "plan" | "days", RowCell>): string => {
  const apart = `IF(AND(${isOutcome(`${outcome}`, "broughtUp")},${wait}<>""),MAX(${every(animal)},${wait}),${every(animal)})`;
  // A fast is meant, and cannot be known.
  const unknown = `IF(${plan}="",${isToWinter(animal)},${days}<>${PLAN_ROWS.length})`;
  return f`IF(OR(${date}="",${animal}="",COUNTIFS(${who.label},${animal},${who.every},">0")=0,${unknown}),"",IF(${days}=${PLAN_ROWS.length},VIV.NEXTMEAL(${date},${apart},${datesOf(plan)}),VIV.NEXTMEAL(${date},${apart})))`;
};

type Said = Readonly<Record<"date" | "animal" | "outcome" | "notKept" | "rest", RowCell>>;
/** Whether it was given a meal on that day already, as two do who look after one animal. */
const isSecond = ({ date, animal, rest }: Said): string =>
  `COUNTIFS(${date.upToHere},${date},${animal.upToHere},${animal},${rest.upToHere},">0")>N(${rest}>0)*ISNUMBER(${rest})`;
/** What is said of an outcome, before or after what is said of the meal. */
const ofOutcome = (row: Said): string => {
  const { outcome, notKept } = row;
  return `IF(${isSecond(row)},"Fed on that day before: shares are of each meal alone. ","")&IF(${isOutcome(`${outcome}`, "broughtUp")},"Brought up: wait, ask a reptile vet. ","")&IF(AND(ISNUMBER(${notKept}),${patience}<>"",N(${notKept})>=${patience}),${notKept}&" not kept in a row: look at warmth, hide, weight. ","")`;
};

/** The words of a check without what its heading says once for all rows, and what is no news of an animal that is kept warm. */
const shortly = (told: RowCell, animal: RowCell): string => {
  const words = `SUBSTITUTE(${told}," (${cited.practice})","")`;
  return `IF(${isKeptWarm(animal)},SUBSTITUTE(${words}," ${NO_PLAN}",""),${words})`;
};

export const fed = log(
  "log",
  LOG_ROWS,
  {
    date: {
      title: "Date",
      input: meals.map(({ iso }) => day(iso)),
      format: "date",
      takes: date,
      note: "A meal still to come has no outcome yet: it is judged all the same.",
    },
    animal: { title: "Animal", input: meals.map(({ animal }) => animal) },
    prey: { title: "Prey", input: meals.map(({ prey }) => prey), note: "The name of its size." },
    items: { title: "Items", input: meals.map(({ items }) => items), format: "whole", takes: whole([1, 100]) },
    mass: {
      title: "Prey,",
      unit: "g",
      input: meals.map(({ mass }) => mass),
      format: "tenth",
      takes: number([0.01, 20_000]),
      note: "All items of the meal together.",
    },
    body: {
      title: "Body,",
      unit: "g",
      input: meals.map(({ body }) => body),
      format: "tenth",
      takes: number(MASS),
      note: "Weighed before the meal.",
    },
    night: {
      title: "Night,",
      unit: "°C",
      input: meals.map(() => NIGHT),
      format: "tenth",
      takes: number([-30, 60]),
      note: "The coolest night in the days after it.",
    },
    outcome: { title: "Outcome", input: meals.map(({ outcome }) => outcome), takes: anyOutcome },
    level: {
      title: "Check",
      each: ({ date, animal, outcome, notKept, rest, found, unclear }) =>
        f`IF(${date}="","",IF(${animal}="","care",IF(${unclear}<>"","stop",IF(OR(${found}="stop",${found}="",LEN(${ofOutcome({ date, animal, outcome, notKept, rest })})=0),${found},"care"))))`,
      note: "stop: do not give this meal. care: know why you do. note: good to know.",
      rules: (["stop", "care", "note"] as const).map((level) => says(level, level)),
    },
    words: {
      title: "What stands out (practice or your own limit)",
      wide: 3,
      joined: true,
      each: ({ date, animal, items, mass, body, outcome, notKept, rest, found, told, unclear }) => {
        const kept = ofOutcome({ date, animal, outcome, notKept, rest });
        return f`IF(${date}="","",IF(${animal}="","Whose meal is it? Name the animal.",IF(${unclear}="","",${unclear}&" No food until that is known. ")&IF(${found}="stop","",${kept})&IF(OR(${body}="",${items}="",${mass}=""),"Body, items or prey mass is blank: their shares are not judged. ","")&IF(AND(${unclear}<>"",${found}="note"),"",${shortly(told, animal)})&IF(${found}="stop"," "&${kept},"")&IF(COUNTIFS(${who.label},${animal},${who.every},">0")=0," Not in the list of animals: no next meal is worked out.","")))`;
      },
    },
    next: {
      title: "Next meal",
      each: nextMeal,
      format: "date",
      note: "Inside the fast it is the plan's first meal.",
    },
    share: {
      title: "Share",
      each: ({ mass, body }) => f`IF(OR(${mass}="",${body}=""),"",VIV.PREYRATIO(${mass},${body}))`,
      format: "percent",
      note: "Prey mass as a share of body mass.",
    },
    notKept: {
      title: "Not kept",
      each: ({ animal, outcome }) =>
        f`IF(OR(${animal}="",${outcome}=""),"",VIV.REFUSALS(${blanksKept(outcome.upToHere)},${named(animal.upToHere)},${animal}))`,
      format: "whole",
      note: "Meals of this animal refused or brought up in a row, up to this one.",
    },
    rest: {
      title: "Days to rest",
      each: ({ date, outcome }) =>
        f`IF(OR(${date}="",${outcome}=""),"",IF(${isOutcome(`${outcome}`, "broughtUp")},MAX(N(${wait}),N(${least})),IF(${isOutcome(`${outcome}`, "taken")},N(${least}),"")))`,
      format: "whole",
      note: "Days without a meal that this one asks for.",
    },
    atLeast: {
      title: "Rest before",
      each: ({ date, animal, rest }) =>
        f`IF(OR(${date}="",${animal}=""),"",IFNA(${latestOf(date.whole, rest.whole, `${date}-1`, animal.whole, animal)},""))`,
      format: "whole",
      note: "Days of rest after this animal's meal before.",
    },
    ate: { title: "Meal before", covered: true, format: "date" },
    found: { title: "Level", each: check },
    told: { title: "Words", covered: true },
    plan: { title: "Winter plan", each: ({ animal }) => f`IF(${animal}="","",${planOf(animal)})` },
    days: {
      title: "Its dates",
      each: ({ plan }) => f`IF(${plan}="","",COUNT(${datesOf(plan)}))`,
      format: "whole",
      note: "How many of the six are there.",
    },
    unclear: {
      title: "To be said",
      // As on Today: while the fast of an animal that winters is not known, no meal is right.
      each: ({ animal, plan, days }) =>
        f`IF(${animal}="","",IF(${plan}="",IF(${isToWinter(animal)},"It winters, but has no plan.",""),IF(${isPlan(plans, `${plan}`)},IF(${days}=${PLAN_ROWS.length},"","A date of its winter plan is missing or cannot be read."),${plan})))`,
      note: "What has to be said of its plan before it is fed.",
    },
  },
  { titleLines: 2, rowLines: 2, grows: true },
);
