import type { AnyDefinition, Example } from "../../functions/define";
import { formulaOf } from "../../functions/formula";
import type { CellState, Workbook } from "../workbook";
import { impossible, stopIfCancelled, type Action } from "./action";
import { areaName, cellName, onSheet } from "./place";

export interface FormulaChoice {
  readonly definition: AnyDefinition;
  readonly example: Example;
}

/** The rows and columns that an example's answer fills. */
const sizeOf = ({ gives, rows }: Example): { readonly rows: number; readonly columns: number } =>
  Array.isArray(gives)
    ? { rows: rows ?? gives.length, columns: ((gives as readonly (readonly unknown[])[])[0] ?? []).length }
    : { rows: 1, columns: 1 };

const isEmpty = (state: CellState | undefined): boolean =>
  !state || (state.formula === undefined && !state.spilledFrom && (state.value === null || state.value === ""));

/** What a cell holds, for a question about it. */
const holds = ({ formula, value }: CellState): string => {
  const content = formula ?? (value !== null && typeof value === "object" ? value.error : String(value));
  return content.length > 60 ? `${content.slice(0, 57)}…` : content;
};

/** Where the example would go, and what stands there. */
const placeOf = async (workbook: Workbook, { example }: FormulaChoice) => {
  const { sheet, row, column } = await workbook.selection();
  const [contents] = await workbook.read([sheet]);
  const size = sizeOf(example);
  const states = Array.from({ length: size.rows }, (_, i) =>
    Array.from({ length: size.columns }, (_, j) => ({
      name: cellName(row + i, column + j),
      state: contents?.cells[row + i]?.[column + j],
    })),
  ).flat();
  return {
    sheet,
    row,
    column,
    locked: contents?.locked ?? false,
    area: onSheet(sheet, areaName({ row, column, ...size })),
    first: states[0]?.state,
    inTheWay: states
      .slice(1)
      .filter(({ state }) => !isEmpty(state))
      .map(({ name }) => name),
  };
};

export const insertFormula: Action<FormulaChoice> = {
  key: "insert-formula",
  label: "Insert at the selected cell",
  about: "Writes the example at the selected cell. Asks first if something stands there.",
  async describe(workbook, choice) {
    const { area, first, inTheWay, locked, sheet } = await placeOf(workbook, choice);
    const formula = formulaOf(choice.definition, choice.example);
    if (locked) return impossible(`"${sheet}" is protected. Select a cell on another sheet. Nothing was changed.`);
    if (first?.spilledFrom) {
      return impossible(
        "The selected cell belongs to another formula's answer. Select an empty cell. Nothing was changed.",
      );
    }
    if (inTheWay.length > 0) {
      return impossible(
        `The answer fills ${area}, and ${inTheWay.slice(0, 3).join(", ")}${inTheWay.length > 3 ? " and others" : ""} ` +
          "already hold something. Select a cell with room below and to the right. Nothing was changed.",
      );
    }
    if (isEmpty(first)) return { text: `Writes ${formula} into ${area}.`, possible: true, ask: false };
    return {
      text: `${area} holds ${first ? holds(first) : ""}. ${formula} will stand in its place.`,
      possible: true,
      ask: true,
    };
  },
  async run(workbook, choice, options) {
    const { sheet, row, column, area } = await placeOf(workbook, choice);
    stopIfCancelled(options);
    const formula = formulaOf(choice.definition, choice.example);
    await workbook.write([{ sheet, row, column, cells: [[{ formula }]] }], options);
    return { text: `${formula} stands in ${area}. Put your own cells in place of its figures.` };
  },
};
