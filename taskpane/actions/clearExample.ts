import { serialOfIso } from "../../functions/dates";
import { sheets as templates } from "../sheets/catalogue";
import { clearing } from "../sheets/clear";
import type { Content, Sheet } from "../sheets/sheet";
import type { CellState, Change, SheetContents, Workbook } from "../workbook";
import { counted, impossible, stopIfCancelled, type Action } from "./action";
import { areaOf, cellName } from "./place";
import { joined } from "./joined";
import { followsSheet } from "./formulas";
import { recognise } from "./template";

export interface Plan {
  readonly sheet: string;
  readonly changes: readonly Change[];
  /** How many cells hold something, and how many of these are no longer the example. */
  readonly filled: number;
  readonly own: number;
}

/** Whether a cell still holds what the template put there; dates of a template may be ISO text. */
const holdsExample = ({ value, formula }: CellState, content: Content | undefined): boolean => {
  if (typeof content === "string" && content.startsWith("=")) {
    return formula?.replaceAll(" ", "") === content.replaceAll(" ", "");
  }
  const dated = typeof content === "string" ? serialOfIso(content) : undefined;
  return formula === undefined && (value === content || (dated !== undefined && value === dated));
};

/** The template's contents by cell. */
const exampleOf = ({ blocks }: Sheet): ReadonlyMap<string, Content> =>
  new Map(
    blocks.flatMap(({ at, rows }) => {
      const area = areaOf(at);
      return area
        ? rows.flatMap((line, i) =>
            line.map((content, j): [string, Content] => [cellName(area.row + i, area.column + j), content]),
          )
        : [];
    }),
  );

/** What is emptied, or in words why nothing can be. */
export const planOf = (contents: SheetContents): Plan | string => {
  const { name, cells, locked } = contents;
  const known = recognise(contents, templates);
  if (!known)
    return `"${name}" is not a sheet of this pane. Select the one that you want to clear. Nothing was changed.`;
  if (!known.inPlace) {
    return `On "${name}" rows, columns or headings have been moved, so the example is not where it was. Nothing was changed; empty its cells by hand.`;
  }
  if (locked) return `"${name}" is protected. Take the protection off, then try again. Nothing was changed.`;
  const example = exampleOf(known.template);
  let filled = 0;
  let own = 0;
  const changes = clearing(known.template).flatMap((address): readonly Change[] => {
    const area = areaOf(address);
    // Below the last row in use there is nothing to empty, however much room there is.
    const rows = area ? Math.min(area.rows, cells.length - area.row) : 0;
    if (!area || rows < 1) return [];
    return Array.from({ length: rows * area.columns }, (_, i): readonly Change[] => {
      const [row, column] = [area.row + Math.floor(i / area.columns), area.column + (i % area.columns)];
      const state = cells[row]?.[column];
      if (followsSheet(state?.formula)) return [];
      if (state && (state.formula !== undefined || (state.value !== null && state.value !== ""))) {
        filled++;
        if (!holdsExample(state, example.get(cellName(row, column)))) own++;
      }
      return [{ sheet: name, row, column, cells: [[null]] }];
    }).flat();
  });
  return { sheet: name, changes: joined(changes), filled, own };
};

const planOfSelected = async (workbook: Workbook): Promise<Plan | string> => {
  const { sheet } = await workbook.selection();
  const [contents] = await workbook.read([sheet]);
  return contents ? planOf(contents) : `There is no sheet "${sheet}" any more. Nothing was changed.`;
};

export const clearExample: Action = {
  key: "clear-example",
  label: "Clear the example",
  about:
    "Empties the framed cells on the sheet that you are looking at. Formulas, settings, cautions and what follows another sheet stay.",
  async describe(workbook) {
    const plan = await planOfSelected(workbook);
    if (typeof plan === "string") return impossible(plan);
    if (plan.filled === 0) return impossible(`"${plan.sheet}" is clear already.`);
    return {
      text:
        `${counted(plan.filled, "cell")} on "${plan.sheet}" will be emptied. Formulas, settings and cautions stay.` +
        (plan.own > 0
          ? ` Take care: ${counted(plan.own, "cell")} of these ${plan.own === 1 ? "is" : "are"} your own, not the example.`
          : "") +
        (workbook.undoes ? "" : " This cannot be undone."),
      possible: true,
      ask: true,
    };
  },
  async run(workbook, _, options) {
    const plan = await planOfSelected(workbook);
    if (typeof plan === "string") return { text: plan };
    stopIfCancelled(options);
    await workbook.write(plan.changes, options);
    return { text: `${counted(plan.filled, "cell")} on "${plan.sheet}" emptied. The framed cells are yours to fill.` };
  },
};
