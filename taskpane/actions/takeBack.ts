import { WorkbookError } from "../workbook";

/** What a failure says, where not all is as it was: what it says of that for its own part no longer holds. */
export const withoutPromise = (message: string): string => message.replace(/ ?Nothing was changed\./, "").trim();

/** A failure that leaves something behind; `byHand` says what. */
export const leaving = (failure: unknown, byHand: string): WorkbookError =>
  new WorkbookError(`${failure instanceof Error ? withoutPromise(failure.message) : "It failed."} ${byHand}`, {
    cause: failure,
  });

/** Takes a first step back after the second has failed, and passes the failure on; says so where that fails too. */
export const takeBack = async (step: () => Promise<unknown>, failure: unknown, byHand: string): Promise<never> => {
  try {
    await step();
  } catch {
    // The first failure is what the keeper can act on; that the second step failed too is what byHand says.
    throw leaving(failure, byHand);
  }
  throw failure;
};
