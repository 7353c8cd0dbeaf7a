import { columns, count, defineFunction, quantity, unitsParameter } from "../define";
import { EXCHANGE, MEASURED_MASS, MEASURED_TEMPERATURE, oxygenPerHour } from "./shared/oxygenUse";

/** J that a ml of oxygen sets free, whatever the fuel. */
const PER_MILLILITRE = 20.1;
/** J in a gram of fat, and in a gram of glycogen; protein, 17 985, lies beside glycogen. */
const FAT = 39_339;
const GLYCOGEN = 17_577;

/** g of fuel burnt for a ml of oxygen, from the carbon dioxide that comes back for it: fat 0.7, glycogen 1. */
const fuelPerMillilitre = (exchange: number): number => {
  const glycogen = (exchange - EXCHANGE.least) / (EXCHANGE.most - EXCHANGE.least);
  return PER_MILLILITRE * ((1 - glycogen) / FAT + glycogen / GLYCOGEN);
};

/**
 * Fuel burnt by OXYGENUSE's oxygen over the days, as a share of the body mass. Least: one that uses little, on fat alone. Most:
 * one that uses much, on glycogen and protein alone, from which garter snakes at 4 °C drew 76 to 79 % of their energy (Costanzo
 * 1985). A loss beyond the most is water or droppings, or a box that was warmer than the thermometer says.
 */
export const metabolicLoss = defineFunction({
  name: "METABOLICLOSS",
  summary:
    "Share of body mass that a quiet, fasting snake burns in some days; what it lost beyond that is mostly water.",
  parameters: {
    mass: quantity("gram", "Mass of the animal; the limits are ours", MEASURED_MASS),
    temperature: quantity("celsius", "Mean temperature over those days; the limits are ours", MEASURED_TEMPERATURE),
    days: count("day", "Days without food", [1, 366]),
    units: unitsParameter,
  },
  result: columns(
    { name: "Least", unit: "share", about: "One that uses little and burns fat alone" },
    { name: "Likely", unit: "share", about: "The likely figure of a quiet animal" },
    { name: "Most", unit: "share", about: "One that uses much and burns glycogen and protein alone" },
  ),
  sources: ["andrewsPough", "stubblefield", "costanzo", "chappellEllis", "energyOfFuels"],
  cautions: ["waterLoss", "quietAnimal", "noVet"],
  examples: [
    { given: [300, 6, 30], gives: [[0.000705, 0.001991, 0.004732]], within: 1e-6 },
    { given: [300, 8, 84], gives: [[0.002505, 0.007079, 0.016822]], within: 1e-6 },
  ],
  calculate({ mass, temperature, days }) {
    const oxygen = oxygenPerHour(mass, temperature);
    return (["least", "likely", "most"] as const).map(
      (key) => (oxygen[key] * 24 * days * fuelPerMillilitre(EXCHANGE[key])) / mass,
    );
  },
});
