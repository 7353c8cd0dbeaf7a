import { CommandType, ICommandService } from "@univerjs/core";
import type { Manner } from "../../taskpane/text/form";
import type { Engine } from "./engine";

/** How dates and figures are typed into this page. Until somebody has said: the form that nobody misreads. */
let now: Manner = { dateOrder: "ymd", decimal: "." };
const listeners = new Set<() => void>();

export const mannerNow = (): Manner => now;

export const setManner = (manner: Manner): void => {
  now = manner;
  for (const listener of listeners) listener();
};

export const onManner = (listener: () => void): void => void listeners.add(listener);

/** A change of the workbook, which is saved with it: undoing an Open brings the older workbook's back. */
export const SET_MANNER = "sheet.mutation.set-manner";

export const registerManner = ({ univer }: Pick<Engine, "univer">): void =>
  void univer
    .__getInjector()
    .get(ICommandService)
    .registerCommand({
      id: SET_MANNER,
      type: CommandType.MUTATION,
      handler: (_, { manner }: { readonly manner: Manner }) => {
        setManner(manner);
        return true;
      },
    });

/** The keeper has chosen another manner. */
export const changeManner = ({ univer }: Engine, manner: Manner): void =>
  void univer.__getInjector().get(ICommandService).syncExecuteCommand(SET_MANNER, { manner });
