import { cell, defineFunction, optional, quantity } from "../define";
import { notUsable } from "../problem";
import { ITEM_SHARE } from "../rules/limits";
import { figure, figures } from "../shared/figure";
import { BODY_MASS } from "../shared/limits";
import { RATIO } from "./shared/ratio";
import { refusedIf } from "../twin";

/** A quotient this close below a whole number is that number: 0.3 · 100 / 10 is three items, not two. */
const ROUNDING = 1e-9;

export const preyItems = defineFunction({
  name: "PREYITEMS",
  summary: "How many prey items of one size make the meal without passing it, at least one.",
  parameters: {
    body: quantity("gram", "Mass of the animal before the meal", BODY_MASS),
    item: quantity("gram", "Mass of one prey item", [0.1, 100_000]),
    mealRatio: quantity("share", "Prey mass of the whole meal divided by body mass", ...RATIO),
    itemRatio: optional(
      quantity("share", "Heaviest single item divided by body mass", ...RATIO),
      `${ITEM_SHARE}, practice`,
    ),
  },
  result: cell("none", "Number of items"),
  sources: ["definition", "practice"],
  cautions: ["meal", "noVet"],
  examples: [
    { given: [240, 8, 0.1], gives: 3, within: 0 },
    { given: [240, 30, 0.1], gives: 1, within: 0 },
  ],
  calculate({ body, item, mealRatio, itemRatio = ITEM_SHARE }) {
    const ratio = item / body;
    if (ratio > itemRatio * (1 + ROUNDING)) {
      const [share, most] = figures([ratio, itemRatio], "share");
      return notUsable(`item holds ${figure(item, "gram")}, ${share} of the body: give prey of at most ${most} of it`);
    }
    return Math.max(1, Math.floor((mealRatio / ratio) * (1 + ROUNDING)));
  },
  twin: ({ body, item, mealRatio, itemRatio }) => {
    const ratio = `(${item}/${body})`;
    return refusedIf(
      `${ratio}>${itemRatio(String(ITEM_SHARE))}*${1 + ROUNDING}`,
      `MAX(1,INT(${mealRatio}/${ratio}*${1 + ROUNDING}))`,
    );
  },
});
