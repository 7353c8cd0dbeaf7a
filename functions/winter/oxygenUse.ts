import { columns, defineFunction, quantity, unitsParameter } from "../define";
import { MEASURED_MASS, MEASURED_TEMPERATURE, oxygenPerHour } from "./shared/oxygenUse";

/**
 * ml of oxygen per hour, dry at 0 °C and 1013.25 hPa: 0.013·M^0.80·10^(0.038·T) of Andrews & Pough (1985), with a
 * spread around it. Up to 10 °C, where the formula is stretched beyond its data: times 0.4, 0.5 and 1.0; from 15 °C
 * up: times 0.7, 1.0 and 1.38; straight in between.
 */
export const oxygenUse = defineFunction({
  name: "OXYGENUSE",
  summary: "Oxygen that a quiet, fasting snake uses in an hour: least, likely and most.",
  parameters: {
    mass: quantity("gram", "Mass of the animal; the limits are ours", MEASURED_MASS),
    temperature: quantity("celsius", "Temperature of the animal; the limits are ours", MEASURED_TEMPERATURE),
    units: unitsParameter,
  },
  result: columns(
    { name: "Least", unit: "millilitrePerHour", about: "As little as may be" },
    { name: "Likely", unit: "millilitrePerHour", about: "The likely figure" },
    { name: "Most", unit: "millilitrePerHour", about: "As much as may be" },
  ),
  sources: ["andrewsPough", "costanzo", "stubblefield", "restingFactor"],
  cautions: ["stretchedBelowTen", "noVet"],
  examples: [
    { given: [300, 5], gives: [[0.77215, 0.96518, 1.93037]], within: 1e-5 },
    { given: [300, 25], gives: [[7.77568, 11.10811, 15.33347]], within: 1e-5 },
  ],
  calculate({ mass, temperature }) {
    const { least, likely, most } = oxygenPerHour(mass, temperature);
    return [least, likely, most];
  },
});
