import { ICommandService, IUndoRedoService, IUniverInstanceService } from "@univerjs/core";
import type { Engine } from "./engine";

/**
 * Everything that `change` does to a workbook, as one step of undo; taken back where it fails half way. The engine joins
 * steps, but would undo them in the order in which they were done, which a sheet that is renamed and then removed does
 * not survive: here the last is undone first.
 */
export const oneStep = async <T>({ univer }: Engine, unit: string, change: () => Promise<T> | T): Promise<T> => {
  const injector = univer.__getInjector();
  const history = injector.get(IUndoRedoService);
  // The history is that of the unit in focus, which may be the formula bar.
  injector.get(IUniverInstanceService).focusUnit(unit);
  const before = history.pitchTopUndoElement();
  const joined = () => {
    const top = history.pitchTopUndoElement();
    return top === before ? null : top;
  };
  const ends: number[] = [];
  const heard = injector.get(ICommandService).onCommandExecuted(() => {
    const end = joined()?.undoMutations.length ?? 0;
    if (end > (ends.at(-1) ?? 0)) ends.push(end);
  });
  // Marked as passing, and the one way there is to join steps.
  // eslint-disable-next-line @typescript-eslint/no-deprecated
  const batch = history.__tempBatchingUndoRedo(unit);
  const finish = (): void => {
    heard.dispose();
    batch.dispose();
    const step = joined();
    if (!step) return;
    const parts = ends.map((end, i) => step.undoMutations.slice(ends[i - 1] ?? 0, end));
    step.undoMutations = parts.toReversed().flat();
  };
  try {
    const done = await change();
    finish();
    return done;
  } catch (failure) {
    finish();
    const step = joined();
    // Out of the history too: half a step must not come back by a redo. Steps of a sheet carry no id; none fits none.
    if (step) history.rollback(step.id as string, unit);
    throw failure;
  }
};
