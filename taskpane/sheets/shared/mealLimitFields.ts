import { LEAST_ITEM_SHARE } from "../../../functions/rules/limits";
import type { Field } from "./form";
import { number } from "./takes";

/** The two limits of a meal: the whole meal and its heaviest item, shares of body mass. Practice, the keeper's to change. */
export const mealLimitFields = (mealLabel: string) =>
  ({
    mealShare: {
      label: mealLabel,
      value: 0.1,
      role: "setting",
      format: "percent",
      takes: number([0.01, 1]),
      note: "Prey mass of a whole meal as a share of body mass: 10 % is 0.1. Practice.",
    },
    itemShare: {
      label: "Heaviest item",
      value: 0.15,
      role: "setting",
      format: "percent",
      takes: number([0.01, 1]),
      note: "Heaviest single item as a share of body mass. Practice.",
    },
    leastShare: {
      label: "Lightest item",
      value: LEAST_ITEM_SHARE,
      role: "setting",
      format: "percent",
      takes: number([0.001, 1]),
      note: "Below this share of body mass a size of prey is outgrown. Practice.",
    },
  }) satisfies Record<string, Field>;
