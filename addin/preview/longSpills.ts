import { IFormulaRuntimeService, type ArrayValueObject, type FunctionVariantType } from "@univerjs/engine-formula";
import { Problem } from "../../functions/problem";
import { problemOut } from "./bind";
import type { Engine } from "./engine";

/** Two years of hourly readings. The engine's time grows with the square of the rows: twice as many take ten seconds. */
const MOST_ROWS = 20_000;

/**
 * Answers a problem where a formula would spill over more rows than the engine can lay out, which would freeze the page.
 * Inside a formula an answer may be of any length. The engine has no setting for it, so its step of laying out is wrapped.
 */
export const refuseLongSpills = ({ univer }: Engine): void => {
  const runtime = univer.__getInjector().get(IFormulaRuntimeService);
  const layOut = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (answer: FunctionVariantType) => {
    const rows = answer.isReferenceObject() || !answer.isArray() ? 1 : (answer as ArrayValueObject).getRowCount();
    const message = `the answer has ${rows} rows, and the preview shows at most ${MOST_ROWS}: give a shorter range`;
    layOut(rows > MOST_ROWS ? problemOut(new Problem("#VALUE!", message)) : answer);
  };
};
