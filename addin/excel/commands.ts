import { failureInWords } from "../../taskpane/actions/action";
import { unitsNow } from "../../taskpane/units";
import type { Workbook } from "../../taskpane/workbook";

/** The ribbon's own buttons, by the names that the manifest gives them, and the sheets that they insert. */
export const commands = {
  insertNativeClimate: "nativeClimate",
  insertCoolingPlan: "coolingPlan",
  insertFeedingLog: "feedingLog",
} as const;

type Notice = (words: string) => void;

/** What a ribbon button does: inserts its sheet, or opens the pane to say why it could not. Always says that it is done. */
export const command =
  (key: string, workbook: Workbook, notice: Notice) =>
  async (event: { readonly completed: () => void }): Promise<void> => {
    // A ribbon button has no place for words of its own.
    const say = async (words: string): Promise<void> => {
      notice(words);
      await Office.addin.showAsTaskpane().catch(() => undefined);
    };
    try {
      notice("");
      // The sheets come when they are wanted: a workbook that is opened waits for the functions only.
      const { insertSheet } = await import("../../taskpane/actions/insertSheet");
      const { sheets } = await import(/* webpackChunkName: "sheets" */ "../../taskpane/sheets/catalogue");
      const { inSystem } = await import(/* webpackChunkName: "sheets" */ "../../taskpane/sheets/shared/systems");
      const { text, left = [] } = await insertSheet.run(
        workbook,
        sheets.filter((sheet) => sheet.key === key).map((sheet) => inSystem(sheet, unitsNow())),
      );
      if (left.length > 0) await say(`${text} ${left.join(" ")}`);
    } catch (failure) {
      await say(failureInWords(failure));
    } finally {
      event.completed();
    }
  };

/** Tells Excel what stands behind the ribbon's buttons. */
export const registerCommands = (workbook: Workbook, notice: Notice): void => {
  for (const [name, key] of Object.entries(commands)) {
    const run = command(key, workbook, notice);
    Office.actions.associate(
      name,
      (event: Office.AddinCommands.Event) => void run({ completed: () => event.completed() }),
    );
  }
};
