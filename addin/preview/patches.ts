import {
  CELL_INVERTED_INDEX_CACHE,
  FormulaExecutedStateType,
  ICalculateFormulaService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
  IFunctionService,
  LexerTreeBuilder,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { ICommandService, LocaleService, type Injector } from "@univerjs/core";
import { TriggerCalculationController } from "@univerjs/sheets-formula";

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
  _detectForcedRecalculationNode(...given: unknown[]): boolean;
}

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
    (isVolatile) =>
      (...given) =>
        isFirst() && isVolatile(...given),
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

/**
 * Lets every comparison look at the values themselves. The engine keeps an index of what it has compared in a column, which
 * was seen to answer with figures that the cells did not hold; to keep it, a long spill took as long as the square of its
 * rows. The index is one for all engines of a process.
 */
export const compareAfresh = (): void => {
  const index = CELL_INVERTED_INDEX_CACHE;
  const why = "comparisons would answer from an index that does not hold what the cells hold";
  patch(index, "canUseCache", () => () => ({ rowsInCache: [], rowsNotInCache: [] }), why);
  patch(index, "set", () => () => undefined, "a long spill would take as long as the square of its rows");
  patch(index, "setContinueBuildingCache", () => () => undefined, why);
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
