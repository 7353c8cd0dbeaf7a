import { isoOf } from "../dates";
import { choice, columns, date, defineFunction, optional, plan, quantity, text, type Given } from "../define";
import { interval } from "../feeding/shared/mealParameters";
import { mealAfter } from "../feeding/shared/meals";
import { Problem } from "../problem";
import { care, phaseOn } from "../rules/stages";
import { figure } from "../shared/figure";
import { insideFast, orderedPlan, stageOn, type Plan } from "../shared/plan";

/** Days from a first meal after which the next winter wants a plan of its own. */
const PLAN_IS_OVER = 183;
/** Stages in which the animal is in its box and the box may be shut. */
const IN_THE_BOX = ["Cooling", "Cold", "Warming"];

const parameters = {
  today: date("Today"),
  plan: optional({ ...plan("Winter plan: its six dates; a blank is asked for"), blank: "keep" as const }, "asks"),
  lastMeal: optional(date("Day of the last meal that was taken"), "asks"),
  interval: optional(interval, "asks"),
  weighedOn: optional(date("Day of the last weighing"), "asks"),
  weighEvery: optional(quantity("day", "Days from one weighing to the next", [1, 366]), "asks"),
  openedOn: optional(date("Day on which the box was last opened"), "asks in the cold"),
  openEvery: optional(quantity("day", "Days between openings, as OPENEVERY answers", [0.001, 366]), "asks in the cold"),
  winters: optional(choice('"yes" or "no": whether it follows the winter plan', ["yes", "no"]), "asks"),
  box: optional(
    choice('"shut" or "vented": a vented box is not asked for its openings', ["shut", "vented"]),
    "asks in the cold",
  ),
  question: optional(
    text("What has to be settled first, such as which of several plans it follows; not where it does not winter"),
    "nothing",
  ),
};

/** A plan comes with its blanks: a date that is missing is asked for. */
type Asked = Omit<Given<typeof parameters>, "plan"> & {
  readonly plan: readonly (number | undefined)[] | undefined;
};

/** The plan that is followed, none where the animal does not winter, or in words what has to be said first. */
const followed = ({ plan, winters, question }: Asked): Plan | "none" | { readonly ask: string } => {
  if (winters === "no") return "none";
  if (question !== undefined) return { ask: question };
  if (!plan) {
    return {
      ask:
        winters === "yes"
          ? "It winters, but has no plan: give its six dates."
          : "Does it winter? Say yes and give its plan, or no.",
    };
  }
  const dates = plan.filter((day) => day !== undefined);
  if (dates.length < plan.length) return { ask: "A date of its winter plan is missing: give all six." };
  const ordered = orderedPlan(dates);
  return ordered instanceof Problem
    ? { ask: "The dates of its winter plan are out of order: mend the plan." }
    : ordered;
};

/** The next meal, or in words why it is not known. In the fast it is the plan's first, whatever was eaten when. */
const nextMeal = ({ today, lastMeal, interval }: Asked, plan: Plan | undefined): number | string => {
  if (plan && insideFast(plan, today)) return plan.firstMeal;
  if (lastMeal === undefined) return "When did it last eat? The last meal is not given.";
  if (lastMeal > today) return `The last meal, ${isoOf(lastMeal)}, lies after today: put it right.`;
  // The first meal after the fast is due whatever the days between meals are.
  if (plan && today >= plan.firstMeal && lastMeal < plan.firstMeal) return plan.firstMeal;
  if (interval === undefined) return "How often is it fed? The days between meals are not given.";
  return mealAfter(lastMeal, interval, plan);
};

/** What a reminder says of a thing that is done every so many days; nothing while it is not due. */
const reminder = (
  today: number,
  doneOn: number | undefined,
  every: number | undefined,
  words: { readonly todo: string; readonly never: string; readonly open: string },
): string[] => {
  if (every === undefined) return [words.open];
  if (doneOn === undefined) return [words.never];
  if (doneOn > today) return [`${words.todo}: the last, ${isoOf(doneOn)}, lies after today.`];
  return today - doneOn >= every ? [`${words.todo}: last ${isoOf(doneOn)}.`] : [];
};

const overdue = (given: Asked, meal: number | undefined, stage: string): string => {
  const { today, weighedOn, weighEvery, openedOn, openEvery, box } = given;
  const isVented = box === "vented";
  // A vented box breathes by itself: it is spoken of only where the keeper gives days for it.
  const isBoxed = openEvery !== undefined || (!isVented && (IN_THE_BOX.includes(stage) || openedOn !== undefined));
  const all = [
    ...(meal !== undefined && meal < today ? [`Meal: due since ${isoOf(meal)}.`] : []),
    ...(openEvery !== undefined && openEvery < 1 && !isVented
      ? [`The box needs vents: shut, it must be opened every ${figure(openEvery * 24, "hour")}.`]
      : []),
    ...(isBoxed
      ? reminder(today, openedOn, openEvery, {
          todo: "Open the box",
          never: "Open the box: no opening is noted.",
          open: `Box: ${box === undefined ? "shut or vented, and " : ""}opened how often?`,
        })
      : []),
    ...reminder(today, weighedOn, weighEvery, {
      todo: "Weigh",
      never: "Weigh: no weighing is noted.",
      open: "Weighed how often?",
    }),
  ];
  return all.length === 0 ? "Nothing." : all.join(" ");
};

/**
 * The words of each stage stand in rules/stages.ts. What is not given is asked for, first of all whether the animal
 * winters: until that is known no meal is told. A meal that was given inside the fast is told as long as the fast lasts.
 */
export const due = defineFunction({
  name: "DUE",
  summary: "An animal's day in one row: stage, what to do, what never to do, next meal, and what is overdue.",
  parameters,
  result: columns(
    { name: "Stage", unit: "text", about: "The stage, as STAGE answers; blank while that is not known" },
    { name: "Do", unit: "text", about: "What to do today" },
    { name: "Never", unit: "text", about: "What never to do today" },
    { name: "Next meal", unit: "date", about: "Day of the next meal; blank while that is not known" },
    { name: "Overdue", unit: "text", about: "What should have been done, or is not followed" },
  ),
  sources: ["practice"],
  cautions: ["noFoodInTheCold", "feedTheAnimal", "noVet"],
  examples: [
    {
      given: [
        "2026-12-15",
        [["2026-09-21"], ["2026-10-05"], ["2026-11-16"], ["2027-02-08"], ["2027-03-22"], ["2027-03-29"]],
        "2026-09-14",
        7,
        "2026-12-07",
        14,
        "2026-12-07",
        7,
        "yes",
      ],
      gives: [
        [
          "Cold",
          "No food until 2027-03-29. Read the thermometer. Fresh water, air the box. Weigh when due.",
          "No food. No soaking. No warming for a day and back.",
          "2027-03-29",
          "Open the box: last 2026-12-07.",
        ],
      ],
      within: 0,
    },
    {
      given: ["2026-12-15", null, "2026-12-08", 7, "2026-12-08", 28, null, null, "no"],
      gives: [
        [
          "Feeding",
          "Feed today, as usual. Fresh water.",
          "No cooling: it follows no winter plan. No meal above your limit. No meal when the nights are too cool to digest.",
          "2026-12-15",
          "Nothing.",
        ],
      ],
      within: 0,
    },
  ],
  calculate(given) {
    const { today, lastMeal, winters } = given;
    const found = followed(given);
    if (typeof found === "object" && "ask" in found) {
      return ["", found.ask, "No food and no cooling until that is known.", "", overdue(given, undefined, "")];
    }
    const plan = found === "none" ? undefined : found;
    const stage = plan ? stageOn(plan, today) : "Feeding";
    const { food, toDo, never } = care[plan ? phaseOn(plan, today, lastMeal) : "Feeding"];
    const next = nextMeal(given, plan);

    const isFast = plan !== undefined && insideFast(plan, today);
    const words: string[] = [];
    if (isFast) {
      words.push(`No food until ${isoOf(plan.firstMeal)}.`);
      if (lastMeal !== undefined && lastMeal <= today && insideFast(plan, lastMeal)) {
        words.push(`Fed in the fast, on ${isoOf(lastMeal)}: call your vet before it gets colder.`);
      }
    } else if (typeof next === "string") words.push(next);
    else if (next > today) {
      if (
        plan &&
        lastMeal !== undefined &&
        today <= plan.lastMeal &&
        lastMeal < plan.lastMeal &&
        next > plan.lastMeal
      ) {
        words.push(`The plan's last meal, ${isoOf(plan.lastMeal)}, is left out: it ate on ${isoOf(lastMeal)}.`);
      }
      words.push(`No meal is due until ${isoOf(next)}.`);
    } else words.push(`Feed ${next < today ? `(due since ${isoOf(next)})` : "today"}, ${food}.`);
    words.push(toDo);
    if (plan && winters === undefined) words.push("Does it winter? Say yes or no.");
    if (plan && today >= plan.firstMeal + PLAN_IS_OVER) words.push("This plan is over: make the next winter's.");

    return [
      stage,
      words.join(" "),
      plan ? never : `No cooling: it follows no winter plan. ${never}`,
      typeof next === "string" ? "" : next,
      overdue(given, isFast || typeof next === "string" ? undefined : next, stage),
    ];
  },
});
