import { isoOf } from "./dates";
import type { AnyDefinition, CellParameter, Parameter } from "./define";
import { PREFIX } from "./define";
import { limitIn, symbol, type System } from "./units";

/** '"high" or "low"'; '"high", "low", "median"'. */
export const quoted = (words: readonly string[]): string =>
  words.map((word) => `"${word}"`).join(words.length === 2 ? " or " : ", ");

/** "from -90 to 60 °C", or nothing where there are no limits. */
export const limitsInWords = (parameter: CellParameter, system: System = "metric"): string => {
  if (!parameter.limits) return "";
  const { least, most } = parameter.limits;
  if (parameter.kind === "date") return `from ${isoOf(least)} to ${isoOf(most)}`;
  const unit = symbol(parameter.unit, system);
  const [low, high] = [limitIn("least", least, parameter.unit, system), limitIn("most", most, parameter.unit, system)];
  return `from ${low} to ${high}${unit && ` ${unit}`}`;
};

/** How a function is typed: "VIV.LAPSE(temperature, stationElevation, homeElevation, [rate], [units])". */
export const signature = ({ name, parameters }: AnyDefinition): string =>
  `${PREFIX}.${name}(${Object.entries(parameters)
    .map(([key, { optional }]) => (optional ? `[${key}]` : key))
    .join(", ")})`;

/** What an argument may be, in a line: "a number from -90 to 60 °C"; "12 cells, January to December, °C". */
export const takesInWords = (parameter: Parameter): string => {
  if (parameter.reads === "cell") return cellTakes(parameter);
  const unit = symbol(parameter.unit);
  switch (parameter.kind) {
    case "months":
      return `12 cells, January to December${unit && `, ${unit}`}`;
    case "plan":
      return "6 dates, or 6 rows of stage and date";
    case "column": {
      const [[, cell]] = parameter.columns as readonly [readonly [string, CellParameter]];
      return `a row or a column of cells, each ${cellTakes(cell)}`;
    }
    case "rows":
      return `rows of ${parameter.columns.map(([name]) => name).join(", ")}`;
  }
};

const cellTakes = (parameter: CellParameter): string => {
  const limits = limitsInWords(parameter);
  switch (parameter.kind) {
    case "quantity":
      return `a number ${limits}${parameter.words ? `, or ${quoted(parameter.words)}` : ""}`;
    case "count":
      return `a whole number ${limits}`;
    case "date":
      return parameter.unit === "date and time" ? "a date with its time" : "a date";
    case "choice":
    case "units":
      return quoted(parameter.words ?? []);
    case "text":
      return "text";
    case "anything":
      return "any cell";
  }
};
