import { numfmt, type Nullable } from "@univerjs/core";
import {
  ErrorValueObject,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  type BaseReferenceObject,
  type BaseValueObject,
  type CalculateFormulaService,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import { FIRST_DAY } from "../../functions/dates";
import type { Value } from "../../functions/define";
import type { Engine } from "./engine";

/** One cell of an answer: a value, a date's serial number, null where it is empty, or an error with words where it has any. */
export type FormulaCell =
  { readonly value: Value | null } | { readonly date: number } | { readonly error: string; readonly message: string };

const cellOf = (found: Nullable<BaseValueObject>): FormulaCell => {
  if (!found || found.isNull()) return { value: null };
  if (found.isError()) {
    const [error, message] =
      found instanceof ErrorValueObject
        ? [found.getErrorType(), found.getErrorContent()]
        : [String(found.getValue()), ""];
    return { error, message };
  }
  const value = found.getValue();
  return typeof value === "number" && value >= FIRST_DAY && numfmt.isDateFormat(found.getPattern())
    ? { date: value }
    : { value };
};

const rowsOf = (found: FunctionVariantType): FormulaCell[][] => {
  const answer = found.isReferenceObject()
    ? (found as BaseReferenceObject).toArrayValueObject()
    : (found as BaseValueObject);
  if (!answer.isArray()) return [[cellOf(answer)]];
  const block = answer as ReturnType<BaseReferenceObject["toArrayValueObject"]>;
  const columns = block.getColumnCount();
  return block.getArrayValue().map((row) => Array.from({ length: columns }, (_, column) => cellOf(row[column])));
};

/**
 * Evaluates formulas over the active sheet without writing them anywhere, so that none can see another. They stand in
 * the first row, in the column right of the sheet's data. Undefined for a formula that cannot be read.
 */
export const evaluateFormulas = async (
  { univer, api }: Engine,
  formulas: readonly string[],
): Promise<(FormulaCell[][] | undefined)[]> => {
  const workbook = api.getActiveWorkbook();
  if (!workbook) throw new Error("the engine holds no workbook");
  const sheet = workbook.getActiveSheet();
  const injector = univer.__getInjector();
  // The interface says that `calculate` answers nothing; the class behind it does answer.
  const calculator = injector.get(ICalculateFormulaService) as unknown as Pick<CalculateFormulaService, "calculate">;
  const runtime = injector.get(IFormulaRuntimeService);
  injector.get(IFormulaCurrentConfigService).loadDataLite();
  const answers: (FormulaCell[][] | undefined)[] = [];
  for (const formula of formulas) {
    runtime.reset();
    runtime.setCurrent(
      0,
      sheet.getLastColumn() + 1,
      sheet.getMaxRows(),
      sheet.getMaxColumns(),
      sheet.getSheetId(),
      workbook.getId(),
    );
    const found = await calculator.calculate(formula);
    answers.push(found && rowsOf(found));
  }
  return answers;
};
