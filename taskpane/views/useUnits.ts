import { useSyncExternalStore } from "react";
import type { System } from "../../functions/units";
import { unitsNow, watchUnits } from "../units";

/** The units that sheets are inserted in. */
export const useUnits = (): System => useSyncExternalStore(watchUnits, unitsNow);
