import { BROUGHT_UP_WAIT } from "../../functions/rules/limits";
import { form } from "./shared/form";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { mealLimitFields } from "./shared/mealLimitFields";
import { animals, wintersOf, type Animal } from "./shared/scenario";
import { oneOf, whole } from "./shared/takes";
import { followed, winterPlans } from "./shared/winterPlans";

/** What the Feeding log goes by: the limits of a meal, the winter plans, and the animals with the days between their meals. */

const list: readonly Animal[] = Object.values(animals);

export const limits = form(
  "limits",
  "Your limits (practice)",
  {
    ...mealLimitFields("Meal, share of body"),
    least: {
      label: "Days between, least",
      value: 5,
      role: "setting",
      format: "whole",
      takes: whole([1, 120], "days"),
      note: "A meal sooner after the last is flagged. Practice.",
    },
    wait: {
      label: "Days if brought up",
      value: BROUGHT_UP_WAIT,
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

export const plans = winterPlans(2, [1, 2, 2, 1]);

export const who = log(
  "who",
  12,
  {
    label: { title: "The animals", needed: "An animal", wide: 2, joined: true, input: list.map(({ label }) => label) },
    every: {
      title: "Every",
      input: list.map(({ interval }) => interval),
      format: "whole",
      takes: whole([1, 366], "days"),
      note: "Days from meal to meal.",
      from: "animals.list.every",
      by: "who.label",
    },
    winters: {
      title: "Winters",
      input: list.map(wintersOf),
      takes: oneOf("yes", "no"),
      from: "animals.list.winters",
      by: "who.label",
      note: "Whether it fasts by a winter plan. Blank: it is held to its plan.",
    },
    plan: {
      title: "Winter plan",
      wide: 2,
      joined: true,
      input: list.map((one) => (wintersOf(one) === "yes" ? "Cooling plan" : null)),
      takes: plans.takes,
      from: "animals.list.plan",
      by: "who.label",
      note: "Its plan's name, from the winter plans below. Blank: the only one there is; of several it is asked.",
    },
    follows: {
      title: "Plan followed",
      spilled: ({ label, plan, winters }) => f`IF(COUNTA(${label})=0,"",${followed(plans, label, plan, winters)})`,
      note: "Empty where it does not winter.",
    },
  },
  { grows: true },
);
