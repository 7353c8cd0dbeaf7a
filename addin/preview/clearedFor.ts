import { ICommandService, IUndoRedoService, sequenceExecute, type IMutationInfo, type Injector } from "@univerjs/core";
import {
  IDefinedNamesService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  SetTriggerFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import {
  InsertSheetMutation,
  RemoveSheetCommand,
  RemoveSheetMutation,
  RemoveSheetUndoMutationFactory,
  SetWorkbookNameMutation,
  SetWorksheetActiveOperation,
  SheetInterceptorService,
} from "@univerjs/sheets";
import type { FWorkbook } from "@univerjs/sheets/lib/facade";
import type { Manner } from "../../taskpane/text/form";
import { freeName } from "../freeName";
import type { Engine } from "./engine";
import { mannerNow, SET_MANNER } from "./manner";

type Mutation = IMutationInfo;

/** One part of a step, and what takes it back, each in the order in which it is to be done. */
interface Part {
  readonly redos: readonly Mutation[];
  readonly undos: readonly Mutation[];
}

/** Removes a sheet with its rules, notes and pictures, and nothing else: the engine's own command also changes every formula that speaks of it. */
const removal = (injector: Injector, unitId: string, sheet: { readonly id: string; readonly name: string }): Part => {
  const target = { unitId, subUnitId: sheet.id };
  const params = { ...target, subUnitName: sheet.name };
  const beside = injector.get(SheetInterceptorService).onCommandExecute({ id: RemoveSheetCommand.id, params: target });
  const own = (mutations: readonly Mutation[]): Mutation[] =>
    mutations.filter(({ params: given }) => Object.values(given).includes(sheet.id));
  const isWritten = ({ id }: Mutation): boolean => id !== "sheet.mutation.set-range-values";
  return {
    redos: [...own(beside.redos as Mutation[]).filter(isWritten), { id: RemoveSheetMutation.id, params }],
    undos: [
      { id: InsertSheetMutation.id, params: RemoveSheetUndoMutationFactory(injector, params) },
      ...own(beside.undos as Mutation[]).filter(isWritten),
    ],
  };
};

/**
 * Empties the workbook of all its sheets and names, lets `fill` put others in their place, and shows the one whose id that
 * answers; the workbook is called `title` then, its keeper's manner is `manner`, and no sheet in between has a name that is
 * taken. Sheets change neither name nor formula on their way out, so that undo finds them to the letter: they go and come
 * back as they are, while a sheet of no name that matters keeps the workbook from being without any.
 */
export const clearedFor = (
  { univer }: Engine,
  workbook: FWorkbook,
  {
    title,
    taken,
    manner,
  }: { readonly title: string; readonly taken: readonly string[]; readonly manner?: Manner | undefined },
  fill: () => string | undefined,
): void => {
  const injector = univer.__getInjector();
  const unitId = workbook.getId();
  const perform = ({ redos, undos }: Part): void => {
    const done = sequenceExecute([...redos], injector.get(ICommandService));
    injector
      .get(IUndoRedoService)
      .pushUndoRedo({ unitID: unitId, redoMutations: [...redos], undoMutations: [...undos] });
    if (!done.result) throw new Error("the engine refused to change the sheets");
  };
  const show = (subUnitId: string): Mutation => ({ id: SetWorksheetActiveOperation.id, params: { unitId, subUnitId } });
  // What comes back was worked out in another company: every formula is looked at once more.
  const workOut = {
    id: SetTriggerFormulaCalculationStartMutation.id,
    params: { commands: [], forceCalculation: true },
  };

  const old = workbook.getSheets().map((sheet) => ({ id: sheet.getSheetId(), name: sheet.getSheetName() }));
  const shown = workbook.getActiveSheet().getSheetId();
  const call = (name: string): Mutation => ({ id: SetWorkbookNameMutation.id, params: { unitId, name } });
  const called = workbook.getName();
  const write = (one: Manner): Mutation => ({ id: SET_MANNER, params: { manner: one } });
  const written = mannerNow();
  const between = workbook.create(freeName("Between", [...old.map(({ name }) => name), ...taken]), 1, 1).getSheetId();
  const parts = old.map((sheet) => removal(injector, unitId, sheet));
  const named: Part[] = Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {}).map(
    (one) => ({
      redos: [{ id: RemoveDefinedNameMutation.id, params: { unitId, ...one } }],
      undos: [{ id: SetDefinedNameMutation.id, params: { unitId, ...one } }],
    }),
  );
  // Sheets come back from the first to the last, so that each finds its place; and all before anything is worked out.
  perform({
    redos: [...[...parts, ...named].flatMap(({ redos }) => redos), call(title), ...(manner ? [write(manner)] : [])],
    undos: [...[...named, ...parts].flatMap(({ undos }) => undos), call(called), write(written), show(shown), workOut],
  });
  const first = fill();
  const standing = workbook.getSheets().find((sheet) => sheet.getSheetId() === between);
  if (!standing) throw new Error("the sheet between is gone");
  const gone = removal(injector, unitId, { id: between, name: standing.getSheetName() });
  perform({ redos: [...(first === undefined ? [] : [show(first)]), ...gone.redos, workOut], undos: gone.undos });
};
