import { serialOfIso } from "../../functions/dates";
import type { AnyDefinition, Value } from "../../functions/define";
import type { Evaluate } from "../columns/expression";
import { columnLetters } from "../sheets/shared/address";
import { answersOf } from "../uses/answersOf";
import { address, type UseCell } from "../uses/grid";
import type { Use } from "../uses/use";
import { usesOf } from "../uses/usesOf";
import { code, plain, table, together } from "./markdown";

/** Rows of a sample that are shown; a log goes on below them. */
const SHOWN = 14;

const shown = (cell: UseCell): string => {
  if (cell === null) return "";
  if (typeof cell === "object") return cell.day.replace("T", " ");
  return typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell);
};

const DIGITS = 5;

/** A day as a sheet shows it, a figure to as many digits as are read. */
const answered = (value: Value): string => {
  if (typeof value === "number") return String(Number.isInteger(value) ? value : Number(value.toPrecision(DIGITS)));
  return typeof value === "string" && serialOfIso(value) !== undefined ? value.replace("T", " ") : shown(value);
};

/**
 * What the first example answers, as the cells of a sample, for what is only answered after a wait or through FILTER: a list
 * stands in a column there.
 */
const known = ({ examples: [{ gives }], result }: AnyDefinition): readonly (readonly Value[])[] => {
  if (!Array.isArray(gives)) return [[gives as Value]];
  const rows = gives as readonly (readonly Value[])[];
  return result.shape === "list" ? rows.flat().map((value) => [value]) : rows;
};

/** A small sheet with its letters and numbers. What the formulas answer is bold; of what cannot be known here, dots. */
const sheet = (definition: AnyDefinition, use: Use, evaluate: Evaluate): string => {
  const { cells, answers } = use;
  const columns = Math.max(answers.column + answers.columns, ...cells.map((row) => row.length));
  const rows = Math.min(SHOWN, Math.max(answers.row + answers.rows, cells.length));
  const [told, example] = [answersOf(definition, use, evaluate), known(definition)];
  const cellAt = (row: number, column: number): string => {
    const [down, across] = [row - answers.row, column - answers.column];
    if (down < 0 || down >= answers.rows || across < 0 || across >= answers.columns) {
      return plain(shown(cells[row]?.[column] ?? null));
    }
    const value = told[down]?.[across] ?? example[down]?.[across];
    return value === undefined ? "…" : value === "" ? "" : `**${plain(answered(value))}**`;
  };
  return table(
    ["", ...Array.from({ length: columns }, (_, i) => columnLetters(i + 1))],
    Array.from({ length: rows }, (_, row) => [
      String(row + 1),
      ...Array.from({ length: columns }, (_, column) => cellAt(row, column)),
    ]),
  );
};

/** A function at work in a keeper's own sheet, each way in which it is used. */
export const samples = (definition: AnyDefinition, evaluate: Evaluate): string =>
  together(
    ...usesOf(definition).flatMap((use) => {
      const [{ row, column, formula } = { row: 0, column: 0, formula: "" }] = use.formulas;
      return [
        `### ${plain(use.title)}`,
        sheet(definition, use, evaluate),
        code(`${address(column, row)}: ${formula}`),
        plain(use.says),
      ];
    }),
  );
