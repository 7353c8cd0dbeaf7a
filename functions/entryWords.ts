import type { AnyDefinition, Parameter } from "./define";
import { sources, type Source, type SourceKey } from "./sources";
import { symbol } from "./units";
import { takesInWords } from "./words";

/** What an entry of the reference says of a definition, in the pane and in the handbook. */

/** What stands behind a source, in words that a keeper can weigh. */
const statusWords: Readonly<Record<Source["status"], string>> = {
  published: "Published",
  recalled: "From memory, not looked up",
  practice: "Common practice, no source",
  definition: "By definition",
  measured: "Worked out for this add-in",
};

/** A source, and what stands behind it, unless its own words begin so. */
export const sourceWords = (key: SourceKey): { readonly status: string; readonly text: string } => {
  const { status, text }: Source = sources[key];
  return { status: text.startsWith(statusWords[status]) ? "" : statusWords[status], text };
};

/** What may be given for an argument, and what stands in for it: "Give a number from -90 to 60 °C." */
export const giveWords = (parameter: Parameter): string =>
  [
    `Give ${takesInWords(parameter)}.`,
    ...(parameter.reads === "cell" && parameter.limits && !parameter.limits.plausibility && parameter.kind !== "date"
      ? ["Nothing outside these is taken."]
      : []),
    ...(parameter.optional ? [`May be left out${parameter.without ? `: then ${parameter.without}` : ""}.`] : []),
  ].join(" ");

/** What comes out, column by column, with its unit. */
export const resultWords = ({ result }: AnyDefinition): readonly string[] =>
  result.columns.map(({ name, unit, about }) => {
    const sign = symbol(unit);
    return `${name ? `${name}: ` : ""}${about}${sign ? `, ${sign}` : ""}`;
  });

export const shapeWords = ({ parameters, result }: AnyDefinition): string =>
  ({
    cell: Object.keys(parameters).length === 0 ? "One cell." : "One cell for each cell given.",
    columns: `${result.columns.length} cells side by side.`,
    list: "As many cells as were given.",
    table: "Rows below one another, without headings.",
  })[result.shape];
