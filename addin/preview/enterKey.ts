import { DeviceInputEventType } from "@univerjs/engine-render";
import { SetCellEditVisibleOperation, whenSheetEditorActivated } from "@univerjs/sheets-ui";
import { IShortcutService, KeyCode } from "@univerjs/ui";
import type { Engine } from "./engine";

/** Over the list of suggestions, whose keys are at 1000. */
const OVER_SUGGESTIONS = 2000;

/**
 * Enter ends a formula as it was typed. The list of suggestions is a third of a second behind the keyboard, and would put
 * a name of its own in the place of the one just typed; Tab still takes a suggestion.
 */
export const enterAsTyped = ({ univer }: Engine): void => {
  const injector = univer.__getInjector();
  injector.get(IShortcutService).registerShortcut({
    id: SetCellEditVisibleOperation.id,
    binding: KeyCode.ENTER,
    priority: OVER_SUGGESTIONS,
    preconditions: whenSheetEditorActivated,
    staticParameters: { visible: false, eventType: DeviceInputEventType.Keyboard, keycode: KeyCode.ENTER },
  });
};
