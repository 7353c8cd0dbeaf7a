import * as z from "zod/mini";
import type { CautionKey } from "./cautions";
import { FIRST_DAY, LAST_DAY, serialOfIso } from "./dates";
import type { Network } from "./network/network";
import type { Problem } from "./problem";
import { PLAIN_NUMBER } from "./shared/plainNumber";
import type { SourceKey } from "./sources";
import type { Texts } from "./texts";
import { hasSystems, systems, type System, type Unit } from "./units";

/** One cell of an answer. `""` is an empty-looking cell; there is no null, because a spreadsheet shows null as 0. */
export type Value = number | string | boolean;
export type Answer = Value | Problem;

// ---------------------------------------------------------------------------------------------------- parameters

/**
 * What a number may be, in metric, both ends included. The limits serve the check, its message, the reference and the
 * property tests. A plausibility limit is our own: it keeps slips of the keyboard out, or figures for which we would not
 * trust the method. The others are where the method ends.
 */
export interface Limits {
  readonly least: number;
  readonly most: number;
  readonly plausibility: boolean;
  /** What the message adds after the limits, where they do not speak for themselves: "15 % is 0.15". */
  readonly hint?: string;
}

interface Described {
  readonly about: string;
  readonly unit: Unit;
  readonly optional: boolean;
  /** What stands in for an optional argument that is left out, in words. */
  readonly without?: string;
}

/** A parameter that is one cell. Given a row, a column or a block, the function answers for each of its cells. */
export interface CellParameter<T = unknown> extends Described {
  readonly reads: "cell";
  readonly kind: "quantity" | "count" | "date" | "choice" | "text" | "anything" | "units";
  /** Reads the cell's form; limits are checked after it, because they hold in metric. */
  readonly schema: z.ZodMiniType<T>;
  readonly limits?: Limits;
  /** The words that a choice takes, or that a quantity takes instead of a number. */
  readonly words?: readonly string[];
  /** Beside a long table it is a column of it, of which the animal's own latest counts. */
  readonly latest?: boolean;
}

/** A parameter that is read whole: a list, or rows of several named columns. */
export interface RangeParameter<T = unknown> extends Described {
  readonly reads: "range";
  readonly kind: "months" | "column" | "rows" | "plan";
  /** The columns of a row, in order; a list has one, with an empty name. */
  readonly columns: readonly (readonly [name: string, cell: CellParameter])[];
  /** The exact number of entries, where only one will do. */
  readonly length?: number;
  /**
   * What becomes of a blank entry. "refuse": #N/A with its position. "skip": the entry is left out. "keep": the entry
   * is undefined and keeps its place, for lists that belong to one another row by row.
   */
  readonly blank: "refuse" | "skip" | "keep";
  /** "keep": an entry that is blank or cannot be read is NaN in a Float64Array, for logs that come from a machine. */
  readonly unreadable: "refuse" | "keep";
  /** Only for the compiler: what `calculate` is given. */
  readonly gives?: T;
}

export type Parameter<T = unknown> = CellParameter<T> | RangeParameter<T>;

const plainNumber = z.pipe(
  z.string().check(z.regex(PLAIN_NUMBER)),
  z.transform((text: string) => Number(text)),
);
const isoDate = z.pipe(
  z.string().check(z.refine((text) => serialOfIso(text.trim()) !== undefined)),
  z.transform((text: string) => serialOfIso(text.trim()) as number),
);
const finite = z.number().check(z.refine(Number.isFinite));
const numeric = z.union([finite, plainNumber]);
const whole = z.pipe(numeric, z.number().check(z.refine(Number.isInteger)));
const dated = z.union([finite, isoDate, plainNumber]);
const wholeDay = z.pipe(
  dated,
  z.transform((serial: number) => Math.floor(serial)),
);

/** The word of the list that the text is, whatever its capitals. */
const oneOf = <W extends string>(words: readonly W[]) =>
  z.pipe(
    z.string().check(z.refine((text) => words.some((word) => word === text.trim().toLowerCase()))),
    z.transform((text: string) => text.trim().toLowerCase() as W),
  );

const limits = ([least, most]: readonly [number, number], plausibility: boolean, hint?: string): Limits => ({
  least,
  most,
  plausibility,
  ...(hint === undefined ? {} : { hint }),
});

interface QuantityOptions<W extends string> {
  /** True where the limits are our own; say false where the method ends there. */
  readonly plausibility?: boolean;
  /** Words taken instead of a number. */
  readonly words?: readonly W[];
  /** What the message adds after the limits. */
  readonly hint?: string;
}

/** A number with a unit. `range` is in metric, both ends included; a plausibility limit unless the options say not. */
export const quantity = <W extends string = never>(
  unit: Unit,
  about: string,
  range: readonly [number, number],
  { plausibility = true, words, hint }: QuantityOptions<W> = {},
): CellParameter<number | NoInfer<W>> => ({
  reads: "cell",
  kind: "quantity",
  about,
  unit,
  optional: false,
  limits: limits(range, plausibility, hint),
  schema: words ? z.union([numeric, oneOf(words)]) : numeric,
  ...(words ? { words } : {}),
});

/** A whole number. */
export const count = (
  unit: Unit,
  about: string,
  range: readonly [number, number],
  { plausibility = true }: { readonly plausibility?: boolean } = {},
): CellParameter<number> => ({
  reads: "cell",
  kind: "count",
  about,
  unit,
  optional: false,
  limits: limits(range, plausibility),
  schema: whole,
});

/** A calendar day; a time of day is dropped. `calculate` gets its serial number. */
export const date = (about: string): CellParameter<number> => ({
  reads: "cell",
  kind: "date",
  about,
  unit: "date",
  optional: false,
  limits: limits([FIRST_DAY, LAST_DAY], false),
  schema: wholeDay,
});

/** A moment: a serial number with its fraction, or ISO 8601 text. */
export const moment = (about: string): CellParameter<number> => ({
  ...date(about),
  unit: "date and time",
  limits: limits([FIRST_DAY, LAST_DAY + 1], false),
  schema: dated,
});

/** One word of a short list. */
export const choice = <W extends string>(about: string, words: readonly W[]): CellParameter<NoInfer<W>> => ({
  reads: "cell",
  kind: "choice",
  about,
  unit: "text",
  optional: false,
  words,
  schema: oneOf(words),
});

/** Any text that is not blank; a number is taken as its digits. */
export const text = (about: string): CellParameter<string> => ({
  reads: "cell",
  kind: "text",
  about,
  unit: "text",
  optional: false,
  schema: z.union([z.string(), z.pipe(finite, z.transform(String))]) as z.ZodMiniType<string>,
});

/** Whatever the cell holds; the function reads it. */
export const anything = (about: string): CellParameter<Value> => ({
  reads: "cell",
  kind: "anything",
  about,
  unit: "none",
  optional: false,
  schema: z.union([z.string(), finite, z.boolean()]),
});

/** The system in which the keeper's figures are given and answered. `calculate` gets metric figures whatever it says. */
export const unitsParameter: CellParameter<System | undefined> = {
  ...choice('"metric" or "imperial" (°F, ft, mi, oz, in)', systems),
  kind: "units",
  optional: true,
  without: "metric",
};

type Optional<P> =
  P extends CellParameter<infer T>
    ? CellParameter<T | undefined>
    : P extends RangeParameter<infer T>
      ? RangeParameter<T | undefined>
      : never;

/** Makes a parameter optional; `without` says in words what stands in for it. */
export const optional = <P extends CellParameter<never> | RangeParameter<never> | Parameter>(
  parameter: P,
  without: string,
): Optional<P> => ({ ...parameter, optional: true, without }) as unknown as Optional<P>;

/** Twelve monthly values, January to December, in a row or a column. None may be blank. */
export const months = (
  unit: Unit,
  about: string,
  range: readonly [number, number],
): RangeParameter<readonly number[]> => ({
  reads: "range",
  kind: "months",
  about,
  unit,
  optional: false,
  columns: [["", quantity(unit, about, range)]],
  length: 12,
  blank: "refuse",
  unreadable: "refuse",
});

type Given1<C> = C extends CellParameter<infer T> ? T : never;
interface ListOptions<B extends RangeParameter["blank"]> {
  readonly blank?: B;
}

/** A list of any length, in a row or a column. With `blank: "keep"` an entry may be undefined. */
export const column = <C extends CellParameter<never> | CellParameter, B extends RangeParameter["blank"] = "refuse">(
  cell: C,
  { blank = "refuse" as B }: ListOptions<B> = {},
): RangeParameter<readonly (B extends "keep" ? Given1<C> | undefined : Given1<C>)[]> => ({
  reads: "range",
  kind: "column",
  about: cell.about,
  unit: cell.unit,
  optional: false,
  columns: [["", cell]],
  blank,
  unreadable: "refuse",
});

/**
 * A column of figures or moments that a machine wrote, a year of minutes long if need be. Every entry keeps its place; one
 * that is blank or cannot be read is NaN.
 */
export const logged = (cell: CellParameter<number>): RangeParameter<Float64Array> => ({
  reads: "range",
  kind: "column",
  about: cell.about,
  unit: cell.unit,
  optional: false,
  columns: [["", cell]],
  blank: "keep",
  unreadable: "keep",
});

/** Rows of named columns, in the order given. Rows that are blank throughout are left out. */
export const rows = <C extends Record<string, CellParameter<never> | CellParameter>>(
  about: string,
  columns: C,
): RangeParameter<readonly { [K in keyof C]: Given1<C[K]> }[]> => ({
  reads: "range",
  kind: "rows",
  about,
  unit: "none",
  optional: false,
  columns: Object.entries(columns),
  blank: "skip",
  unreadable: "refuse",
});

/** A winter plan: the six rows stage and date that RAMPDATES answers, or just their six dates. */
export const plan = (
  about = "Winter plan: the six rows of RAMPDATES, or just their dates",
): RangeParameter<readonly number[]> => ({
  reads: "range",
  kind: "plan",
  about,
  unit: "date",
  optional: false,
  columns: [["", date(about)]],
  length: 6,
  blank: "refuse",
  unreadable: "refuse",
});

/** A cell that, beside a long table of several animals, may be a column of it: the latest of the animal's own counts. */
export const latestOf = (cell: CellParameter<number>): CellParameter<number> => ({ ...cell, latest: true });

/** Whose rows one animal's rows are, where many stand in one long table: the two arguments that say so. */
const POSSIBLE = {
  animal: ["animals", "animal"],
  clutch: ["clutches", "clutch"],
  sensor: ["sensors", "sensor"],
} as const;
export type Each = keyof typeof POSSIBLE;

/** The names of the two arguments: the column of a long table, and the one or many to answer for. */
export const namesOf = (each: Each): readonly [names: string, name: string] => POSSIBLE[each];

const eachParameters = (each: Each): Record<string, Parameter> => {
  const [names, name] = namesOf(each);
  return {
    [names]: optional(
      column(text(`In a table of several ${names}: whose row each is, row by row with the others`), { blank: "keep" }),
      `the rows are of one ${each}`,
    ),
    [name]: optional(
      text(`The ${each} to answer for: a name of ${names}, or a column of names`),
      `none if ${names} are none`,
    ),
  };
};

/** Every function with a figure that reads otherwise in the other system takes `units`, as the last argument where it names none. */
const unitsOf = ({ parameters, result }: Pick<AnyDefinition, "parameters" | "result">): Record<string, Parameter> => {
  const all = Object.values(parameters);
  const asked = all.flatMap((one) => (one.reads === "range" ? one.columns.map(([, { unit }]) => unit) : [one.unit]));
  const isTold = all.some(({ kind }) => kind === "units");
  const answered = result.columns.flatMap(({ unit, rowUnits }) => rowUnits ?? [unit]);
  return !isTold && [...asked, ...answered].some(hasSystems) ? { units: unitsParameter } : {};
};

/** What `calculate` is given for such parameters. */
export type Given<P> = {
  [K in keyof P]: P[K] extends CellParameter<infer T> ? T : P[K] extends RangeParameter<infer T> ? T : never;
};

// -------------------------------------------------------------------------------------------------------- results

/** One column of an answer. */
export interface Column {
  readonly name: string;
  readonly unit: Unit;
  readonly about: string;
  /** Of a table: the unit of each row, where they differ. */
  readonly rowUnits?: readonly Unit[];
}

/** The unit of a cell of an answer. */
export const unitAt = (columns: readonly Column[], row: number, column: number): Unit => {
  const found = columns[column];
  return found?.rowUnits?.[row] ?? found?.unit ?? "text";
};

/** One cell, for each cell of the cell parameters. */
export interface CellResult {
  readonly shape: "cell";
  readonly columns: readonly [Column];
}
/** One row of several cells, for each cell of the cell parameters. */
export interface ColumnsResult {
  readonly shape: "columns";
  readonly columns: readonly Column[];
}
/** As many cells as the parameter `like`, laid out as it is; answered once. */
export interface ListResult {
  readonly shape: "list";
  readonly columns: readonly [Column];
  readonly like: string;
}
/** Rows; answered once. */
export interface TableResult {
  readonly shape: "table";
  readonly columns: readonly Column[];
}
export type Result = CellResult | ColumnsResult | ListResult | TableResult;

export const cell = (unit: Unit, about: string) => ({ shape: "cell", columns: [{ name: "", unit, about }] }) as const;
export const columns = (...named: readonly Column[]) => ({ shape: "columns", columns: named }) as const;
export const list = (unit: Unit, about: string, like: string) =>
  ({ shape: "list", columns: [{ name: "", unit, about }], like }) as const;
export const table = (...named: readonly Column[]) => ({ shape: "table", columns: named }) as const;

type Calculated<R extends Result> = R["shape"] extends "cell"
  ? Answer
  : R["shape"] extends "table"
    ? readonly (readonly Answer[])[] | Problem
    : readonly Answer[] | Problem;

// --------------------------------------------------------------------------------------------------- native twins

/** The cells of a range in a native twin: each as formula text, and all of them as one reference. */
export interface WrittenCells {
  readonly each: readonly string[];
  readonly whole: string;
}

/** An optional argument in a twin: what stands where it is blank or left out, and what is made of it where it is given. */
export type WrittenOption<T> = (without: string, given?: (own: T) => string) => string;

/**
 * An argument as formula text that stands as one piece: a cell, a figure, a call, or brackets. Figures are metric, dates
 * whole, and all of them are inside their limits: what the boundary refuses, and blanks, never reach the twin.
 */
type Written<P> =
  P extends CellParameter<infer T>
    ? undefined extends T
      ? WrittenOption<string>
      : string
    : P extends RangeParameter<infer T>
      ? undefined extends T
        ? WrittenOption<WrittenCells>
        : WrittenCells
      : never;

/** Rows that a twin writes one by one: how many there are, as formula text, and what stands in each. */
export interface WrittenRows {
  readonly count: string;
  readonly row: (index: number) => readonly string[];
}

type WrittenAnswer<R extends Result> = R["shape"] extends "cell"
  ? string
  : R["shape"] extends "table"
    ? readonly (readonly string[])[] | WrittenRows
    : readonly string[];

// ----------------------------------------------------------------------------------------------------- definitions

/** An argument as it stands in a formula: a number, text, TRUE, an ISO date for a date, a blank, or a block of these. */
export type Argument = Value | null | readonly (readonly (Value | null)[])[];

/** A worked example: what is typed, and the answer, blocks as rows. Dates are ISO text on both sides. */
export interface Example {
  readonly given: readonly Argument[];
  readonly gives: Value | readonly (readonly Value[])[];
  /** How far a number may be off; 0 where it is exact. */
  readonly within: number;
  /** The rows of the whole answer, where `gives` shows only the first of them. */
  readonly rows?: number;
}

/** What a definition may need beside its arguments, by name; a host has to fetch it first. */
export interface Supplies {
  readonly network: Network;
  readonly texts: Texts;
}
export type Need = keyof Supplies;

/** A worksheet function: the words that describe it and the arithmetic, with nothing written twice. */
export interface Definition<
  P extends Record<string, Parameter<never> | Parameter> = Record<string, Parameter>,
  R extends Result = Result,
  N extends Need | undefined = undefined,
> {
  /** As typed after the prefix, capitals and digits. */
  readonly name: Uppercase<string>;
  /** One sentence, at most 128 characters, without the function's name. */
  readonly summary: string;
  /** What `calculate` is given beside its arguments. */
  readonly needs?: N;
  /** In the order in which they are typed; optional ones last. */
  readonly parameters: P;
  readonly result: R;
  /**
   * What one call's rows belong to. It adds two last arguments, a column of names and a name, with which the function
   * answers for each name of a long table: `calculate` is given the rows of one, and its name.
   */
  readonly forEach?: Each;
  readonly sources: readonly [SourceKey, ...SourceKey[]];
  readonly cautions: readonly CautionKey[];
  readonly examples: readonly [Example, ...Example[]];
  /** Total over the declared limits, pure, never throws. Figures are metric, dates are serial numbers. */
  calculate(given: Given<P> & Named & Told, ...supplied: N extends Need ? [Supplies[N]] : []): Calculated<R>;
  /**
   * The same answer in functions that every spreadsheet has, for a copy that goes on calculating without the add-in:
   * `calculate` written as formula text (functions/twin.ts).
   */
  twin?(given: { readonly [K in keyof P]: Written<P[K]> }): WrittenAnswer<R>;
}

/** The one of many whose rows are given, where they were taken from a long table. */
export type Named = Partial<Readonly<Record<"named", string>>>;

/** The system of the call, which a message and an answer in words are told in. */
export type Told = Partial<Readonly<Record<"units", System | undefined>>>;

export const defineFunction = <
  const P extends Record<string, Parameter<never> | Parameter>,
  const R extends Result,
  const N extends Need | undefined = undefined,
>(
  definition: Definition<P, R, N>,
): Definition<P, R, N> => {
  const { forEach } = definition;
  const parameters = { ...definition.parameters, ...(forEach ? eachParameters(forEach) : {}) };
  return { ...definition, parameters: { ...parameters, ...unitsOf({ parameters, result: definition.result }) } };
};

/** What `calculate` is given, by the names of the parameters. */
export type Values = Record<string, unknown>;

/** A definition of that shape whose parameters are not known to the compiler. */
export interface Shaped<R extends Result> extends Omit<
  Definition<Record<string, Parameter>, R, Need>,
  "calculate" | "twin"
> {
  calculate(given: Values, supplied?: Supplies[Need]): Calculated<R>;
  twin?(given: Values): WrittenAnswer<R>;
}

/** Any definition, as the catalogue holds it. */
export type AnyDefinition = Shaped<CellResult> | Shaped<ColumnsResult> | Shaped<ListResult> | Shaped<TableResult>;

/** The prefix of every function in a formula. */
export const PREFIX = "VIV";
