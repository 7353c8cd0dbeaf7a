import {
  BaseReferenceObject,
  CELL_INVERTED_INDEX_CACHE,
  FormulaDependencyTreeType,
  FormulaDependencyTreeVirtual,
  FormulaExecutedStateType,
  ICalculateFormulaService,
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
  IFunctionService,
  LexerTreeBuilder,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  SetFormulaCalculationStartMutation,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import {
  ICommandService,
  LocaleService,
  Rectangle,
  type ICellData,
  type Injector,
  type IObjectMatrixPrimitiveType,
  type IRange,
  type IUnitRange,
  type Nullable,
} from "@univerjs/core";
import { TriggerCalculationController } from "@univerjs/sheets-formula";
import { standingBefore } from "./rangesByRow";

/**
 * Everything of the spreadsheet engine that is changed from within, or used although its types keep it to themselves. A
 * new version of the engine that has no such member fails here at once, and not in a keeper's figures.
 */
type Method = (...given: never[]) => unknown;

const originals = new WeakMap<object, Map<string, PropertyDescriptor | undefined>>();

export const gone = (what: string, why: string): Error =>
  new Error(`the spreadsheet engine has no ${what} any more: ${why}`);

/** Puts another method in the place of the engine's own, which `wrap` is given; `why` says what would go wrong without. */
export const patch = <T extends object, K extends keyof T & string>(
  object: T,
  method: K,
  wrap: (own: T[K]) => T[K] & Method,
  why: string,
): void => {
  const own = object[method];
  if (typeof own !== "function") throw gone(method, why);
  const known = originals.get(object) ?? new Map<string, PropertyDescriptor | undefined>();
  originals.set(object, known);
  if (!known.has(method)) known.set(method, Object.getOwnPropertyDescriptor(object, method));
  object[method] = wrap((own as (...given: unknown[]) => unknown).bind(object) as T[K]);
};

/** The same with what all engines of a process share: the first of them puts it there. */
const patchForAll: typeof patch = (object, method, wrap, why) => {
  if (!originals.get(object)?.has(method)) patch(object, method, wrap, why);
};

/** The engine's own method again: a test shows so what the patch is for. */
export const takeBack = <T extends object>(object: T, method: keyof T & string): void => {
  const known = originals.get(object);
  if (!known?.has(method)) throw new Error(`${method} is not patched`);
  const own = known.get(method);
  // A method of the object's class comes out again where the object's own is gone.
  if (own) Object.defineProperty(object, method, own);
  else Reflect.deleteProperty(object, method);
  known.delete(method);
};

/** An object of the engine's with members that its types do not tell of; throws where one of them is gone. */
const inside = <T extends object>(object: object, members: readonly (keyof T & string)[], why: string): T => {
  for (const member of members) if (!(member in object)) throw gone(member, why);
  return object as T;
};

export interface Calculator {
  _apply(): Promise<unknown>;
  _executeStep(): Promise<unknown>;
}
export interface Generator {
  _detectForcedRecalculationNode(tree: unknown, node: Node | null): boolean;
  _getAddressFunctionNodeList(node: Node | null): readonly Node[];
  generate(...given: unknown[]): Promise<unknown>;
  _getRangeListByNode(given: NodeGiven): Promise<IUnitRange[]>;
  _nodeTraversalRef(node: Node, found: Node[]): void;
}

/** A part of a formula as the engine has read it. */
interface Node {
  readonly nodeType: number;
  getChildren(): readonly Node[];
  /** There where the part is a column of a named table. */
  readonly _tableReferenceObject?: unknown;
  /** Of a reference: whole columns and whole rows are of other types than cells. */
  readonly _referenceObjectType?: number;
}
interface NodeGiven {
  readonly node: Node | null;
  readonly refOffsetX: number;
  readonly refOffsetY: number;
}
/** The engine's kinds of parts: a reference, and two of them joined by a colon. */
const [REFERENCE, UNION] = [1, 10];
/** Its type of a reference to cells. */
const CELLS = 0;

/** Calculations go through `wrap`, one after the other. */
export const patchExecution = (
  injector: Injector,
  wrap: (own: ICalculateFormulaService["execute"]) => ICalculateFormulaService["execute"],
): void =>
  patch(
    injector.get(ICalculateFormulaService),
    "execute",
    wrap,
    "what reads spilled cells would be worked out once at most, and a change that comes meanwhile be lost",
  );

/**
 * One look at the formulas: the engine's own second one, at what reads spilled cells, gives way to the rounds of the
 * calculation. A function that fails must not keep what comes after it waiting.
 */
export const lookOnce = (injector: Injector): void => {
  const why = "a function that fails would keep every later calculation waiting";
  const calculator = inside<Calculator>(injector.get(ICalculateFormulaService), ["_apply"], why);
  patch(
    calculator,
    "_executeStep",
    () => () => calculator._apply().catch((failure: unknown) => void Promise.reject(failure as Error)),
    why,
  );
};

/** A random number, and the time, stay the same through all rounds but the first. */
export const drawOnce = (injector: Injector, isFirst: () => boolean): void =>
  patch(
    injector.get(IFormulaDependencyGenerator) as unknown as Generator,
    "_detectForcedRecalculationNode",
    (isVolatile) => (tree, node) => isFirst() && isVolatile(tree, node),
    "a sheet with a random number and a spill would be worked out for ever",
  );

/**
 * A calculation that was told to stop says so, even where it was over before it heard, and so does one in whose time
 * something has changed: else its answers would be written over what has come since.
 */
export const tellOfStops = (injector: Injector, isStale: () => boolean): void => {
  const runtime = injector.get(IFormulaRuntimeService);
  patch(
    runtime,
    "getAllRuntimeData",
    (data) => () =>
      runtime.isStopExecution() || isStale()
        ? { ...data(), functionsExecutedState: FormulaExecutedStateType.STOP_EXECUTION }
        : data(),
    "an answer would be written over what was typed while it was worked out",
  );
};

/** Answers are laid out by `wrap`. */
export const patchLayout = (
  injector: Injector,
  wrap: (own: IFormulaRuntimeService["setRuntimeData"]) => IFormulaRuntimeService["setRuntimeData"],
): void =>
  patch(
    injector.get(IFormulaRuntimeService),
    "setRuntimeData",
    wrap,
    "a spill with something in its way would touch other cells",
  );

export interface Layout {
  _isInOtherArrayFormulaRange(
    unit: string,
    sheet: string,
    row: number,
    column: number,
    atRow: number,
    atColumn: number,
  ): boolean;
}

/** Whether a cell that a formula wants to fill was filled by another: `isOther` knows. */
export const patchOthers = (injector: Injector, isOther: Layout["_isInOtherArrayFormulaRange"]): void =>
  patch(
    injector.get(IFormulaRuntimeService) as unknown as Layout,
    "_isInOtherArrayFormulaRange",
    () => isOther,
    "a list would take as long as the square of its rows, where each has a formula that fills a row",
  );

/**
 * Lets every comparison look at the values themselves. The engine keeps an index of what it has compared in a column, which
 * was seen to answer with figures that the cells did not hold; to keep it, a long spill took as long as the square of its
 * rows. The index is one for all engines of a process.
 */
export const compareAfresh = (): void => {
  const index = CELL_INVERTED_INDEX_CACHE;
  const why = "comparisons would answer from an index that does not hold what the cells hold";
  patchForAll(index, "canUseCache", () => () => ({ rowsInCache: [], rowsNotInCache: [] }), why);
  patchForAll(index, "set", () => () => undefined, "a long spill would take as long as the square of its rows");
  patchForAll(index, "setContinueBuildingCache", () => () => undefined, why);
};

interface Cells {
  getValue(row: number, column: number): Nullable<ICellData>;
}
/** The cells that a formula names, with what stands in them before a calculation and what it has worked out so far. */
export interface Reference {
  readonly _runtimeArrayFormulaRange: object;
  getCellData(row: number, column: number): Nullable<ICellData>;
  getCurrentActiveSheetData(): { readonly cellData: Cells } | undefined;
  getCurrentActiveArrayFormulaCellData(): Cells | undefined;
  getCurrentActiveArrayFormulaRange(): IObjectMatrixPrimitiveType<Nullable<IRange>> | undefined;
  getCurrentRuntimeSheetData(): Cells | undefined;
  getCurrentRuntimeActiveArrayFormulaCellData(): Cells | undefined;
  getCurrentRuntimeActiveArrayFormulaRange(): IObjectMatrixPrimitiveType<Nullable<IRange>> | undefined;
  getRuntimeFeatureCellValue(row: number, column: number): Nullable<ICellData>;
}

/**
 * A cell as formulas read it: as it has just been worked out; else as it was spilled before, unless that spill has been
 * laid out anew and leaves it empty; else what stands in it. The engine looks through every spill of the sheet for each cell.
 */
export const findSpillsByRow = (): void =>
  patchForAll(
    BaseReferenceObject.prototype as unknown as Reference,
    "getCellData",
    () =>
      function (this: Reference, row, column) {
        const worked =
          this.getCurrentRuntimeSheetData()?.getValue(row, column) ??
          this.getCurrentRuntimeActiveArrayFormulaCellData()?.getValue(row, column) ??
          this.getRuntimeFeatureCellValue(row, column);
        if (worked) return worked;
        const before = this.getCurrentActiveArrayFormulaCellData()?.getValue(row, column);
        if (!before) return this.getCurrentActiveSheetData()?.cellData.getValue(row, column);
        const anew = this.getCurrentRuntimeActiveArrayFormulaRange();
        const spills = standingBefore(this._runtimeArrayFormulaRange, this.getCurrentActiveArrayFormulaRange());
        const isEmptied = spills?.some(row, column, (spill) => Boolean(anew?.[spill.row]?.[spill.column]));
        return isEmptied ? null : before;
      },
    "a list whose rows are filled by a formula each would take as long as the square of its rows",
  );

/**
 * The formulas of a colour rule fill no cell. The engine counts the rule's cells from A1, and takes what reads the cells there
 * for what reads the rule: circles come of that, in which a formula is worked out before those that it reads.
 */
export const fillNoCells = (): void =>
  patchForAll(
    FormulaDependencyTreeVirtual.prototype,
    "toRTreeItem",
    () =>
      function (this: FormulaDependencyTreeVirtual) {
        const { type, unitId, subUnitId: sheetId, row, column } = this;
        return type === FormulaDependencyTreeType.OTHER_FORMULA
          ? []
          : [{ unitId, sheetId, range: { startRow: row, startColumn: column, endRow: row, endColumn: column } }];
      },
    "a sheet with colour rules could show the answers of formulas that were worked out too early",
  );

/** Words without a figure in them are no number, date or time: the engine tries every form of one, each time it meets them. */
export const takeWordsAsWords = (): void =>
  patchForAll(
    ValueObjectFactory,
    "create",
    (own) => (raw, isWords) => own(raw, isWords === true || (typeof raw === "string" && !/\d/.test(raw))),
    "a formula with words in it would take up to twice as long",
  );

/** A method's answer is kept by the part of a formula from which alone it follows. */
const once = <K extends "_getAddressFunctionNodeList" | "_detectForcedRecalculationNode">(
  generator: Generator,
  method: K,
  partOf: (...given: Parameters<Generator[K]>) => Node | null,
  why: string,
): void => {
  const known = new WeakMap<Node, ReturnType<Generator[K]>>();
  patch(
    generator,
    method,
    (own) =>
      ((...given: Parameters<Generator[K]>) => {
        const node = partOf(...given);
        const found = (): ReturnType<Generator[K]> =>
          (own as (...given: unknown[]) => unknown)(...given) as ReturnType<Generator[K]>;
        if (!node) return found();
        const answer = known.get(node) ?? found();
        known.set(node, answer);
        return answer;
      }) as Generator[K],
    why,
  );
};

/**
 * Which cells a formula names is found out once, and not by every formula of the workbook in each round. It follows from
 * the formula alone, but for sheets that come, go or change their names, for whole columns and rows and for cells beyond the
 * sheet, which are found anew where a sheet grows, and for parts that are themselves worked out, such as the end of a range;
 * these are left to the engine.
 */
export const findRangesOnce = (injector: Injector): void => {
  const why = "one changed date would take twice as long";
  const current = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  const generator = inside<Generator>(
    injector.get(IFormulaDependencyGenerator),
    ["_getRangeListByNode", "_nodeTraversalRef", "generate"],
    why,
  );
  type Found = WeakMap<Node, Map<string, IUnitRange[]>>;
  let known: Found = new WeakMap();
  let whileOfASize: Found = new WeakMap();
  let [sheets, sizes] = ["", ""];
  const units = () => Object.entries(current.getUnitData());
  const sheetsNow = (): string =>
    JSON.stringify([current.getSheetNameMap(), units().map(([unit, all]) => [unit, Object.keys(all)])]);
  const sizesNow = (): string =>
    JSON.stringify(
      units().map(([, all]) => Object.values(all).map(({ rowCount, columnCount }) => [rowCount, columnCount])),
    );
  patch(
    generator,
    "generate",
    (own) =>
      (...given) => {
        const before = [sheets, sizes];
        [sheets, sizes] = [sheetsNow(), sizesNow()];
        if (sheets !== before[0]) known = new WeakMap();
        if (sheets !== before[0] || sizes !== before[1]) whileOfASize = new WeakMap();
        return own(...given);
      },
    why,
  );
  const isPlain = (node: Node): boolean => node.nodeType === REFERENCE && !node._tableReferenceObject;
  /** The references of a formula, where all of them follow from it; undefined where one is worked out. */
  const references = (node: Node): readonly Node[] | undefined => {
    const found: Node[] = [];
    generator._nodeTraversalRef(node, found);
    const ends = found.flatMap((one) => (one.nodeType === UNION ? one.getChildren() : one));
    return ends.every(isPlain) ? ends : undefined;
  };
  patch(
    generator,
    "_getRangeListByNode",
    (own) => async (given) => {
      const { node, refOffsetX, refOffsetY } = given;
      if (!node) return own(given);
      const key = [runtime.currentUnitId, runtime.currentSubUnitId, refOffsetX, refOffsetY].join();
      const ranges = known.get(node)?.get(key) ?? whileOfASize.get(node)?.get(key);
      if (ranges) return ranges;
      const fresh = await own(given);
      const ends = references(node);
      if (!ends) return fresh;
      const isWhole = ends.some(({ _referenceObjectType }) => _referenceObjectType !== CELLS);
      const isBeyond = fresh.some(({ range }) => range.startRow < 0);
      const found = isWhole || isBeyond ? whileOfASize : known;
      found.set(node, (found.get(node) ?? new Map<string, IUnitRange[]>()).set(key, fresh));
      // Nobody may change what all are given from now on.
      for (const one of fresh) Object.freeze(Object.freeze(one).range);
      return Object.freeze(fresh) as IUnitRange[];
    },
    why,
  );
  once(generator, "_getAddressFunctionNodeList", (node) => node, why);
  once(generator, "_detectForcedRecalculationNode", (_, node) => node, why);
};

/** The engine's index of which formula names which cells. */
export interface Index {
  addDependencyRTreeCache(tree: { readonly treeId: number; readonly rangeList: readonly IUnitRange[] }): void;
  reset(): void;
  _removeDependencyRTreeCacheById(...given: unknown[]): void;
  _removeDependencyRTreeCache(treeId: number): void;
  _removeAllTreeMap(treeId: number): void;
}

const alike = (some: readonly IUnitRange[], others: readonly IUnitRange[]): boolean =>
  some.length === others.length &&
  some.every((one, i) => {
    const other = others[i] as IUnitRange;
    return (
      one === other ||
      (one.unitId === other.unitId && one.sheetId === other.sheetId && Rectangle.equals(one.range, other.range))
    );
  });

/**
 * The cells that a formula names are entered into the engine's index once. It would enter them again in each calculation:
 * the index would grow, and every change be slower than the one before.
 */
export const enterOnce = (injector: Injector): void => {
  const why = "every change would be slower than the one before";
  const index = inside<Index>(
    injector.get(IDependencyManagerService),
    ["addDependencyRTreeCache", "reset", "_removeDependencyRTreeCacheById", "_removeDependencyRTreeCache"],
    why,
  );
  const entered = new Map<number, readonly IUnitRange[]>();
  patch(
    index,
    "addDependencyRTreeCache",
    (own) => (tree) => {
      // A tree that follows another makes its list anew each time it is asked.
      const { treeId, rangeList } = tree;
      const before = entered.get(treeId);
      if (before && alike(before, rangeList)) return;
      own(tree);
      entered.set(treeId, [...rangeList]);
    },
    why,
  );
  for (const all of ["reset", "_removeDependencyRTreeCacheById"] as const) {
    patch(
      index,
      all,
      (own) =>
        (...given: unknown[]) => {
          // A sheet's part goes with what formulas of other sheets have entered there.
          entered.clear();
          own(...given);
        },
      why,
    );
  }
  for (const one of ["_removeDependencyRTreeCache", "_removeAllTreeMap"] as const) {
    patch(
      index,
      one,
      (own) => (treeId) => {
        entered.delete(treeId);
        own(treeId);
      },
      why,
    );
  }
};

/**
 * Formulas are read anew where a name changes what it stands for. The engine keeps a formula as it has read it once, the
 * name's cells in the place of the name, in two places: as text in parts, and as a tree. It was seen to go on looking for a
 * sheet that was gone. The parts are let go of by `dispose` alone, after which the reader goes on.
 */
export const readNamesAnew = (injector: Injector): void => {
  const functions = injector.get(IFunctionService);
  const reader = injector.get(LexerTreeBuilder);
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id !== SetDefinedNameMutation.id && id !== RemoveDefinedNameMutation.id) return;
    functions.deleteFormulaAstCacheKey("");
    reader.dispose();
  });
};

/** A progress timer of the engine may fire after `dispose` and ask for words that are gone: any word will do. */
export const anyWord = (injector: Injector): void =>
  patch(injector.get(LocaleService), "t", () => (key: string) => key, "the process would end on a timer after dispose");

interface Trigger {
  _waitingCommandQueue: unknown[];
  _setTimeoutKey: ReturnType<typeof setTimeout>;
  _executingDirtyData: object;
  _generateDirty(commands: readonly unknown[]): object;
  _mergeDirty(one: object, other: object): object;
}

/** Starts to work out what has changed, which the engine by itself does a tenth of a second after the last change. */
export const startingNow = (injector: Injector): (() => void) => {
  const why = "whoever waits for the figures would wait a tenth of a second longer each time";
  const trigger = inside<Trigger>(
    injector.get(TriggerCalculationController),
    ["_waitingCommandQueue", "_setTimeoutKey", "_executingDirtyData", "_generateDirty", "_mergeDirty"],
    why,
  );
  return () => {
    clearTimeout(trigger._setTimeoutKey);
    const changed = trigger._generateDirty(trigger._waitingCommandQueue.splice(0));
    trigger._executingDirtyData = trigger._mergeDirty(trigger._executingDirtyData, changed);
    injector
      .get(ICommandService)
      .syncExecuteCommand(
        SetFormulaCalculationStartMutation.id,
        { ...trigger._executingDirtyData },
        { onlyLocal: true },
      );
  };
};
