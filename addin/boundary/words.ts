import type { CellParameter } from "../../functions/define";
import type { System } from "../../functions/units";
import { limitsInWords, quoted } from "../../functions/words";

const COMMA = /^\s*[-+]?\d*,\d+\s*$/;

/** What a message asks for where a cell has not the right form at all: a date that is text, a figure with a comma. */
export const wantedForm = (parameter: CellParameter, system: System, cell: unknown): string => {
  if (parameter.kind === "date") return "give a real date, or 2026-10-05";
  const comma =
    typeof cell === "string" && COMMA.test(cell) && (parameter.kind === "quantity" || parameter.kind === "count");
  const words = wanted(parameter, system);
  return comma ? `${words}; its comma makes it text, and not the number ${cell.trim().replace(",", ".")}` : words;
};

/** What a message asks for: "give a number from -90 to 60 °C", and the hint of its limits where there is one. */
export const wanted = (parameter: CellParameter, system: System): string =>
  `${form(parameter, system)}${parameter.limits?.hint ? `; ${parameter.limits.hint}` : ""}`;

const form = (parameter: CellParameter, system: System): string => {
  switch (parameter.kind) {
    case "quantity":
      return `give a number ${limitsInWords(parameter, system)}${parameter.words ? ` or one of ${quoted(parameter.words)}` : ""}`;
    case "count":
      return `give a whole number ${limitsInWords(parameter, system)}`;
    case "date":
      return `give a date ${limitsInWords(parameter, system)}`;
    case "choice":
    case "units":
      return `give ${quoted(parameter.words ?? [])}`;
    case "text":
      return "give text";
    case "anything":
      return "give a number, text, TRUE or FALSE";
  }
};
