import type { Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/lib/facade";
import { IFunctionService } from "@univerjs/engine-formula";
import type { AnyDefinition } from "../../functions/define";
import { bind } from "./bind";
import { refuseLongSpills } from "./longSpills";
import { followSpills } from "./respill";
import { drawSpilledFormats } from "./spilledFormats";

/** The spreadsheet engine with the functions in it; a page draws it, tests and the terminal run it without one. */
export interface Engine {
  readonly univer: Univer;
  readonly api: FUniver;
}

/** Puts the functions into an engine that holds its first workbook. */
export const register = (engine: Engine, catalogue: readonly AnyDefinition[]): void => {
  engine.univer
    .__getInjector()
    .get(IFunctionService)
    .registerExecutors(...bind(catalogue));
  drawSpilledFormats(engine);
  refuseLongSpills(engine);
  followSpills(engine);
};
