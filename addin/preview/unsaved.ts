import { CommandType, ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

export interface Unsaved {
  /** Whether anything in the workbook has changed since it was saved last, or began. */
  readonly isChanged: () => boolean;
  /** Marks what stands now; what that answers says that it, and nothing that came later, is saved. */
  readonly standing: () => () => void;
  /** Hears of each change, and of each save. */
  readonly listen: (listener: () => void) => void;
}

/** Hears of every change of the workbook; what formulas answer is none. */
export const watchChanges = ({ univer }: Engine): Unsaved => {
  let [changes, saved] = [0, 0];
  const listeners: (() => void)[] = [];
  const tell = (): void => {
    for (const listener of listeners) listener();
  };
  univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, type }, options) => {
      if (type === CommandType.MUTATION && id.startsWith("sheet.") && !options?.onlyLocal) {
        changes++;
        tell();
      }
    });
  return {
    isChanged: () => changes > saved,
    standing: () => {
      const stood = changes;
      return () => {
        saved = Math.max(saved, stood);
        tell();
      };
    },
    listen: (listener) => void listeners.push(listener),
  };
};
