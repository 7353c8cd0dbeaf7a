import { isPlotted } from "../../taskpane/pictures/plotted";
import { WorkbookError, type CellState, type SheetContents } from "../../taskpane/workbook";
import { stateOf } from "./entry";

/** Cells asked for or sent at once: Excel on the web takes 5 MB a message. */
export const CELLS_AT_ONCE = 20_000;

/** Cells asked at once about their spill: each takes 831 bytes of a message (measured with the platform's own script). */
const SPILLS_AT_ONCE = 2_000;

/** Asks about cells in messages that do not grow too large. */
const inPortions = async <T, Asked>(
  context: Excel.RequestContext,
  all: readonly T[],
  ask: (one: T) => Asked,
): Promise<readonly Asked[]> => {
  const asked: Asked[] = [];
  for (let start = 0; start < all.length; start += SPILLS_AT_ONCE) {
    asked.push(...all.slice(start, start + SPILLS_AT_ONCE).map(ask));
    await context.sync();
  }
  return asked;
};

/** A range's cells once they have been asked for. */
export const LOADED = ["formulas", "values", "valueTypes", "numberFormat", "hasSpill", "rowIndex", "columnIndex"];

/** Excel says null where some of a range spills, whatever the types say. */
const spillsSomewhere = ({ hasSpill }: { readonly hasSpill: boolean | null }): boolean => hasSpill !== false;

/** A range without spills, or before they are known. */
export const statesOf = (range: Excel.Range): CellState[][] =>
  range.values.map((row, i) =>
    row.map((value: unknown, j) =>
      stateOf(range.formulas[i]?.[j], value, range.valueTypes[i]?.[j] ?? "Empty", range.numberFormat[i]?.[j]),
    ),
  );

const filledBy = ({ formula: _, ...rest }: CellState, row: number, column: number): CellState => ({
  ...rest,
  spilledFrom: { row, column },
});

/**
 * For ranges whose cells may be filled from outside of them: the formula that fills each cell. Asks only where Excel
 * says that something spills.
 */
export const withSpillParents = async (
  context: Excel.RequestContext,
  ranges: readonly { readonly range: Excel.Range; readonly states: CellState[][] }[],
): Promise<void> => {
  const filled = ranges.flatMap(({ range, states }) =>
    !spillsSomewhere(range)
      ? []
      : states.flatMap((row, i) => row.flatMap(({ value }, j) => (value === null ? [] : [{ range, states, i, j }]))),
  );
  const asked = await inPortions(context, filled, ({ range, states, i, j }) => {
    const parent = range.getCell(i, j).getSpillParentOrNullObject();
    parent.load("rowIndex,columnIndex");
    return { parent, states, i, j, row: range.rowIndex + i, column: range.columnIndex + j };
  });
  for (const { parent, states, i, j, row, column } of asked) {
    const state = states[i]?.[j];
    // A formula may be told as filling its own cell.
    if (!state || parent.isNullObject || (parent.rowIndex === row && parent.columnIndex === column)) continue;
    (states[i] as CellState[])[j] = filledBy(state, parent.rowIndex, parent.columnIndex);
  }
};

/** The sheets' names, in order. */
export const sheetNames = async (context: Excel.RequestContext): Promise<readonly string[]> => {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  return worksheets.items.map(({ name }) => name);
};

/** Sheets by name; a WorkbookError names the one that is not there. */
export const sheetsNamed = async (
  context: Excel.RequestContext,
  names: readonly string[],
): Promise<ReadonlyMap<string, Excel.Worksheet>> => {
  const unique = [...new Set(names)];
  const sheets = unique.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
  for (const sheet of sheets) {
    sheet.load("name,id,visibility");
    sheet.protection.load("protected");
  }
  await context.sync();
  const missing = sheets.findIndex(({ isNullObject }) => isNullObject);
  if (missing >= 0)
    throw new WorkbookError(`There is no sheet "${unique[missing]}" in the workbook any more. Nothing was changed.`);
  return new Map(unique.map((name, i) => [name, sheets[i] as Excel.Worksheet]));
};

/** A formula that fills more than its own cell fills the next one to the right or below. */
const mayFill = (state: CellState | undefined): boolean =>
  state !== undefined && state.formula === undefined && state.value !== null;

/** Where the formulas of whole sheets spill to, their states counted from A1. */
const withSpills = async (
  context: Excel.RequestContext,
  sheets: readonly { readonly sheet: Excel.Worksheet; readonly spills: boolean; readonly states: CellState[][] }[],
): Promise<void> => {
  const formulas = sheets.flatMap(({ sheet, spills, states }) =>
    spills
      ? states.flatMap((line, row) =>
          line.flatMap(({ formula }, column) =>
            formula !== undefined && (mayFill(line[column + 1]) || mayFill(states[row + 1]?.[column]))
              ? [{ sheet, states, row, column }]
              : [],
          ),
        )
      : [],
  );
  const asked = await inPortions(context, formulas, ({ sheet, states, row, column }) => {
    const spilling = sheet.getRangeByIndexes(row, column, 1, 1).getSpillingToRangeOrNullObject();
    spilling.load("rowCount,columnCount");
    return { spilling, states, row, column };
  });
  for (const { spilling, states, row, column } of asked) {
    if (spilling.isNullObject) continue;
    for (let i = row; i < row + spilling.rowCount; i++) {
      for (let j = column; j < column + spilling.columnCount; j++) {
        const state = states[i]?.[j];
        if (state && (i !== row || j !== column)) (states[i] as CellState[])[j] = filledBy(state, row, column);
      }
    }
  }
};

/** What our charts are drawn from is no part of the sheet: neither read nor frozen, nor handed over in a file. */
const withoutPlotted = (states: CellState[][]): CellState[][] =>
  states.map((row) => row.map((state) => (isPlotted(state.formula ?? "") ? { value: null } : state)));

/** Cells without the blank rows below and the blank columns to the right that only carry formats. */
const trimmed = (states: readonly CellState[][]): CellState[][] => {
  const isUsed = ({ formula, value }: CellState): boolean => formula !== undefined || value !== null;
  const rows = states.findLastIndex((row) => row.some(isUsed)) + 1;
  const columns = Math.max(0, ...states.map((row) => row.findLastIndex(isUsed) + 1));
  return states.slice(0, rows).map((row) => row.slice(0, columns));
};

/** Everything in the sheets; all of them where none are named. */
export const readSheets = async (
  context: Excel.RequestContext,
  names?: readonly string[],
): Promise<readonly SheetContents[]> => {
  const wanted = names ?? (await sheetNames(context));
  const sheets = await sheetsNamed(context, wanted);
  const used = wanted.map((name) => {
    const sheet = sheets.get(name) as Excel.Worksheet;
    // With formats and all: a formula that answers "" is a used cell too.
    const range = sheet.getUsedRangeOrNullObject(false);
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    return { name, sheet, range };
  });
  await context.sync();

  // In bands of whole rows, so that no message grows too large.
  let waiting = 0;
  const found = [];
  for (const { name, sheet, range } of used) {
    const bands: Excel.Range[] = [];
    found.push({ name, sheet, bands });
    if (range.isNullObject) continue;
    const [rows, columns] = [range.rowIndex + range.rowCount, range.columnIndex + range.columnCount];
    const most = Math.max(1, Math.floor(CELLS_AT_ONCE / columns));
    for (let row = 0; row < rows; row += most) {
      const tall = Math.min(most, rows - row);
      const band = sheet.getRangeByIndexes(row, 0, tall, columns);
      band.load(LOADED);
      bands.push(band);
      waiting += tall * columns;
      if (waiting < CELLS_AT_ONCE) continue;
      waiting = 0;
      await context.sync();
    }
  }
  await context.sync();

  const contents = found.map(({ name, sheet, bands }) => ({
    name,
    sheet,
    spills: bands.some(spillsSomewhere),
    states: trimmed(withoutPlotted(bands.flatMap(statesOf))),
  }));
  await withSpills(context, contents);
  return contents.map(({ name, sheet, states }) => ({
    name,
    hidden: sheet.visibility !== "Visible",
    locked: sheet.protection.protected,
    cells: states,
  }));
};
