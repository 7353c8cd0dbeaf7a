import { CommandType, ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

export interface Unsaved {
  /** Whether anything in the workbook has changed since it was saved last, or began. */
  readonly isChanged: () => boolean;
  readonly saved: () => void;
}

/** Hears of every change of the workbook; what formulas answer is none. */
export const watchChanges = ({ univer }: Engine): Unsaved => {
  let changed = false;
  univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, type }, options) => {
      if (type === CommandType.MUTATION && id.startsWith("sheet.") && !options?.onlyLocal) changed = true;
    });
  return {
    isChanged: () => changed,
    saved: () => {
      changed = false;
    },
  };
};
