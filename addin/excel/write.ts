import { columnLetters } from "../../taskpane/sheets/shared/address";
import { WorkbookError, type CellState, type Change, type Options } from "../../taskpane/workbook";
import { CELLS_AT_ONCE, LOADED, sheetsNamed, statesOf, withSpillParents } from "./contents";
import { entryBack, entryOf, type Entry } from "./entry";
import { failed, stopIfAborted } from "./failure";

export const sizeOf = (cells: readonly (readonly unknown[])[]): readonly [rows: number, columns: number] => [
  cells.length,
  Math.max(0, ...cells.map((row) => row.length)),
];

/** Hands contents to a range. A formula that goes into a cell of text has to find it plain, or it would stay text. */
const enter = (
  range: Excel.Range,
  entries: readonly (readonly Entry[])[],
  formats: readonly (readonly unknown[])[],
): void => {
  const isStuck = (i: number, j: number): boolean => formats[i]?.[j] === "@" && String(entries[i]?.[j]).startsWith("=");
  const stuck = entries.some((row, i) => row.some((_, j) => isStuck(i, j)));
  if (stuck) range.numberFormat = formats.map((row, i) => row.map((format, j) => (isStuck(i, j) ? "General" : format)));
  range.formulas = entries.map((row) => [...row]);
  if (stuck) range.numberFormat = formats.map((row) => [...row]);
};

interface Target {
  readonly change: Change;
  readonly range: Excel.Range;
  readonly states: CellState[][];
  readonly formats: readonly (readonly unknown[])[];
}

/** Where changes go, and what is there now. Refuses what must not be written over. */
const targetsOf = async (context: Excel.RequestContext, changes: readonly Change[]): Promise<readonly Target[]> => {
  const sheets = await sheetsNamed(
    context,
    changes.map(({ sheet }) => sheet),
  );
  const locked = [...sheets].filter(([, sheet]) => sheet.protection.protected).map(([name]) => name);
  if (locked.length > 0) {
    throw new WorkbookError(
      `Protected: ${locked.map((name) => `"${name}"`).join(", ")}. Nothing was changed. Unprotect first, then try again.`,
    );
  }
  const ranges = changes.map((change) => {
    const [rows, columns] = sizeOf(change.cells);
    return (sheets.get(change.sheet) as Excel.Worksheet).getRangeByIndexes(change.row, change.column, rows, columns);
  });
  let waiting = 0;
  for (const [i, range] of ranges.entries()) {
    const [rows, columns] = sizeOf(changes[i]?.cells ?? []);
    range.load(LOADED);
    waiting += rows * columns;
    if (waiting < CELLS_AT_ONCE && i < ranges.length - 1) continue;
    waiting = 0;
    await context.sync();
  }
  const targets = changes.map((change, i) => {
    const range = ranges[i] as Excel.Range;
    return { change, range, states: statesOf(range), formats: range.numberFormat as unknown[][] };
  });
  await withSpillParents(context, targets);

  const written = (sheet: string, row: number, column: number): boolean =>
    changes.some(
      (change) =>
        change.sheet === sheet &&
        row >= change.row &&
        row < change.row + change.cells.length &&
        column >= change.column &&
        column < change.column + sizeOf(change.cells)[1],
    );
  for (const { change, states } of targets) {
    for (const [i, row] of states.entries()) {
      for (const [j, { spilledFrom }] of row.entries()) {
        const content = change.cells[i]?.[j];
        if (
          !spilledFrom ||
          content === null ||
          content === undefined ||
          written(change.sheet, spilledFrom.row, spilledFrom.column)
        )
          continue;
        const [at, from] = [
          `${columnLetters(change.column + j + 1)}${change.row + i + 1}`,
          `${columnLetters(spilledFrom.column + 1)}${spilledFrom.row + 1}`,
        ];
        throw new WorkbookError(
          `${at} of "${change.sheet}" is filled by the formula in ${from}. Nothing was changed. Choose an empty cell, or clear ${from} first.`,
        );
      }
    }
  }
  return targets;
};

const putBack = async (targets: readonly Target[]): Promise<void> => {
  await Excel.run(async (context) => {
    // Emptied first, all of it: what a formula used to fill must be free when it comes back.
    const places = targets.map(({ change, states, formats }) => ({
      range: context.workbook.worksheets
        .getItem(change.sheet)
        .getRangeByIndexes(change.row, change.column, ...sizeOf(states)),
      entries: states.map((row) => row.map(entryBack)),
      formats,
    }));
    for (const { range, entries } of places) range.formulas = entries.map((row) => row.map(() => ""));
    for (const { range, entries, formats } of places) {
      enter(range, entries, formats);
      range.numberFormat = formats.map((row) => [...row]);
    }
    await context.sync();
  });
};

/** A tall change as several, so that no message grows too large. */
const banded = (change: Change): readonly Change[] => {
  const [rows, columns] = sizeOf(change.cells);
  const most = Math.max(1, Math.floor(CELLS_AT_ONCE / columns));
  return Array.from({ length: Math.ceil(rows / most) }, (_, i) => ({
    ...change,
    row: change.row + i * most,
    cells: change.cells.slice(i * most, (i + 1) * most),
  }));
};

/** Writes blocks of cells, whole or not at all. */
export const write = async (changes: readonly Change[], options: Options): Promise<void> => {
  const meant = changes.filter(({ cells }) => sizeOf(cells).every((size) => size > 0)).flatMap(banded);
  if (meant.length === 0) return;
  let begun: readonly Target[] = [];
  try {
    await Excel.run(async (context) => {
      stopIfAborted(options);
      const targets = await targetsOf(context, meant);
      stopIfAborted(options);
      begun = targets;
      let waiting = 0;
      for (const [i, { change, range, formats }] of targets.entries()) {
        const [rows, columns] = sizeOf(change.cells);
        const entries = change.cells.map((row) => Array.from({ length: columns }, (_, j) => entryOf(row[j])));
        enter(range, entries, formats);
        if (change.format !== undefined) range.numberFormat = entries.map((row) => row.map(() => change.format));
        waiting += rows * columns;
        if (waiting < CELLS_AT_ONCE && i < targets.length - 1) continue;
        waiting = 0;
        await context.sync();
        options.progress?.((i + 1) / targets.length);
        if (i < targets.length - 1) stopIfAborted(options);
      }
    });
  } catch (failure) {
    if (begun.length === 0) throw failed("write the cells", failure);
    try {
      await putBack(begun);
    } catch {
      throw failed("write the cells", failure, "Some cells could not be put back: look at them before you go on.");
    }
    throw failed("write the cells", failure);
  }
};
