import { WorkbookError } from "../workbook";

/** Takes a first step back after the second has failed, and passes the failure on; says so where that fails too. */
export const takeBack = async (step: () => Promise<unknown>, failure: unknown, byHand: string): Promise<never> => {
  try {
    await step();
  } catch {
    // The first failure is what the keeper can act on; that the second step failed too is what byHand says.
    throw new WorkbookError(`${failure instanceof Error ? failure.message : "It failed."} ${byHand}`, {
      cause: failure,
    });
  }
  throw failure;
};
