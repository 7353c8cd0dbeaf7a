import { inEverySystem } from "../sheets/shared/systems";
import { asItStands } from "../sheets/growing";
import type { Sheet } from "../sheets/sheet";
import type { CellState, SheetContents } from "../workbook";
import { areaOf } from "./place";

/** The words of a template that tell it from every other sheet, and that show whether its cells still stand in their places. */
const marks = (template: Sheet) =>
  template.blocks
    .filter(({ role }) => role === "title" || role === "heading" || role === "label")
    .flatMap(({ at, role, rows }) => {
      const area = areaOf(at);
      if (!area) return [];
      return rows.flatMap((line, i) =>
        line.flatMap((content, j) =>
          typeof content === "string" && content !== "" && !content.startsWith("=")
            ? [{ role, row: area.row + i, column: area.column + j, text: content }]
            : [],
        ),
      );
    });

export interface Recognised {
  readonly template: Sheet;
  /** Whether every heading and label stands where the template has it: only then do its addresses hold. */
  readonly inPlace: boolean;
}

/** The template from which a sheet was made, in the system of its words, known by its title; undefined for a sheet of another kind. */
export const recognise = (
  { cells }: Pick<SheetContents, "cells">,
  templates: readonly Sheet[],
): Recognised | undefined => {
  const holds = ({ row, column, text }: { row: number; column: number; text: string }): boolean =>
    cells[row]?.[column]?.value === text;
  for (const template of templates) {
    const titles = marks(template).filter(({ role }) => role === "title");
    if (titles.length === 0 || !titles.every(holds)) continue;
    // Of both systems the one whose words stand there; where cells were moved, the one of which more does.
    const drawn = inEverySystem(template).map((one) => {
      const now = asItStands(one, (row, column) => cells[row]?.[column]?.value, cells.length);
      return { template: now, missing: marks(now).filter((mark) => !holds(mark)).length };
    });
    const nearest = drawn.reduce((best, one) => (one.missing < best.missing ? one : best));
    return { template: nearest.template, inPlace: nearest.missing === 0 };
  }
  return undefined;
};

/** Rows of a range ("B5:C16") of what a sheet holds; blanks where nothing is, errors as their sign. */
export const valuesOf = (cells: readonly (readonly CellState[])[], range: string): readonly (readonly unknown[])[] => {
  const area = areaOf(range);
  if (!area) return [];
  return Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.columns }, (_, j) => {
      const value = cells[area.row + i]?.[area.column + j]?.value ?? null;
      return value !== null && typeof value === "object" ? value.error : value;
    }),
  );
};
