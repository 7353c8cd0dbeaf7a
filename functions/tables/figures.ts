import { anything, cell, defineFunction } from "../define";
import { notUsable } from "../problem";
import { PLAIN_NUMBER } from "../shared/plainNumber";

/**
 * Words and TRUE or FALSE leave an empty-looking cell. Text with a digit in it that is no plain number ("142 g", "24,5")
 * may be a figure that would be lost in silence, so it is refused.
 */
export const figuresOf = defineFunction({
  name: "FIGURES",
  summary: 'The figures of a range; words, such as "refused" in a column of masses, become blanks.',
  parameters: { range: anything("The cells, of any shape; numbers and dates stay as they are") },
  result: cell("none", "The figure, or an empty-looking cell where there is none"),
  sources: ["definition"],
  cautions: ["leftOut"],
  examples: [{ given: [[[142], ["refused"], [145]]], gives: [[142], [""], [145]], within: 0 }],
  calculate({ range }) {
    if (typeof range === "number") return range;
    if (typeof range === "boolean" || !/\p{Nd}/u.test(range)) return "";
    const figure = PLAIN_NUMBER.test(range) ? Number(range) : NaN;
    return Number.isFinite(figure)
      ? figure
      : notUsable(`range holds '${range.slice(0, 40)}': give a bare number, or words without digits`);
  },
});
