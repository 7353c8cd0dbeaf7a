import { FIRST_DAY } from "../../functions/dates";
import { momentOf } from "./axis";
import { figure } from "./cells";
import type { Row } from "./marks/plot";

/**
 * The rows of an axis in order: days where every entry is a day's serial number, plain numbers (weeks), or words, which
 * may come twice. A row without an entry is left out.
 */
export const rowsOf = (along: readonly unknown[]) => {
  const entries = along
    .map((cell, index) => ({ cell, index }))
    .filter(({ cell }) => cell !== null && cell !== undefined && cell !== "");
  const numeric = entries.length > 0 && entries.every(({ cell }) => Number.isFinite(figure(cell)));
  const dated = numeric && entries.every(({ cell }) => figure(cell) >= FIRST_DAY);
  const rows: readonly Row[] = entries
    .map(({ cell, index }, i) => ({
      x: dated ? momentOf(figure(cell)) : numeric ? figure(cell) : i,
      label: numeric ? "" : String(cell),
      index,
    }))
    .sort((a, b) => Number(a.x) - Number(b.x));
  return { rows, numeric, dated };
};
