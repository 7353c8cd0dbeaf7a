import { count, optional, table, type WrittenOption } from "../../define";
import { PLAN_ROWS } from "../../shared/plan";
import { quoted } from "../../twin";

/** The lengths of a winter plan, as parameters, in the order in which they pass. */
export const planLengths = {
  clear: count("day", "Days at normal temperature after the last meal, for the gut to empty", [0, 366]),
  cool: count("day", "Days from warm down to cold", [1, 366]),
  cold: count("day", "Days in the cold", [0, 366]),
  warm: count("day", "Days from cold up to warm", [1, 366]),
  settle: optional(count("day", "Days of normal temperature before food", [0, 366]), "0"),
};

interface Lengths {
  readonly clear: number;
  readonly cool: number;
  readonly cold: number;
  readonly warm: number;
  readonly settle?: number | undefined;
}

/** How many days after the last meal each of the six dates comes; the last of them is the length of the fast. */
export const daysAfterLastMeal = ({ clear, cool, cold, warm, settle = 0 }: Lengths): readonly number[] => {
  const days = [0];
  for (const length of [clear, cool, cold, warm, settle]) days.push((days.at(-1) as number) + length);
  return days;
};

/** The six rows of a winter plan, as a result. */
export const planRows = table(
  { name: "Stage", unit: "text", about: "What happens on the date" },
  { name: "Date", unit: "date", about: "Its date" },
);

/** The six rows of the plan whose last meal is on that day. */
export const planFrom = (lastMeal: number, daysAfter: readonly number[]): (readonly [string, number])[] =>
  PLAN_ROWS.map((stage, row) => [stage, lastMeal + (daysAfter[row] as number)]);

/** The six rows in a formula, from the lengths that have passed by each date and those that are left. */
export const planText = (
  date: (passed: readonly string[], left: readonly string[]) => string,
  {
    clear,
    cool,
    cold,
    warm,
    settle,
  }: Record<"clear" | "cool" | "cold" | "warm", string> & { readonly settle: WrittenOption<string> },
): (readonly [string, string])[] => {
  const lengths = [clear, cool, cold, warm, settle("0")];
  return PLAN_ROWS.map((stage, row) => [quoted(stage), date(lengths.slice(0, row), lengths.slice(row))]);
};
