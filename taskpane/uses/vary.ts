import { isoOf, serialOfIso } from "../../functions/dates";
import type { CellParameter, Value } from "../../functions/define";
import type { Unit } from "../../functions/units";

/** A step to the next row of a sample, so that two figures that belong together stay apart by as much. */
const STEPS: Partial<Readonly<Record<Unit, number>>> = {
  celsius: -1,
  percent: -5,
  millimetre: 10,
  metre: 100,
  kilometre: 5,
  degree: 0.5,
  none: 1,
};
/** A mass falls by a share instead: prey and animal by the same. */
const SHARE = -0.02;
const DAYS = 7;

const rounded = (value: number): number => Number(value.toFixed(value < 100 ? 1 : 0));

/** An example's cell as it may read so many rows further down. */
export const varied = (value: Value, { unit }: CellParameter, rows: number): Value => {
  if (rows === 0) return value;
  if (unit === "date" || unit === "date and time") {
    const serial = typeof value === "string" ? serialOfIso(value) : undefined;
    return serial === undefined ? value : isoOf(serial + DAYS * rows);
  }
  if (typeof value !== "number") return value;
  if (unit === "gram") return rounded(value * (1 + SHARE * rows));
  return Number((value + (STEPS[unit] ?? 0) * rows).toFixed(6));
};
