import { topics, type Topic } from "../functions/catalogue";
import type { Parameter } from "../functions/define";
import { symbol } from "../functions/units";
import { limitsInWords } from "../functions/words";
import { fileOf, functionPath } from "../taskpane/handbook/paths";

/** The longest description of a parameter that the platform's own schemas allow in every version. */
export const MOST_LETTERS = 128;

/**
 * What an argument takes, after what it is, most needed first: its words or columns, what stands in for it, its limits.
 * Each part may be said in several ways, the fullest first.
 */
const takes = (parameter: Parameter): readonly (readonly string[])[] => {
  const without = parameter.without === undefined ? [] : [[`left out: ${parameter.without}`]];
  const unit = symbol(parameter.unit);
  const inUnit = unit ? [`in ${unit}`] : [];
  if (parameter.reads === "range") {
    const titles = parameter.columns.map(([title]) => title).filter((title) => title !== "");
    return [titles.length > 0 ? [`columns ${titles.join(", ")}`] : inUnit, ...without];
  }
  if (parameter.kind === "units") return without;
  const words = parameter.words?.map((word) => `"${word}"`).join(", ");
  const limits = parameter.kind === "date" ? "" : limitsInWords(parameter);
  return [...(words ? [[words]] : []), ...without, ...(limits ? [[limits, ...inUnit]] : [])];
};

/** One line for the tooltip; a part that does not fit is left out, never cut through. */
const describe = (parameter: Parameter): string =>
  takes(parameter).reduce((line, ways) => {
    const fits = ways.find((way) => line.length + 2 + way.length <= MOST_LETTERS);
    return fits === undefined ? line : `${line}; ${fits}`;
  }, parameter.about);

/**
 * The description of the functions that the platform reads. Every argument is `any` and `matrix`, so that blanks and
 * errors arrive as they are and ranges are spread in one place, by the boundary. `handbook` is its address, without a slash
 * at its end.
 */
export const functionsJson = (handbook: string, from: readonly Topic[] = topics) => ({
  allowCustomDataForDataTypeAny: true,
  allowErrorForDataTypeAny: true,
  functions: from
    .flatMap(({ functions }) => functions)
    .map((definition) => ({
      id: definition.name,
      name: definition.name,
      description: definition.summary,
      helpUrl: `${handbook}/${fileOf(functionPath(definition))}`,
      parameters: Object.entries(definition.parameters).map(([name, parameter]) => ({
        name,
        description: describe(parameter),
        type: "any",
        dimensionality: "matrix",
        ...(parameter.optional ? { optional: true } : {}),
      })),
      result: { type: "any", dimensionality: "matrix" },
    })),
});
