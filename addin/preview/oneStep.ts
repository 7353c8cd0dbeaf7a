import { ICommandService, IUndoRedoService, IUniverInstanceService } from "@univerjs/core";
import type { Engine } from "./engine";

/** Engines in the middle of a step: a step within it becomes a part of it. */
const lasting = new WeakSet<Engine>();

/** Whether a step is under way: what stands now is half of it. */
export const isInStep = (engine: Engine): boolean => lasting.has(engine);

/**
 * Everything that `change` does to a workbook, as one step of undo; taken back where it fails half way. The engine joins
 * steps, but would undo them in the order in which they were done, which a sheet that is renamed and then removed does
 * not survive: here the last is undone first.
 */
export const oneStep = async <T>(engine: Engine, unit: string, change: () => Promise<T> | T): Promise<T> => {
  const injector = engine.univer.__getInjector();
  const history = injector.get(IUndoRedoService);
  const commands = injector.get(ICommandService);
  // The history is that of the unit in focus, which may be the formula bar.
  injector.get(IUniverInstanceService).focusUnit(unit);
  if (lasting.has(engine)) return change();
  const before = history.pitchTopUndoElement();
  const joined = () => {
    const top = history.pitchTopUndoElement();
    return top === before ? null : top;
  };
  const ends: number[] = [];
  const end = (): void => {
    const now = joined()?.undoMutations.length ?? 0;
    if (now > (ends.at(-1) ?? 0)) ends.push(now);
  };
  const heard = commands.onCommandExecuted(end);
  // Marked as passing, and the one way there is to join steps.
  // eslint-disable-next-line @typescript-eslint/no-deprecated
  const batch = history.__tempBatchingUndoRedo(unit);
  lasting.add(engine);
  const finish = (): void => {
    end();
    lasting.delete(engine);
    heard.dispose();
    batch.dispose();
    const step = joined();
    if (!step) return;
    const parts = ends.map((to, i) => step.undoMutations.slice(ends[i - 1] ?? 0, to));
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
