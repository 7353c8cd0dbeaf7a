import { withoutPromise } from "../../taskpane/actions/takeBack";
import { WorkbookError, type Options } from "../../taskpane/workbook";

/** What Excel's own codes mean to a keeper, and what to do. */
const meanings: Readonly<Record<string, readonly [why: string, remedy: string]>> = {
  InvalidOperationInCellEditMode: ["a cell is being edited", "Press Enter or Esc, then try again."],
  AccessDenied: ["it is protected or read-only", "Unprotect it, or save a copy and work in that."],
  ItemAlreadyExists: ["a sheet of that name has just been made", "Try again."],
  RequestPayloadSizeLimitExceeded: ["that is more than it takes at once", "Choose fewer sheets or rows."],
  ResponsePayloadSizeLimitExceeded: ["that is more than it hands over at once", "Choose fewer sheets or rows."],
  RequestAborted: ["it stopped half-way", "Close its open dialogs, then try again."],
  GeneralException: ["it did not say why", "Close its open dialogs, then try again."],
};

const codeOf = (failure: unknown): string => {
  const code =
    typeof failure === "object" && failure !== null ? (failure as { readonly code?: unknown }).code : undefined;
  return typeof code === "string" ? code : "";
};

export const isNameTaken = (failure: unknown): boolean => codeOf(failure) === "ItemAlreadyExists";

/**
 * A failure in words. `could` is what Excel could not do: "insert the sheet". `left` says what stayed behind where it
 * could not be taken back.
 */
export const failed = (could: string, failure: unknown, left?: string): WorkbookError => {
  if (failure instanceof WorkbookError && left === undefined) return failure;
  if (failure instanceof WorkbookError)
    return new WorkbookError(`${withoutPromise(failure.message)} But ${left}`, { cause: failure });
  const [why, remedy] = meanings[codeOf(failure)] ?? [
    failure instanceof Error && failure.message !== "" ? failure.message.replace(/\.\s*$/, "") : "it did not say why",
    "Try again.",
  ];
  return new WorkbookError(`Excel could not ${could}: ${why}. ${left ?? "Nothing was changed."} ${remedy}`, {
    cause: failure,
  });
};

export const stopIfAborted = ({ signal }: Options): void => {
  if (signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
};
