import { CommandType, ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

export interface Unsaved {
  /** Whether anything in the workbook has changed since it was saved last, or began. */
  readonly isChanged: () => boolean;
  readonly saved: () => void;
  /** Hears of each change, and of each save. */
  readonly listen: (listener: () => void) => void;
}

/** Hears of every change of the workbook; what formulas answer is none. */
export const watchChanges = ({ univer }: Engine): Unsaved => {
  let changed = false;
  const listeners: (() => void)[] = [];
  const become = (now: boolean): void => {
    changed = now;
    for (const listener of listeners) listener();
  };
  univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, type }, options) => {
      if (type === CommandType.MUTATION && id.startsWith("sheet.") && !options?.onlyLocal) become(true);
    });
  return {
    isChanged: () => changed,
    saved: () => become(false),
    listen: (listener) => void listeners.push(listener),
  };
};
