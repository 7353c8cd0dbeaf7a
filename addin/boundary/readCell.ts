import type { CellParameter, Value } from "../../functions/define";
import { Problem, notUsable } from "../../functions/problem";
import { toMetric, type System } from "../../functions/units";
import { isBlank, plain, SheetError, shown } from "./cell";
import { wanted, wantedForm } from "./words";

/** Where a cell stands, for a message: "temperature", or "month 7 of temperatures". Built only when it is needed. */
type Place = () => string;

const within = (value: number, { limits }: CellParameter): boolean =>
  limits === undefined || (value >= limits.least && value <= limits.most);

/** A share of a limit: less is the rounding of a conversion, and 0.18 °F is 0.1 K to the last digit or beside it. */
const ROUNDING = 1e-12;

/** In metric; a converted figure that misses a limit by rounding alone is the limit. */
const converted = (value: number, { unit, limits }: CellParameter, system: System): number => {
  if (system === "metric") return value;
  const metric = toMetric(value, unit, system);
  for (const limit of limits ? [limits.least, limits.most] : []) {
    if (Math.abs(metric - limit) <= ROUNDING * Math.max(1, Math.abs(limit))) return limit;
  }
  return metric;
};

/** Between these a plain number needs no further reading; nowhere, if it has to be converted or made whole. */
export const plainLimits = ({ kind, unit, limits }: CellParameter, system: System): { least: number; most: number } => {
  const plain = (kind === "quantity" && system === "metric") || unit === "date and time";
  return plain && limits ? limits : { least: Infinity, most: -Infinity };
};

/**
 * One cell, read as its parameter says: undefined where it is blank, a metric value, or the problem with it.
 * A plain number within its limits and plain text take the short way; everything else goes through the schema.
 */
export const readCell = (
  parameter: CellParameter,
  raw: unknown,
  system: System,
  place: Place,
): Value | undefined | Problem => {
  const { kind, unit } = parameter;
  if (typeof raw === "number") {
    if (kind === "quantity") {
      const metric = converted(raw, parameter, system);
      if (within(metric, parameter)) return metric;
    } else if (kind === "date") {
      const time = unit === "date" ? Math.floor(raw) : raw;
      if (within(time, parameter)) return time;
    } else if (kind === "anything" && Number.isFinite(raw)) {
      return raw;
    }
  } else if ((kind === "text" || kind === "anything") && typeof raw === "string" && !isBlank(raw)) {
    return raw;
  }
  const cell = plain(raw);
  if (isBlank(cell)) return undefined;
  if (cell instanceof SheetError) {
    return new Problem(cell.code === "#N/A" ? "#N/A" : "#VALUE!", `${place()} holds the error ${cell.code}`);
  }
  const read = parameter.schema.safeParse(cell);
  if (!read.success) return notUsable(`${place()} holds ${shown(cell)}: ${wantedForm(parameter, system, cell)}`);
  const value = read.data as Value;
  if (typeof value !== "number") return value;
  const metric = converted(value, parameter, system);
  return within(metric, parameter)
    ? metric
    : notUsable(`${place()} holds ${shown(cell)}: ${wanted(parameter, system)}`);
};
