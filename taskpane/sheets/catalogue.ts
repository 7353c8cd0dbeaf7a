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

/** Every templated sheet, in the order in which a keeper meets them. */
export const sheets: readonly Sheet[] = [
  animals,
  stationShortlist,
  nativeClimate,
  yearPlan,
  coolingPlan,
  winterLog,
  feedingLog,
  weights,
  breedingSeason,
  incubation,
  hatchlings,
  preyStock,
  readings,
  selfCheck,
  aboutThisWorkbook,
];
