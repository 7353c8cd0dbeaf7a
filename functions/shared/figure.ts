import { fromMetric, symbol, type System, type Unit } from "../units";

/** A metric figure as the keeper reads it in a message: "8 °C", "46.4 °F". At most two decimals. */
export const figure = (value: number, unit: Unit, system: System = "metric"): string => {
  const mark = symbol(unit, system);
  return `${Number(fromMetric(value, unit, system).toFixed(2))}${mark && ` ${mark}`}`;
};
