import type { Sheet } from "./sheet";
import { aboutThisWorkbook } from "./aboutThisWorkbook";
import { animals } from "./animals";
import { breedingSeason } from "./breedingSeason";
import { coolingPlan } from "./coolingPlan";
import { feedingLog } from "./feedingLog";
import { hatchlings } from "./hatchlings";
import { incubation } from "./incubation";
import { nativeClimate } from "./nativeClimate";
import { preyStock } from "./preyStock";
import { readings } from "./readings";
import { selfCheck } from "./selfCheck";
import { stationShortlist } from "./stationShortlist";
import { weights } from "./weights";
import { winterLog } from "./winterLog";
import { yearPlan } from "./yearPlan";

/** A group of sheets, by what a keeper does with them. */
export interface SheetGroup {
  readonly title: string;
  readonly sheets: readonly Sheet[];
}

export const sheetGroups: readonly SheetGroup[] = [
  { title: "Every day", sheets: [animals, feedingLog, weights] },
  { title: "The native year", sheets: [stationShortlist, nativeClimate, yearPlan] },
  { title: "Winter", sheets: [coolingPlan, winterLog] },
  { title: "Breeding", sheets: [breedingSeason, incubation, hatchlings] },
  { title: "Stock, loggers and the record", sheets: [preyStock, readings, selfCheck, aboutThisWorkbook] },
];

/** Every templated sheet, group by group. */
export const sheets: readonly Sheet[] = sheetGroups.flatMap((group) => group.sheets);
