import { PREFIX, type AnyDefinition, type Answer } from "../../functions/define";
import { Problem } from "../../functions/problem";

/** How a function is called as a sheet calls it: the boundary does, which the page around the pane hands over. */
export type Evaluate = (
  definition: AnyDefinition,
  given: readonly unknown[],
) => { readonly cells: readonly (readonly Answer[])[] };

/** What a new column asks in each row. From the same tree come its formula and the answers that are shown before. */
export type Expression =
  /** The cell of this row. */
  | { readonly cell: string }
  /** The cells from the first row to this one. */
  | { readonly toHere: string }
  /** What stands once, for all rows. */
  | { readonly once: string }
  | { readonly word: string }
  /** An argument that is left out. */
  | "none"
  | { readonly less: readonly [Expression, Expression | number] }
  | { readonly call: AnyDefinition; readonly given: readonly Expression[]; readonly pick?: number };

/** Where a row's answer stays empty. */
export type Guard =
  | { readonly blank: string }
  /** No earlier row of the same animal. */
  | { readonly firstOf: { readonly dates: string; readonly animal: string | undefined } }
  /** Fewer entries so far than it takes. */
  | { readonly fewer: number; readonly of: string; readonly animal: string | undefined }
  | { readonly before: string; readonly date: string };

/** How the places of an expression are written. */
export interface Written {
  readonly cell: (name: string) => string;
  readonly toHere: (name: string) => string;
  readonly once: (name: string) => string;
}

export const formulaText = (one: Expression, written: Written): string => {
  if (one === "none") return '""';
  if ("cell" in one) return written.cell(one.cell);
  if ("toHere" in one) return written.toHere(one.toHere);
  if ("once" in one) return written.once(one.once);
  if ("word" in one) return `"${one.word}"`;
  if ("less" in one) {
    const [from, take] = one.less;
    return `${formulaText(from, written)}-${typeof take === "number" ? take : formulaText(take, written)}`;
  }
  const call = `${PREFIX}.${one.call.name}(${one.given.map((each) => formulaText(each, written)).join(",")})`;
  return one.pick === undefined ? call : `INDEX(${call},1,${one.pick + 1})`;
};

const sameAnimal = (animal: string | undefined, { cell, toHere }: Written): string =>
  animal === undefined ? "" : `(TRIM(${toHere(animal)})=TRIM(${cell(animal)}))*`;

export const guardText = (guard: Guard, written: Written): string => {
  const { cell, toHere, once } = written;
  if ("blank" in guard) return `${cell(guard.blank)}=""`;
  if ("before" in guard) return `${cell(guard.date)}<${once(guard.before)}`;
  if ("fewer" in guard)
    return `SUMPRODUCT(${sameAnimal(guard.animal, written)}(${toHere(guard.of)}<>""))<${guard.fewer}`;
  const { dates, animal } = guard.firstOf;
  return `SUMPRODUCT(${sameAnimal(animal, written)}(${toHere(dates)}<>"")*(${toHere(dates)}<${cell(dates)}))=0`;
};

/** What the places of an expression hold. */
export interface Held {
  readonly cell: (name: string) => unknown;
  readonly toHere: (name: string) => readonly unknown[];
  readonly once: (name: string) => unknown;
}

const isBlank = (value: unknown): boolean =>
  value === null || value === undefined || (typeof value === "string" && value.trim() === "");

const key = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? String(value).trim().toLowerCase() : "";

export const isGuarded = (guard: Guard, { cell, toHere, once }: Held): boolean => {
  const own = (animal: string | undefined, i: number): boolean =>
    animal === undefined || key(toHere(animal)[i]) === key(cell(animal));
  if ("blank" in guard) return isBlank(cell(guard.blank));
  if ("before" in guard) return Number(cell(guard.date)) < Number(once(guard.before));
  if ("fewer" in guard)
    return toHere(guard.of).filter((value, i) => !isBlank(value) && own(guard.animal, i)).length < guard.fewer;
  const { dates, animal } = guard.firstOf;
  return !toHere(dates).some((day, i) => !isBlank(day) && Number(day) < Number(cell(dates)) && own(animal, i));
};

export const answerOf = (one: Expression, held: Held, evaluate: Evaluate): unknown => {
  if (one === "none") return null;
  if ("cell" in one) return held.cell(one.cell);
  if ("toHere" in one) return held.toHere(one.toHere).map((value) => [value]);
  if ("once" in one) return held.once(one.once);
  if ("word" in one) return one.word;
  if ("less" in one) {
    const [from, take] = one.less.map((each) => (typeof each === "number" ? each : answerOf(each, held, evaluate)));
    if (from instanceof Problem) return from;
    return take instanceof Problem ? take : Number(from) - Number(take);
  }
  const given: unknown[] = [];
  for (const each of one.given) {
    const value = answerOf(each, held, evaluate);
    if (value instanceof Problem) return value;
    given.push(value);
  }
  const [row = []] = evaluate(one.call, given).cells;
  return row.length === 1 ? row[0] : row[one.pick ?? 0];
};
