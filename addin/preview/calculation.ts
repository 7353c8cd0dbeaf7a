import {
  ICommandService,
  IUniverInstanceService,
  Rectangle,
  UniverInstanceType,
  type Injector,
  type IRange,
  type IUnitRange,
  type Workbook,
} from "@univerjs/core";
import {
  FormulaDataModel,
  FormulaExecutedStateType,
  IActiveDirtyManagerService,
  ICalculateFormulaService,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { drawOnce, lookOnce, patchExecution, startingNow, tellOfStops } from "./patches";

/** What one calculation is given: what has changed, and the cells. */
type Wanted = Parameters<ICalculateFormulaService["execute"]>[0];

/** So long may pass before a change that was heard of is being worked out. */
const LONGEST = 60_000; // ms
/** So many calculations may follow one another, as a keeper who types on sets them off, until it is said that there is no end. */
const MOST = 1_000;

interface Spill {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly range: IRange;
  readonly values: string;
}

const moment = (milliseconds = 0): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Everything that is spilled now, by the place of its formula. */
const spillsIn = (model: FormulaDataModel): Map<string, Spill> => {
  const spills = new Map<string, Spill>();
  const cells = model.getArrayFormulaCellData();
  for (const [unitId, sheets] of Object.entries(model.getArrayFormulaRange())) {
    for (const [sheetId, rows] of Object.entries(sheets ?? {})) {
      const filled = cells[unitId]?.[sheetId];
      for (const [row, line] of Object.entries(rows)) {
        for (const [column, range] of Object.entries((line ?? {}) as Record<string, IRange>)) {
          const values: unknown[] = [];
          for (let i = range.startRow; i <= range.endRow; i++)
            for (let j = range.startColumn; j <= range.endColumn; j++) values.push(filled?.[i]?.[j]?.v ?? null);
          spills.set([unitId, sheetId, row, column].join(), {
            unitId,
            sheetId,
            row: Number(row),
            column: Number(column),
            range,
            values: JSON.stringify(values),
          });
        }
      }
    }
  }
  return spills;
};

/** The cells that a formula fills besides its own. */
const besides = ({ unitId, sheetId, range }: Spill): IUnitRange[] => {
  const { startRow, startColumn, endRow, endColumn } = range;
  const right = { startRow, startColumn: startColumn + 1, endRow: startRow, endColumn };
  const below = { startRow: startRow + 1, startColumn, endRow, endColumn };
  return [right, below]
    .filter((part) => part.startRow <= part.endRow && part.startColumn <= part.endColumn)
    .map((part) => ({ unitId, sheetId, range: part }));
};

const NOWHERE: IRange = { startRow: -1, endRow: -1, startColumn: -1, endColumn: -1 };

/** The cells that formulas have filled, or left, on the way from `before` to `now`. */
const changedIn = (before: ReadonlyMap<string, Spill>, now: ReadonlyMap<string, Spill>): IUnitRange[] =>
  [...new Set([...before.keys(), ...now.keys()])].flatMap((key) => {
    const [old, fresh] = [before.get(key), now.get(key)];
    const both = [old, fresh].filter((one) => one !== undefined);
    const same = old?.values === fresh?.values && Rectangle.equals(old?.range ?? NOWHERE, fresh?.range ?? NOWHERE);
    return same ? [] : both.flatMap(besides);
  });

const mapOfMaps = <T extends object>(one: T | undefined, other: T | undefined): T => {
  const [ones, others] = [one ?? {}, other ?? {}] as Record<string, object | undefined>[];
  const keys = new Set([...Object.keys(ones ?? {}), ...Object.keys(others ?? {})]);
  return Object.fromEntries([...keys].map((key) => [key, { ...ones?.[key], ...others?.[key] }])) as T;
};

/**
 * Names of sheets that came or went, those that stand behind those that are gone: of two sheets of one name the engine
 * takes the later, and would look for cells on the one that is gone.
 */
const standingLast = (injector: Injector, dirtyNameMap: Wanted["dirtyNameMap"]): Wanted["dirtyNameMap"] =>
  Object.fromEntries(
    Object.entries(dirtyNameMap).map(([unit, names]) => {
      const book = injector.get(IUniverInstanceService).getUnit<Workbook>(unit, UniverInstanceType.UNIVER_SHEET);
      const stands = (id: string): number => (book?.getSheetBySheetId(id) ? 1 : 0);
      const sorted = Object.entries(names ?? {}).sort(([one], [other]) => stands(one) - stands(other));
      return [unit, Object.fromEntries(sorted)];
    }),
  );

/** One calculation for both. */
const both = (one: Wanted, other: Wanted): Wanted => ({
  ...other,
  forceCalculate: one.forceCalculate || other.forceCalculate,
  dirtyRanges: [...one.dirtyRanges, ...other.dirtyRanges],
  dirtyNameMap: mapOfMaps(one.dirtyNameMap, other.dirtyNameMap),
  dirtyDefinedNameMap: mapOfMaps(one.dirtyDefinedNameMap, other.dirtyDefinedNameMap),
  dirtySuperTableMap: mapOfMaps(one.dirtySuperTableMap, other.dirtySuperTableMap),
  dirtyUnitFeatureMap: mapOfMaps(one.dirtyUnitFeatureMap, other.dirtyUnitFeatureMap),
  dirtyUnitOtherFormulaMap: mapOfMaps(one.dirtyUnitOtherFormulaMap, other.dirtyUnitOtherFormulaMap),
  clearDependencyTreeCache: mapOfMaps(one.clearDependencyTreeCache, other.clearDependencyTreeCache),
});

/**
 * Lets the engine calculate until nothing changes any more, one calculation after the other, and answers a promise of
 * that. By itself the engine works out what reads a spilled cell once at most, and not where the formula also reads the
 * first cell of a spill; what a spill has left behind it keeps; and a change that comes while it calculates may be lost.
 */
export const calculateToTheEnd = (
  injector: Injector,
  waitingIn: (areas: readonly IUnitRange[]) => IUnitRange[],
): (() => Promise<void>) => {
  const commands = injector.get(ICommandService);
  const model = injector.get(FormulaDataModel);
  const changes = injector.get(IActiveDirtyManagerService);
  const calculator = injector.get(ICalculateFormulaService);
  let execute: ICalculateFormulaService["execute"];
  let round = 0;
  lookOnce(injector);
  // A random number, and the time, must stay the same through all rounds, or they would never end.
  drawOnce(injector, () => round === 0);
  // Whether anything has changed since the calculation that is running began.
  let stale = false;
  tellOfStops(injector, () => stale);
  const startNow = startingNow(injector);

  const queue: Wanted[] = [];
  let running: Promise<void> | undefined;
  let gathering = false;
  let known = spillsIn(model);

  /** Whether the calculation came to its end, and its answers are in their cells. */
  const calculate = async (wanted: Wanted): Promise<boolean> => {
    const ended = new Promise<FormulaExecutedStateType>((resolve) => {
      const heard = calculator.executionCompleteListener$.subscribe(({ functionsExecutedState }) => {
        heard.unsubscribe();
        resolve(functionsExecutedState);
      });
    });
    stale = false;
    await execute({
      ...wanted,
      dirtyRanges: [...wanted.dirtyRanges, ...waitingIn(wanted.dirtyRanges)],
      dirtyNameMap: standingLast(injector, wanted.dirtyNameMap),
      formulaData: model.getFormulaData(),
      arrayFormulaCellData: model.getArrayFormulaCellData(),
      arrayFormulaRange: model.getArrayFormulaRange(),
    });
    const state = await ended;
    await moment();
    return state !== FormulaExecutedStateType.STOP_EXECUTION;
  };

  const toTheEnd = async (): Promise<void> => {
    round = 0;
    while (queue.length > 0) {
      const wanted = queue.splice(0).reduce(both);
      // Rows that are put in take the answers away of spills whose formulas name what moved: who read them then read blanks.
      const before = round === 0 ? spillsIn(model) : known;
      if (!(await calculate(wanted))) {
        queue.unshift(wanted);
        round = 0;
        continue;
      }
      const now = spillsIn(model);
      const dirtyRanges = [...changedIn(known, now), ...(before === known ? [] : changedIn(before, now))];
      known = now;
      // Formulas in a circle over spilled cells would go on for ever; others need no more rounds than there are spills.
      if (dirtyRanges.length === 0 || round > now.size) continue;
      const next: Wanted = {
        ...wanted,
        forceCalculate: false,
        dirtyRanges,
        dirtyNameMap: {},
        dirtyDefinedNameMap: {},
        dirtySuperTableMap: {},
        dirtyUnitFeatureMap: {},
        dirtyUnitOtherFormulaMap: {},
        clearDependencyTreeCache: {},
      };
      round = queue.length > 0 ? 0 : round + 1;
      queue.unshift(next);
    }
  };

  patchExecution(injector, (own) => {
    execute = own;
    return async (wanted) => {
      queue.push(wanted);
      running ??= toTheEnd().finally(() => {
        running = undefined;
      });
      await running;
    };
  });

  commands.onCommandExecuted(({ id }, options) => {
    if (id === SetFormulaCalculationStartMutation.id) gathering = false;
    else if (changes.get(id) && !(id === SetRangeValuesMutation.id && options?.onlyLocal)) gathering = stale = true;
  });

  return async () => {
    // A command that was just given is heard of in a moment.
    await moment();
    let ended = 0;
    // How long one takes is the machine's affair; only standing still counts.
    for (let since = Date.now(); ended < MOST && Date.now() - since <= LONGEST;) {
      // What is being worked out hears of a change by itself, and starts anew; what is not is started.
      if (gathering && !running) startNow();
      else if (gathering) await moment(10);
      if (!running && !gathering) return;
      const current = running;
      await current;
      if (!current) continue;
      ended++;
      since = Date.now();
    }
    throw new Error("the formulas go on and on, or cannot be worked out");
  };
};
