import { notUsable, type Problem } from "../problem";
import type { System, Unit } from "../units";
import { figures } from "./figure";

/** The problem with a lower figure that is given above the higher one: most likely the two are swapped. Equal ones pass. */
export const swapped = (
  [lowName, low]: readonly [name: string, value: number],
  [highName, high]: readonly [name: string, value: number],
  unit: Unit,
  system: System = "metric",
): Problem | undefined => {
  if (low <= high) return undefined;
  const [lowShown, highShown] = figures([low, high], unit, system);
  return notUsable(`${lowName} holds ${lowShown}, above ${highName} ${highShown}: are they swapped?`);
};
