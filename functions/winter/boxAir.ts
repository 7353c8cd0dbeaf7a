import { columns, count, defineFunction, optional, quantity } from "../define";
import { notUsable } from "../problem";
import { figures } from "../shared/figure";
import { ELEVATION } from "../shared/limits";
import { pressureText, standardPressure } from "../shared/standardPressure";
import { EXCHANGE, MEASURED_MASS, MEASURED_TEMPERATURE, oxygenPerHour, oxygenText } from "./shared/oxygenUse";
import { refusedIf } from "../twin";

/** Oxygen in fresh dry air, %. */
const FRESH = 20.9;
/** Carbon dioxide in it, %. */
const FRESH_CARBON_DIOXIDE = 0.04;
/** Density of the animal, g per litre: about that of water. */
const DENSITY = 1000;
const SEA_LEVEL = 1013.25;

/**
 * Hours = oxygen that may be used ÷ oxygen used per hour (as OXYGENUSE has it). Several animals use as many times what
 * one of them uses: not what one animal of their joint mass would, for use goes with mass to the 0.80. The oxygen is
 * (20.9 − floor) % of the air in the box, which is counted as dry gas at 0 °C and 1013.25 hPa, as oxygen use is: litres
 * less the animals, times 273.15/(273.15 + T), times the standard pressure at the elevation ÷ 1013.25. Left out: water
 * vapour, which makes the hours too long by 1 % at 5 °C and 3 % at 25 °C, and the shrinking of the air as less carbon
 * dioxide is given off than oxygen taken up, which makes them 4 % too short at 19 %. Weather moves the pressure by 3 %.
 */
export const boxAir = defineFunction({
  name: "BOXAIR",
  summary:
    "Hours until the oxygen in a tightly shut box falls to a floor, soonest first, and what the air is like then.",
  parameters: {
    mass: quantity("gram", "Mass of one animal; the limits are ours", MEASURED_MASS),
    temperature: quantity("celsius", "Temperature in the box; the limits are ours", MEASURED_TEMPERATURE),
    litres: quantity("litre", "Inside of the box, less water bowl and bedding", [0.05, 5000]),
    elevation: optional(quantity("metre", "Elevation of the house", ELEVATION), "0 m"),
    floor: optional(
      quantity("percent", "Oxygen at which the air must be changed; practice, no source", [18, 20.8]),
      "19 %, practice",
    ),
    count: optional(count("none", "How many such animals share the box", [1, 500]), "1"),
  },
  result: columns(
    { name: "Soonest", unit: "hour", about: "If each uses as much as may be" },
    { name: "Likely", unit: "hour", about: "The likely figure of quiet animals" },
    { name: "Latest", unit: "hour", about: "If each uses as little as may be" },
    { name: "CO2 least", unit: "percent", about: "Carbon dioxide when the floor is reached, burning fat alone" },
    { name: "CO2 likely", unit: "percent", about: "Carbon dioxide when the floor is reached, the likely figure" },
    { name: "CO2 most", unit: "percent", about: "Carbon dioxide when the floor is reached, burning glycogen alone" },
    {
      name: "As at sea level",
      unit: "percent",
      about: "Oxygen at sea level that presses no more than the floor does here",
    },
  ),
  sources: [
    "andrewsPough",
    "stubblefield",
    "costanzo",
    "mccueLillywhite",
    "chappellEllis",
    "oda",
    "standardAtmosphere",
    "practice",
  ],
  cautions: ["openTheBox", "boxFloor", "quietAnimal", "noVet"],
  examples: [
    { given: [300, 5, 5.3], gives: [[60.97362, 91.46044, 182.92087, 1.37, 1.56, 1.94, 19]], within: 1e-5 },
    {
      given: [8, 5, 2, 2000, 19, 10],
      gives: [[33.36742, 50.05113, 100.10226, 1.37, 1.56, 1.94, 14.90658]],
      within: 1e-5,
    },
  ],
  calculate({ mass, temperature, litres, elevation = 0, floor = 19, count: animals = 1 }) {
    const bodies = (animals * mass) / DENSITY;
    if (bodies >= litres) {
      const [box, filled] = figures([litres, bodies], "litre");
      const fill = animals === 1 ? "the animal fills" : "the animals fill";
      return notUsable(`litres holds ${box} and ${fill} ${filled}: give the inside of the box`);
    }
    const pressure = standardPressure(elevation) / SEA_LEVEL;
    const air = (litres - bodies) * 1000 * (273.15 / (273.15 + temperature)) * pressure;
    const oxygen = (air * (FRESH - floor)) / 100;
    const { least, likely, most } = oxygenPerHour(mass, temperature);
    const hours = [most, likely, least].map((perHour) => oxygen / (animals * perHour));
    const carbonDioxide = [EXCHANGE.least, EXCHANGE.likely, EXCHANGE.most].map(
      (exchange) => FRESH_CARBON_DIOXIDE + exchange * (FRESH - floor),
    );
    return [...hours, ...carbonDioxide, floor * pressure];
  },
  twin: ({ mass, temperature, litres, elevation, floor, count: animals }) =>
    boxAirText({ mass, temperature, litres, elevation: elevation("0"), floor: floor("19"), animals: animals("1") }),
});

type Written = Record<"mass" | "temperature" | "litres" | "elevation" | "floor" | "animals", string>;

/** The seven figures in formulas. */
export const boxAirText = ({ mass, temperature, litres, elevation, floor, animals }: Written): readonly string[] => {
  const pressure = `(${pressureText(elevation)}/${SEA_LEVEL})`;
  const bodies = `${animals}*${mass}/${DENSITY}`;
  const air = `(${litres}-${bodies})*1000*273.15/(273.15+${temperature})*${pressure}`;
  const used = `(${FRESH}-${floor})`;
  const [least, likely, most] = oxygenText(mass, temperature);
  return [
    ...[most, likely, least].map((perHour) => `${air}*${used}/100/(${animals}*${perHour})`),
    ...[EXCHANGE.least, EXCHANGE.likely, EXCHANGE.most].map((share) => `${FRESH_CARBON_DIOXIDE}+${share}*${used}`),
    `${floor}*${pressure}`,
  ].map((answer) => refusedIf(`${bodies}>=${litres}`, answer));
};
