import { ELEVATION } from "../../../functions/shared/limits";
import type { Field } from "./form";
import type { Cell } from "./names";
import { winter } from "./scenario";
import { number, oneOf, whole } from "./takes";

/** Fields that several sheets ask for in the same words. */

/** The two set-points of a winter plan; the sheet that is no plan itself names where they belong. */
export const setPointFields = (from?: string, wide = 1, needed = true) =>
  ({
    warmSet: {
      label: "Warm set-point",
      needed,
      wide,
      unit: "°C",
      value: winter.warmSetPoint,
      format: "tenth",
      takes: number([5, 40]),
      ...(from ? { from: `${from}.warmSet` } : {}),
    },
    coldSet: {
      label: "Cold set-point",
      needed,
      wide,
      unit: "°C",
      value: winter.coldSetPoint,
      format: "tenth",
      takes: number([0, 30]),
      ...(from ? { from: `${from}.coldSet` } : {}),
    },
  }) satisfies Record<string, Field>;

/** The box in which an animal winters, and the air that is in it; `from` where they belong, if that is not the sheet itself. */
export const boxFields = (from?: string) =>
  ({
    many: {
      label: "Animals in the box",
      value: 1,
      format: "whole",
      takes: whole([1, 500]),
      ...(from ? { from: `${from}.many` } : {}),
    },
    box: {
      label: "Box is shut or vented",
      needed: "Shut or vented",
      value: "shut",
      takes: oneOf("shut", "vented"),
      note: "shut: nothing but your hand lets air in. vented: holes or mesh, never covered; its air is not judged.",
      ...(from ? { from: `${from}.box` } : {}),
    },
    litres: {
      label: "Inside of the box",
      needed: "Litres of the box",
      unless: ({ box }: Readonly<Record<"box", Cell>>) => `${box}="vented"`,
      unit: "litres",
      value: winter.boxLitres,
      format: "tenth",
      takes: number([0.05, 5000]),
      ...(from ? { from: `${from}.litres` } : {}),
    },
    elevation: {
      label: "Elevation of the house",
      needed: "Elevation",
      unit: "m",
      value: 182,
      format: "whole",
      takes: number(ELEVATION),
      ...(from ? { from: `${from}.elevation` } : {}),
    },
  }) satisfies Record<string, Field>;
