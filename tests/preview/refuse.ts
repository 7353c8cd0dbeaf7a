import { ICommandService } from "@univerjs/core";
import type { Engine } from "../../addin/preview/engine";

/** Lets the engine refuse a command at its `nth` call; `restore` answers whether it came to that. */
export const refuse = ({ univer }: Engine, id: string, nth: number): { readonly restore: () => boolean } => {
  const commands = univer.__getInjector().get(ICommandService);
  const own = commands.syncExecuteCommand.bind(commands);
  let calls = 0;
  const spy = jest
    .spyOn(commands, "syncExecuteCommand")
    .mockImplementation((called, ...given) => (called === id && ++calls === nth ? false : own(called, ...given)));
  return {
    restore: () => {
      spy.mockRestore();
      return calls >= nth;
    },
  };
};
