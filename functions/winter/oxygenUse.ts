import { columns, defineFunction, quantity, unitsParameter } from "../define";
import { MEASURED_MASS, MEASURED_TEMPERATURE, oxygenPerHour, oxygenText } from "./shared/oxygenUse";

/**
 * ml of oxygen per hour, dry at 0 °C and 1013.25 hPa, on one curve: 0.013·M^0.80·10^(0.038·T) of Andrews & Pough (1985)
 * from 25 °C up; below, its value at 25 °C times 3.3 for every 10 °C. Least and most are half as much either way.
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
    { name: "Least", unit: "millilitrePerHour", about: "One that uses little: half the likely figure" },
    { name: "Likely", unit: "millilitrePerHour", about: "The likely figure of a quiet, fasting animal" },
    {
      name: "Most",
      unit: "millilitrePerHour",
      about: "One that uses much: half as much again; more when it moves or digests",
    },
  ),
  sources: ["andrewsPough", "stubblefield", "costanzo", "mccueLillywhite"],
  cautions: ["quietAnimal", "noVet"],
  examples: [
    { given: [300, 5], gives: [[0.51001, 1.02003, 1.53004]], within: 1e-5 },
    { given: [300, 25], gives: [[5.55406, 11.10811, 16.66217]], within: 1e-5 },
  ],
  calculate({ mass, temperature }) {
    const { least, likely, most } = oxygenPerHour(mass, temperature);
    return [least, likely, most];
  },
  twin: ({ mass, temperature }) => oxygenText(mass, temperature),
});
