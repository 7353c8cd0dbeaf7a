import { WorkbookError, type Options, type Workbook } from "../workbook";

/** What an action is about to do, in words, from what the workbook holds now. */
export interface Words {
  readonly text: string;
  /** Cells and sheets one by one, where there is something to say of them. */
  readonly list?: readonly string[];
  /** False where there is nothing to do, or it cannot be done; `text` then says why, and what to do. */
  readonly possible: boolean;
  /** True where the keeper has to agree first. */
  readonly ask: boolean;
}

/** Nothing to do, or nothing that can be done: why, and what to do. */
export const impossible = (text: string, list?: readonly string[]): Words => ({
  text,
  ...(list ? { list } : {}),
  possible: false,
  ask: false,
});

/** What an action did, in words. */
export interface Done {
  readonly text: string;
  /** What was left as it was, and why. */
  readonly left?: readonly string[];
  /** Text for the keeper to copy, where the program takes no file from the pane. */
  readonly copy?: { readonly label: string; readonly text: string };
}

/** One thing that a user can do. A button, a menu and a ribbon command use the same object. */
export interface Action<Choice = void> {
  /** Stable for ever. */
  readonly key: string;
  /** The words on the button. */
  readonly label: string;
  /** What it does, in a sentence, for the place beside the button. */
  readonly about: string;
  describe(workbook: Workbook, choice: Choice, options?: Options): Words | Promise<Words>;
  /** Whole or not at all: rejects with a WorkbookError that says what happened. */
  run(workbook: Workbook, choice: Choice, options?: Options): Promise<Done>;
}

/** What came of pressing a button. */
export type Outcome =
  | { readonly kind: "done"; readonly done: Done }
  | { readonly kind: "ask"; readonly words: Words }
  | { readonly kind: "refused"; readonly words: Words };

/**
 * Describes, asks where that is needed, and runs. The workbook is looked at again at the last moment: where what would
 * change is no longer what the keeper agreed to, the keeper is asked again.
 */
export const perform = async <Choice>(
  action: Action<Choice>,
  workbook: Workbook,
  choice: Choice,
  options: Options = {},
  agreed?: Words,
): Promise<Outcome> => {
  const words = await action.describe(workbook, choice, withoutProgress(options));
  if (!words.possible) return { kind: "refused", words };
  if (words.ask && !(agreed && same(agreed, words))) return { kind: "ask", words };
  return { kind: "done", done: await workbook.asOne(() => action.run(workbook, choice, options)) };
};

const withoutProgress = ({ signal }: Options): Options => (signal ? { signal } : {});

const same = (one: Words, other: Words): boolean =>
  one.text === other.text && (one.list ?? []).join("\n") === (other.list ?? []).join("\n");

/** A failure in words, whatever was thrown. */
export const failureInWords = (failure: unknown): string =>
  failure instanceof WorkbookError
    ? failure.message
    : "Something went wrong that the pane was not made for. Look at the sheet before you go on, then try again.";

/** Stops where the keeper has cancelled. */
export const stopIfCancelled = (options?: Options): void => {
  if (options?.signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
};

/** "1 cell", "12 cells". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** Where no sheet is ticked. */
export const CHOOSE_A_SHEET = "Choose at least one sheet.";

/** "3 sheets", for a sentence about several. */
export const sheetsInWords = (names: readonly string[]): string =>
  names.length <= 3 ? names.map((name) => `"${name}"`).join(", ") : counted(names.length, "sheet");
