import { isoOf } from "../../functions/dates";
import { Problem } from "../../functions/problem";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { symbol, type System, type Unit } from "../../functions/units";
import { cellName } from "../actions/place";
import { columnLetters } from "../sheets/shared/address";
import { formats } from "../sheets/sheet";
import { concepts } from "./concepts";
import { answerOf, formulaText, guardText, isGuarded, type Evaluate, type Written } from "./expression";
import { unitIn } from "./guess";
import type { Settled } from "./settled";
import type { OwnTable } from "./table";
import type { Want, Wish } from "./wish";

/** What the keeper has said: a column for a want, or what stands once. */
export interface Said {
  readonly columns: ReadonlyMap<string, number>;
  readonly once: ReadonlyMap<string, Settled>;
}

/** The column that would be written. */
export interface Planned {
  readonly heading: string;
  /** Where its heading goes, counted from 0. */
  readonly at: { readonly sheet: string; readonly row: number; readonly column: number };
  readonly formulas: readonly string[];
  /** The one formula for a table of the program's own, which names its columns by their headings. */
  readonly inTable: string;
  /** The first and the last of the columns that are read. */
  readonly reads: readonly [first: number, last: number];
  readonly format?: string;
  /** Rows, counted from 1 as the sheet counts them, that stay empty because something is blank or has yet to come. */
  readonly empty: readonly number[];
  /** What else has to be known before it is written. */
  readonly notes: readonly string[];
  /** What a row answers, from 0: "" where it stays empty. */
  readonly answer: (row: number, evaluate: Evaluate) => unknown;
}

const formatOf = (unit: Unit): string | undefined => {
  switch (unit) {
    case "date":
      return formats.date;
    case "share":
      return formats.percent;
    case "celsius":
    case "kelvin":
    case "gram":
    case "gramPerPeriod":
    case "hour":
      return formats.tenth;
    case "percentPerDay":
    case "kilopascal":
      return formats.thousandth;
    case "metre":
      return formats.whole;
    default:
      return undefined;
  }
};

const IMPERIAL = ["f", "ft", "oz"];

/** The system that the headings of the chosen columns speak of, or in words that they mix them. */
const systemOf = (wish: Wish, table: OwnTable, said: Said): System | { readonly trouble: string } => {
  const units = wish.wants.flatMap((want) => {
    const column = table.columns.find(({ column }) => column === said.columns.get(want.name));
    const unit = column && concepts[want.concept].kind === "figure" ? unitIn(column.heading) : undefined;
    return unit === undefined ? [] : [{ unit, heading: column?.heading ?? "" }];
  });
  const large = units.find(({ unit }) => unit === "kg" || unit === "lb");
  if (large)
    return {
      trouble: `"${large.heading}" is in ${large.unit}: the functions take grams or ounces. Choose a column in one of them.`,
    };
  if (!Object.values(wish.definition.parameters).some(({ kind }) => kind === "units")) return "metric";
  const imperial = units.filter(({ unit }) => IMPERIAL.includes(unit));
  if (imperial.length === 0) return "metric";
  const metric = units.find(({ unit }) => ["c", "m", "g", "mm"].includes(unit));
  return metric
    ? {
        trouble: `"${imperial[0]?.heading}" and "${metric.heading}" are in different units: choose columns of one system.`,
      }
    : "imperial";
};

/** What a keeper must know of meals that no plan holds back. */
const NO_FAST =
  "No whole winter plan is given: meals are told in the middle of the winter too. Food in a cold gut can rot, and kill: give the plan's six dates.";
const isWhole = (plan: Settled | undefined): boolean =>
  [plan?.value].flat(2).filter((day) => typeof day === "number").length === PLAN_ROWS.length;

const isMissing = (want: Want, said: Said): boolean =>
  !want.optional && !said.columns.has(want.name) && !said.once.has(want.name);

/** The first row whose date is earlier than the date above it, as the sheet counts rows. */
const outOfOrder = (table: OwnTable, column: number): number | undefined => {
  const cells = table.columns.find((one) => one.column === column)?.cells ?? [];
  let last = -Infinity;
  for (const [i, { value }] of cells.entries()) {
    if (typeof value !== "number") continue;
    if (value < last) return table.row + i + 1;
    last = value;
  }
  return undefined;
};

const freeHeading = (wanted: string, table: OwnTable): string => {
  const taken = new Set(table.columns.map(({ heading }) => heading.toLowerCase()));
  for (let i = 1; ; i++) {
    const heading = i === 1 ? wanted : `${wanted} (${i})`;
    if (!taken.has(heading.toLowerCase())) return heading;
  }
};

/** The column for a wish over a table, or in words what is missing. */
export const planned = (wish: Wish, table: OwnTable, said: Said): Planned | string => {
  const missing = wish.wants.filter((want) => isMissing(want, said));
  if (missing.length > 0) return `Say first: ${missing.map(({ label }) => label).join("; ")}.`;
  const system = systemOf(wish, table, said);
  if (typeof system === "object") return system.trouble;
  const has = (name: string): boolean => said.columns.has(name) || said.once.has(name);
  const guards = wish.guards(has);
  const body = wish.body(has, system);
  const column = (name: string): number => said.columns.get(name) ?? 0;
  const cellsOf = (name: string) => table.columns.find((one) => one.column === column(name))?.cells ?? [];
  const once = (name: string): Settled | undefined => said.once.get(name);

  const formulaOf = (written: Written): string => {
    const tests = guards.map((guard) => guardText(guard, written));
    const inner = formulaText(body, written);
    if (tests.length === 0) return `=${inner}`;
    return `=IF(${tests.length === 1 ? tests[0] : `OR(${tests.join(",")})`},"",${inner})`;
  };
  const formula = (i: number): string => {
    const row = table.row + i;
    const cell = (name: string): string => once(name)?.text ?? cellName(row, column(name));
    const toHere = (name: string): string => {
      const letters = columnLetters(column(name) + 1);
      return `${letters}$${table.row + 1}:${letters}${row + 1}`;
    };
    return formulaOf({ cell, toHere, once: cell });
  };
  /** By its heading, in which the signs of such names are marked. */
  const named = (name: string): string =>
    (table.columns.find((one) => one.column === column(name))?.name ?? "").replace(/['[\]#@]/g, "'$&");
  const inRow = (name: string): string => once(name)?.text ?? `[@[${named(name)}]]`;
  const heldIn = (i: number) => ({
    cell: (name: string) => (once(name) ? once(name)?.value : (cellsOf(name)[i]?.value ?? null)),
    toHere: (name: string) =>
      cellsOf(name)
        .slice(0, i + 1)
        .map(({ value }) => value),
    once: (name: string) => (once(name) ? once(name)?.value : (cellsOf(name)[i]?.value ?? null)),
  });
  const isEmptyRow = (i: number): boolean => guards.some((guard) => isGuarded(guard, heldIn(i)));
  const rows = Array.from({ length: table.rows }, (_, i) => i);
  const format = formatOf(wish.unit);
  const dates = wish.wants.find(({ name, concept }) => concept === "date" && said.columns.has(name));
  const late = wish.looksBack && dates ? outOfOrder(table, column(dates.name)) : undefined;
  const isFastUnknown = wish.wants.some(({ name, parameter }) => parameter.kind === "plan" && !isWhole(once(name)));
  const sign = system === "imperial" ? symbol(wish.unit, system) : "";
  const heading = sign ? wish.heading.replace(/, [^,]*$/, `, ${sign}`) : wish.heading;
  return {
    heading: freeHeading(heading, table),
    at: { sheet: table.sheet, row: table.headings, column: table.free },
    formulas: rows.map(formula),
    inTable: formulaOf({ cell: inRow, toHere: (name) => `INDEX([${named(name)}],1):${inRow(name)}`, once: inRow }),
    reads: [Math.min(...said.columns.values()), Math.max(...said.columns.values())],
    ...(format === undefined ? {} : { format }),
    empty: rows.filter(isEmptyRow).map((i) => table.row + i + 1),
    notes: [
      ...(late === undefined
        ? []
        : [
            `Row ${late} is earlier than the row above it. Each answer looks at the rows above its own: sort by date first.`,
          ]),
      ...(isFastUnknown ? [NO_FAST] : []),
    ],
    answer: (i, evaluate) => {
      if (isEmptyRow(i)) return "";
      const answer = answerOf(body, heldIn(i), evaluate);
      return answer ?? "";
    },
  };
};

/** An answer for the eye, before it stands on the sheet. */
export const shownAnswer = (answer: unknown, unit: Unit): string => {
  if (answer instanceof Problem) return `${answer.code}: ${answer.message}`;
  if (answer === "") return "(stays empty)";
  if (typeof answer !== "number") return String(answer);
  if (unit === "date") return isoOf(Math.floor(answer));
  if (unit === "share") return `${(100 * answer).toFixed(1)} %`;
  return String(Number(answer.toPrecision(4)));
};
