import { namesOf, type AnyDefinition, type Parameter } from "../../functions/define";
import type { Unit } from "../../functions/units";

/**
 * Where an argument stands in a keeper's own table. "row": a cell of each row. "before": the same column, a row above.
 * "column": a whole column. "once": a cell, or a block, that stands beside the table and serves all of it. "word": a word of
 * the formula itself.
 */
export type Role = "row" | "before" | "column" | "once" | "word";

/** What a keeper notes row by row; elevations, shares and spans of time are settled once. */
const NOTED: readonly Unit[] = ["text", "date", "date and time", "gram", "celsius", "percent", "millimetre"];

/** Where the unit alone does not say it. */
const roles: Readonly<Record<string, Readonly<Record<string, Role>>>> = {
  AGE: { on: "once" },
  BOXAIR: { temperature: "once" },
  DEGREEDAYS: { base: "once", ceiling: "once" },
  DUE: { today: "once", winters: "row" },
  FIGURES: { range: "column" },
  GROWTHRATE: { mass1: "before", date1: "before" },
  INCUBATIONDAYS: { baseTemperature: "once", threshold: "once" },
  MASSLOSS: { start: "once" },
  METABOLICLOSS: { temperature: "once" },
  OPENEVERY: { temperature: "once" },
  PRESSURE: { elevation: "row" },
  PROXYNOTE: { stationElevation: "row", km: "row" },
  Q10RATE: { temperature: "once" },
  SITENOTE: { latitude: "row", longitude: "row", elevation: "row" },
  STATIONGAP: { stationElevation: "row" },
  VAPOURDEFICIT: { skin: "once" },
};

/** Whether a definition answers one thing for each cell that it is given. */
const answersEach = ({ result }: AnyDefinition): boolean => result.shape === "cell" || result.shape === "columns";

const isColumn = ({ kind }: Parameter): boolean => kind === "column" || kind === "rows";

export const roleOf = (definition: AnyDefinition, name: string): Role => {
  const names: readonly string[] = definition.forEach ? namesOf(definition.forEach) : [];
  const all = Object.entries(definition.parameters).flatMap(([one, own]) => (names.includes(one) ? [] : [own]));
  const parameter = definition.parameters[name] as Parameter;
  const said = roles[definition.name]?.[name];
  if (said) return said;
  // Months are the columns of a table where nothing else is; beside a table they serve all of it.
  const hasRows = (): boolean =>
    Object.entries(definition.parameters).some(
      ([one, { reads }]) => reads === "cell" && roleOf(definition, one) === "row",
    );
  if (parameter.reads === "range") {
    return isColumn(parameter) || (parameter.kind === "months" && !hasRows()) ? "column" : "once";
  }
  if (parameter.kind === "units") return "word";
  if (!answersEach(definition) || all.some(isColumn)) return "once";
  if (parameter.kind === "choice") return "word";
  // Beside a plan a temperature is one of its set-points.
  const ofPlan = parameter.unit === "celsius" && all.some(({ kind }) => kind === "plan");
  return NOTED.includes(parameter.unit) && !ofPlan ? "row" : "once";
};
