import { serialOfIso } from "./dates";
import {
  unitAt,
  type AnyDefinition,
  type CellParameter,
  type Limits,
  type Parameter,
  type RangeParameter,
  type Value,
  type WrittenCells,
  type WrittenOption,
  type WrittenRows,
} from "./define";
import { PLAIN_NUMBER } from "./shared/plainNumber";
import { MISSING, numeral, quoted, REFUSED } from "./twin";
import { fromMetric, hasSystems, toMetric, type System, type Unit } from "./units";

/**
 * Native twins: a call of a function written in functions that Excel 2016, LibreOffice and web spreadsheets share. A
 * definition's `twin` writes the arithmetic; what the boundary does for every function is written here, around it: a
 * blank row answers "", a half-filled one #N/A, a figure outside its limits or of another kind #VALUE!, and figures are
 * converted. Words in place of a number are larger than every number to a spreadsheet, so the upper limit refuses them.
 *
 * What a twin does not do: read a number or a date that a cell holds as text (it answers #VALUE!), take a cell of spaces
 * for a blank one, and choose between #N/A and #VALUE! as the add-in does where one argument is blank and another wrong.
 * Of an answer that only a chain of days tells, it may answer #N/A (functions/feeding/shared/meals.ts), never another figure.
 */

/** An argument as it stands in a formula: text of one piece, and what it is where it is no reference. */
export interface Expression {
  readonly text: string;
  readonly literal?: Value;
}

/** A range as it stands in a formula: its cells in reading order, and the reference to them where there is one. */
export interface Expressions {
  readonly each: readonly Expression[];
  readonly whole?: string;
}

/** Why a call has no twin, in words that follow "has no twin: ". */
export class NoTwin extends Error {}

const all = (conditions: readonly string[]): string =>
  conditions.length === 1 ? (conditions[0] as string) : `AND(${conditions.join(",")})`;
const any = (conditions: readonly string[]): string =>
  conditions.length === 1 ? (conditions[0] as string) : `OR(${conditions.join(",")})`;

// ------------------------------------------------------------------------------------------------------- arguments

/** An argument as it is read: what the twin is given, and what has to hold before. */
interface Read<T> {
  readonly written: T;
  /** Holds where the argument is blank; undefined where it cannot be. */
  readonly blank?: string;
  /** Holds where a part of it is blank. */
  readonly partlyBlank?: string;
  /** Hold where it is not refused. */
  readonly conditions: readonly string[];
}

/** A figure that stands in the formula itself is read now. */
const readLiteral = (parameter: CellParameter, literal: Value, system: System): string | undefined => {
  const { kind, unit, limits, words } = parameter;
  const trimmed = typeof literal === "string" ? literal.trim() : literal;
  if (typeof trimmed === "string" && words?.includes(trimmed.toLowerCase())) return quoted(trimmed.toLowerCase());
  if (kind === "text" || kind === "anything") return typeof literal === "string" ? quoted(literal) : String(literal);
  if (kind === "choice" || kind === "units") return undefined;
  const iso = kind === "date" && typeof trimmed === "string" ? serialOfIso(trimmed) : undefined;
  const figure = iso ?? (typeof trimmed === "string" && PLAIN_NUMBER.test(trimmed) ? Number(trimmed) : trimmed);
  if (typeof figure !== "number") return undefined;
  const metric = kind === "date" && unit === "date" ? Math.floor(figure) : toMetric(figure, unit, system);
  if (kind === "count" && !Number.isInteger(figure)) return undefined;
  if (limits && (metric < limits.least || metric > limits.most)) return undefined;
  return numeral(metric);
};

const metricText = (text: string, { unit, kind, words }: CellParameter, system: System): string => {
  if (kind === "date" && unit === "date") return text.startsWith("INT(") ? text : `INT(${text})`;
  if (system === "metric" || !hasSystems(unit)) return text;
  const offset = fromMetric(0, unit, system);
  const factor = fromMetric(1, unit, system) - offset;
  const metric = `${offset === 0 ? text : `(${text}-${numeral(offset)})`}/${numeral(factor)}`;
  return words ? `IF(ISNUMBER(${text}),${metric},${text})` : `(${metric})`;
};

/** Limits in the system of the call, without the noise of converting them. */
const endsOf = ({ least, most }: Limits, unit: Unit, system: System): readonly [number, number] =>
  system === "metric"
    ? [least, most]
    : ([least, most].map((end) => Number(fromMetric(end, unit, system).toPrecision(12))) as [number, number]);

/** What holds of a cell that the boundary does not refuse, in the system of the call. */
const withinLimits = (text: string, { kind, unit, limits, words }: CellParameter, system: System): string[] => {
  const figure: string[] = [];
  if (limits) {
    const [least, most] = endsOf(limits, unit, system);
    figure.push(`${text}>=${least}`, kind === "date" ? `${text}<${most + 1}` : `${text}<=${most}`);
    if (kind === "count") figure.push(`INT(${text})=${text}`);
  }
  if (!words) return figure;
  const named = words.map((word) => `${text}=${quoted(word)}`);
  return [any(limits ? [all(figure), ...named] : named)];
};

const readCell = (parameter: CellParameter, { text, literal }: Expression, system: System): Read<string> => {
  if (literal !== undefined) {
    const written = readLiteral(parameter, literal, system);
    return written === undefined ? { written: text, conditions: ["FALSE"] } : { written, conditions: [] };
  }
  return {
    written: metricText(text, parameter, system),
    blank: `${text}=""`,
    conditions: withinLimits(text, parameter, system),
  };
};

const readRange = (parameter: RangeParameter, range: Expressions, system: System): Read<WrittenCells> => {
  const [, cell] = parameter.columns[0] as readonly [string, CellParameter];
  const { each, whole } = range;
  if (parameter.length !== undefined && each.length !== parameter.length) {
    return { written: { each: [], whole: "" }, conditions: ["FALSE"] };
  }
  if (parameter.length === undefined && whole === undefined) throw new NoTwin("one of its ranges is no range of cells");
  const cells = parameter.length === undefined ? [] : each.map((one) => readCell(cell, one, system));
  const written = {
    each: cells.map((one) => one.written),
    get whole() {
      if (system !== "metric" && hasSystems(cell.unit)) throw new NoTwin("a range that it reads whole is not metric");
      return whole ?? "";
    },
  };
  if (whole !== undefined) {
    const [least, most] = cell.limits ? endsOf(cell.limits, cell.unit, system) : [];
    const inLimits =
      least === undefined || most === undefined ? [] : [`MIN(${whole})>=${least}`, `MAX(${whole})<=${most}`];
    const size = each.length;
    return {
      written,
      blank: `COUNTBLANK(${whole})=${size}`,
      ...(parameter.blank === "refuse" ? { partlyBlank: `COUNTBLANK(${whole})>0` } : {}),
      conditions: [`COUNT(${whole})+COUNTBLANK(${whole})=${size}`, ...inLimits],
    };
  }
  const blanks = cells.flatMap(({ blank }) => blank ?? []);
  return {
    written,
    ...(blanks.length === each.length ? { blank: all(blanks) } : {}),
    ...(blanks.length > 0 ? { partlyBlank: any(blanks) } : {}),
    conditions: cells.flatMap(({ conditions }) => conditions),
  };
};

const isRange = (parameter: Parameter): parameter is RangeParameter => parameter.reads === "range";

/** What an optional argument hands to the twin. */
const optionOf =
  <T>({ written, blank }: Read<T>): WrittenOption<T> =>
  (without, given = (own) => String(own)) =>
    blank === undefined ? given(written) : `IF(${blank},${without},${given(written)})`;

// ---------------------------------------------------------------------------------------------------------- answers

/** A cell of an answer. */
export interface Place {
  readonly row: number;
  readonly column: number;
  /** Whether no further row of the answer is written. */
  readonly isLast: boolean;
}

/** The twin of one call, written cell by cell. */
export interface Native {
  /** How many rows it answers, where that does not depend on a figure of the sheet. */
  readonly rows: number | undefined;
  /** The formula of a cell of the answer, without "=". */
  cell(place: Place): string;
}

type Twin = NonNullable<AnyDefinition["twin"]>;
type Given = readonly (Expression | Expressions | undefined)[];
type Written = ReturnType<Twin>;

const isRows = (answer: Written): answer is WrittenRows => typeof answer === "object" && "count" in answer;

/** A metric answer in the system of the call. */
const outward = (text: string, unit: Unit, system: System): string => {
  if (system === "metric" || !hasSystems(unit)) return text;
  const offset = fromMetric(0, unit, system);
  const factor = fromMetric(1, unit, system) - offset;
  return `(${text})*${numeral(factor)}${offset === 0 ? "" : `+${offset}`}`;
};

/** What the twin has written for one cell, in the system of the call. */
const textAt = (answer: Written, { result }: AnyDefinition, { row, column, isLast }: Place, system: System): string => {
  const out = (text: string): string =>
    outward(text, unitAt(result.columns, row, result.shape === "list" ? 0 : column), system);
  if (typeof answer === "string") return out(answer);
  if (isRows(answer)) {
    const text = out(answer.row(row)[column] ?? MISSING);
    // A row that is missing for want of cells is not left out in silence.
    const last = isLast ? `IF(${answer.count}>${row + 1},${MISSING},${text})` : text;
    return row === 0 ? last : `IF(${answer.count}>${row},${last},"")`;
  }
  const line = answer[result.shape === "columns" ? column : row];
  const text = typeof line === "string" ? line : line?.[column];
  if (text === undefined) throw new NoTwin("the formula asks for more cells than it answers");
  return out(text);
};

/** An answer that says nothing where it is refused. What is converted of nothing would be an error. */
const silent = (answer: string, system: System): string =>
  system === "metric" || answer.includes(MISSING)
    ? answer.replaceAll(REFUSED, '""')
    : answer.includes(REFUSED)
      ? `IFERROR(${answer},"")`
      : answer;

/** The arguments of a call, read: what the twin is given, and what has to hold before it is asked. */
interface Ready {
  readonly values: Readonly<Record<string, unknown>>;
  readonly required: readonly Read<unknown>[];
  /** Hold where an optional list is half-filled. */
  readonly halfFilled: readonly string[];
  readonly conditions: readonly string[];
  /** What every cell answers, whatever the sheet holds. */
  readonly error?: string;
}

const readyFor = (definition: AnyDefinition, given: Given, system: System): Ready => {
  const values: Record<string, unknown> = {};
  const required: Read<unknown>[] = [];
  const halfFilled: string[] = [];
  const conditions: string[] = [];
  let error: string | undefined;
  for (const [i, [name, parameter]] of Object.entries(definition.parameters).entries()) {
    const own = given[i];
    if (parameter.kind === "units") continue;
    if (own === undefined || ("literal" in own && own.literal === "")) {
      values[name] = (without: string) => without;
      if (!parameter.optional) error ??= MISSING;
      continue;
    }
    const read = isRange(parameter)
      ? readRange(parameter, "each" in own ? own : { each: [own] }, system)
      : readCell(parameter, own as Expression, system);
    if (read.conditions.includes("FALSE")) error = REFUSED;
    values[name] = parameter.optional ? optionOf<unknown>(read) : read.written;
    if (!parameter.optional) {
      required.push(read);
      conditions.push(...read.conditions);
      continue;
    }
    const { blank, partlyBlank } = read;
    if (partlyBlank !== undefined)
      halfFilled.push(blank === undefined ? partlyBlank : `AND(${partlyBlank},NOT(${blank}))`);
    // Where an optional argument is blank, nothing has to hold of it.
    if (blank === undefined) conditions.push(...read.conditions);
    else if (read.conditions.length > 0) conditions.push(any([blank, all(read.conditions)]));
  }
  return { values, required, halfFilled, conditions, ...(error === undefined ? {} : { error }) };
};

/** The answer inside of what the boundary does: blanks, half-filled rows, limits. */
const guarded = (
  answer: string,
  { required, halfFilled, conditions }: Ready,
  failed: (error: string) => string,
): string => {
  const checked = conditions.length === 0 ? answer : `IF(${all(conditions)},${answer},${failed(REFUSED)})`;
  const blanks = required.flatMap(({ blank }) => blank ?? []);
  const partly = [...required.flatMap(({ blank, partlyBlank }) => partlyBlank ?? blank ?? []), ...halfFilled];
  const isBlank = blanks.length > 0 && blanks.length === required.length ? all(blanks) : undefined;
  const isHalf = partly.length > 0 ? any(partly) : undefined;
  const half = isHalf === undefined || isHalf === isBlank ? checked : `IF(${isHalf},${failed(MISSING)},${checked})`;
  return isBlank === undefined ? half : `IF(${isBlank},"",${half})`;
};

/** The twin of a call whose arguments are those expressions; throws `NoTwin` where it cannot be written. */
export const nativeOf = (definition: AnyDefinition, twin: Twin, given: Given): Native => {
  const { shape } = definition.result;
  const at = Object.values(definition.parameters).findIndex(({ kind }) => kind === "units");
  const units = given[at] as Expression | undefined; // where there are none, nothing stands at -1
  const cellIn = (system: System, place: Place): string => {
    const { row, column } = place;
    // A problem with a block that is answered once stands in its first cell alone.
    const inside = (shape === "table" || shape === "list") && (row > 0 || column > 0);
    const failed = (error: string): string => (inside ? '""' : error);
    const ready = readyFor(definition, given, system);
    if (ready.error !== undefined) return failed(ready.error);
    const answer = textAt(twin(ready.values), definition, place, system);
    return guarded(inside ? silent(answer, system) : answer, ready, failed);
  };
  return {
    get rows() {
      const { values, error } = readyFor(definition, given, "metric");
      if (error !== undefined) return undefined;
      const answer = twin(values);
      return typeof answer === "string" || isRows(answer) ? undefined : answer.length;
    },
    cell(place) {
      if (units === undefined || units.literal === "") return cellIn("metric", place);
      if (units.literal !== undefined) {
        const word = String(units.literal).trim().toLowerCase();
        return word === "metric" || word === "imperial" ? cellIn(word, place) : REFUSED;
      }
      const { text } = units;
      const imperial = `IF(${text}="imperial",${cellIn("imperial", place)},${REFUSED})`;
      return `IF(OR(${text}="",${text}="metric"),${cellIn("metric", place)},${imperial})`;
    },
  };
};
