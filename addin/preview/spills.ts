import { ObjectMatrix, Range, Rectangle, type Injector, type IRange, type IUnitRange } from "@univerjs/core";
import {
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  type ArrayValueObject,
  type BaseReferenceObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import { Problem } from "../../functions/problem";
import { problemOut } from "./bind";
import { patchLayout, patchOthers } from "./patches";
import { RangesByRow, standingBefore } from "./rangesByRow";
import { growBeyond, ROOM } from "./room";

/** Eleven years of hourly readings, which take a second and a half. */
const MOST_ROWS = 100_000;

const BLOCKED = "#SPILL!";

/**
 * Mends how the engine lays out an answer of many cells, which it has no setting for.
 * - One of more rows than it can lay out would freeze the page: it is a problem. Within a formula it may be of any length.
 * - One with something in its way shows "#SPILL!" and touches no other cell. The engine would put back what stood there
 *   before this calculation, make an empty text of a blank, and empty a cell that shows "#SPILL!" as well, with its
 *   formula.
 * - Of two that want the same cell, the first keeps it for as long as it wants it. The engine would lay out both where
 *   they are new, and clear the cells of one with those that the other only wanted.
 *
 * What comes back finds the formulas that wait for room in any of some areas.
 */
export const mendSpills = (injector: Injector): ((areas: readonly IUnitRange[]) => IUnitRange[]) => {
  const waiting = new Map<string, { readonly at: IUnitRange; readonly wanted: IRange }>();
  const runtime = injector.get(IFormulaRuntimeService);
  const current = injector.get(IFormulaCurrentConfigService);
  // What is laid out is told of in an object a calculation, and in that in one a sheet.
  const laidOut = new WeakMap<object, RangesByRow>();
  const laidOutIn = (unit: string, sheet: string): RangesByRow | undefined => {
    const all = runtime.getUnitArrayFormula()[unit]?.[sheet];
    if (!all) return undefined;
    const found = laidOut.get(all) ?? RangesByRow.of(all);
    laidOut.set(all, found);
    return found;
  };
  patchOthers(injector, (unit, sheet, row, column, atRow, atColumn) => {
    const worked = runtime.getUnitData()[unit]?.[sheet];
    const others = standingBefore(runtime.getUnitArrayFormula(), current.getArrayFormulaRange()[unit]?.[sheet]);
    const isOther = (one: { readonly row: number; readonly column: number }): boolean =>
      !(one.row === row && one.column === column) && worked?.getValue(one.row, one.column)?.v !== BLOCKED;
    return others?.some(atRow, atColumn, isOther) ?? false;
  });

  patchLayout(injector, (layOut) => (answer: FunctionVariantType) => {
    if (!answer.isReferenceObject() && !answer.isArray()) {
      layOut(answer);
      return;
    }
    const area = (answer as BaseReferenceObject | ArrayValueObject).getRangePosition();
    const [rows, columns] = [area.endRow - area.startRow + 1, area.endColumn - area.startColumn + 1];
    if (rows > MOST_ROWS) {
      const message = `the answer has ${rows} rows, and the preview shows at most ${MOST_ROWS}: give a shorter range`;
      layOut(problemOut(new Problem("#VALUE!", message)));
      return;
    }
    const { currentRow: row, currentColumn: column, currentSubUnitId: sheet, currentUnitId: unit } = runtime;
    const wanted = { startRow: row, startColumn: column, endRow: row + rows - 1, endColumn: column + columns - 1 };
    growBeyond(injector, { unitId: unit, subUnitId: sheet }, wanted.endRow + 1, wanted.endColumn + 1);
    // The calculation has the sheet's size from before.
    const size = [wanted.endRow + 1 + ROOM.rows, wanted.endColumn + 1 + ROOM.columns] as const;
    runtime.setCurrent(row, column, ...size, sheet, unit);
    const worked = () => runtime.getUnitData()[unit]?.[sheet];
    const putBack = (i: number, j: number): (() => void) => {
      const before = worked()?.getValue(i, j);
      return () => (before ? worked()?.setValue(i, j, before) : worked()?.realDeleteValue(i, j));
    };
    const standing = current.getUnitData()[unit]?.[sheet]?.cellData;
    const asBefore: (() => void)[] = [];
    Range.foreach(wanted, (i, j) => {
      if (i === row && j === column) return;
      const own = standing?.getValue(i, j);
      if (own && (own.v ?? null) === null)
        asBefore.push(() => {
          own.v = null;
        });
      asBefore.push(putBack(i, j));
    });

    // The cells that other answers of this calculation fill.
    for (const { row: i, column: j, range } of laidOutIn(unit, sheet)?.in(wanted) ?? []) {
      if (i === row && j === column) continue;
      const taken = [Math.max(range.startRow, row), Math.max(range.startColumn, column)] as const;
      if (taken[0] !== row || taken[1] !== column) worked()?.setValue(...taken, { v: 1 });
    }
    layOut(answer);
    const own = runtime.getUnitArrayFormula()[unit]?.[sheet]?.[row]?.[column];
    if (own) laidOutIn(unit, sheet)?.put(row, column, own);
    const key = [unit, sheet, row, column].join();
    waiting.delete(key);
    if (worked()?.getValue(row, column)?.v !== BLOCKED) return;
    for (const one of asBefore) one();
    const range = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    waiting.set(key, { at: { unitId: unit, sheetId: sheet, range }, wanted });
    new ObjectMatrix(runtime.getUnitArrayFormula()[unit]?.[sheet] ?? {}).setValue(row, column, range);
    laidOutIn(unit, sheet)?.put(row, column, range);
  });

  return (areas) =>
    [...waiting.values()]
      .filter(({ at: { unitId, sheetId }, wanted }) =>
        areas.some(
          (one) => one.unitId === unitId && one.sheetId === sheetId && Rectangle.intersects(one.range, wanted),
        ),
      )
      .map(({ at }) => at);
};
