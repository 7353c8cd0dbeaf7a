import { columns, defineFunction, optional, quantity } from "../define";
import { notUsable } from "../problem";
import { figures } from "../shared/figure";
import { ELEVATION } from "../shared/limits";
import { standardPressure } from "../shared/standardPressure";
import { MEASURED_MASS, MEASURED_TEMPERATURE, oxygenPerHour } from "./shared/oxygenUse";

/** Oxygen in fresh dry air, %. */
const FRESH = 20.9;
/** Density of the animal, g per litre: about that of water. */
const DENSITY = 1000;

/**
 * Hours = oxygen that may be used ÷ oxygen used per hour (as OXYGENUSE has it). The oxygen is (20.9 − floor) % of the air
 * in the box, which is counted as dry gas at 0 °C and 1013.25 hPa, as oxygen use is: litres less the animal, times
 * 273.15/(273.15 + T), times the standard pressure at the elevation ÷ 1013.25. Left out: water vapour, which makes the
 * hours too long by 1 % at 5 °C and 3 % at 25 °C, and the shrinking of the air as less carbon dioxide is given off than
 * oxygen taken up, which makes them 4 % too short at 19 %. Weather moves the pressure by 3 %.
 */
export const boxAir = defineFunction({
  name: "BOXAIR",
  summary: "Hours until the oxygen in a tightly shut box falls to a floor: soonest, likely and latest.",
  parameters: {
    mass: quantity("gram", "Mass of the animal, or of all in the box; the limits are ours", MEASURED_MASS),
    temperature: quantity("celsius", "Temperature in the box; the limits are ours", MEASURED_TEMPERATURE),
    litres: quantity("litre", "Inside of the box, less water bowl and bedding", [0.05, 5000]),
    elevation: optional(quantity("metre", "Elevation of the house", ELEVATION), "0 m"),
    floor: optional(quantity("percent", "Oxygen at which the air must be changed", [15, 20.8]), "19 %"),
  },
  result: columns(
    { name: "Soonest", unit: "hour", about: "If it uses as much as may be" },
    { name: "Likely", unit: "hour", about: "The likely figure" },
    { name: "Latest", unit: "hour", about: "If it uses as little as may be" },
  ),
  sources: ["andrewsPough", "costanzo", "stubblefield", "restingFactor", "standardAtmosphere"],
  cautions: ["openTheBox", "stretchedBelowTen", "noVet"],
  examples: [
    { given: [300, 5, 5.3], gives: [[48.32873, 96.65746, 120.82183]], within: 1e-5 },
    { given: [300, 5, 5.3, 2000, 19], gives: [[37.91663, 75.83327, 94.79158]], within: 1e-5 },
  ],
  calculate({ mass, temperature, litres, elevation = 0, floor = 19 }) {
    const animal = mass / DENSITY;
    if (animal >= litres) {
      const [box, filled] = figures([litres, animal], "litre");
      return notUsable(`litres holds ${box} and the animal fills ${filled}: give the inside of the box`);
    }
    const air = (litres - animal) * 1000 * (273.15 / (273.15 + temperature)) * (standardPressure(elevation) / 1013.25);
    const oxygen = (air * (FRESH - floor)) / 100;
    const { least, likely, most } = oxygenPerHour(mass, temperature);
    return [oxygen / most, oxygen / likely, oxygen / least];
  },
});
