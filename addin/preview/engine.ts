import type { Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/lib/facade";
import { IFunctionService } from "@univerjs/engine-formula";
import type { AnyDefinition } from "../../functions/define";
import { bind } from "./bind";
import { calculateToTheEnd } from "./calculation";
import { registerManner } from "./manner";
import {
  compareAfresh,
  enterOnce,
  fillNoCells,
  findRangesOnce,
  findSpillsByRow,
  readNamesAnew,
  takeWordsAsWords,
} from "./patches";
import { drawSpilledFormats } from "./spilledFormats";
import { keepRoom } from "./room";
import { mendSpills } from "./spills";

/** What a workbook is called that came from no file. */
export const UNTITLED = "Vivarium Almanac";

/** The spreadsheet engine with the functions in it; a page draws it, tests and the terminal run it without one. */
export interface Engine {
  readonly univer: Univer;
  readonly api: FUniver;
  /** Waits until every formula has its answer. */
  readonly settle: () => Promise<void>;
}

/** Puts the functions into an engine that holds its first workbook. */
export const register = (univer: Univer, api: FUniver, catalogue: readonly AnyDefinition[]): Engine => {
  const injector = univer.__getInjector();
  injector.get(IFunctionService).registerExecutors(...bind(catalogue));
  // Before what looks at formulas in each round.
  findRangesOnce(injector);
  enterOnce(injector);
  const engine = { univer, api, settle: calculateToTheEnd(injector, mendSpills(injector)) };
  compareAfresh();
  fillNoCells();
  findSpillsByRow();
  takeWordsAsWords();
  readNamesAnew(injector);
  keepRoom(injector);
  registerManner(engine);
  drawSpilledFormats(engine);
  return engine;
};
