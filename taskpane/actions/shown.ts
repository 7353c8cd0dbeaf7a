import { WorkbookError, type Workbook } from "../workbook";

/** Does what is no reason for an action to fail: a cell that cannot be shown. */
const ifPossible = async <T>(step: () => Promise<T>): Promise<T | undefined> => {
  try {
    return await step();
  } catch (failure) {
    if (!(failure instanceof WorkbookError)) throw failure;
    return undefined;
  }
};

/** Shows a cell again. */
export const showAgain = async (
  workbook: Workbook,
  { sheet, row, column }: { readonly sheet: string; readonly row: number; readonly column: number },
): Promise<void> => ifPossible(() => workbook.show(sheet, row, column));

/** Where the keeper is now; undefined where that cannot be told. */
export const shownNow = (workbook: Workbook) => ifPossible(() => workbook.selection());
