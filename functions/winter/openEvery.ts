import { cell, count, defineFunction, optional, quantity, unitsParameter } from "../define";
import { Problem } from "../problem";
import { ELEVATION } from "../shared/limits";
import { boxAir, boxAirText } from "./boxAir";
import { MEASURED_MASS, MEASURED_TEMPERATURE } from "./shared/oxygenUse";

/** A shut box is opened once a week at the least, however much air it holds: practice. */
const MOST_DAYS = 7;
/** The half of the time that the air lasts at the soonest. */
const MARGIN = 2;

/** Half of BOXAIR's soonest hours, in days, and at most seven. Below a day the figure stays: 0.25 is every six hours. */
export const openEvery = defineFunction({
  name: "OPENEVERY",
  summary: "Days between two openings of a shut box, at most seven. Below one day the box needs vents.",
  parameters: {
    mass: quantity("gram", "Mass of one animal; the limits are ours", MEASURED_MASS),
    temperature: quantity(
      "celsius",
      "Warmest temperature in the box until then; the limits are ours",
      MEASURED_TEMPERATURE,
    ),
    litres: quantity("litre", "Inside of the box, less water bowl and bedding", [0.05, 5000]),
    elevation: optional(quantity("metre", "Elevation of the house", ELEVATION), "0 m"),
    units: unitsParameter,
    count: optional(count("none", "How many such animals share the box", [1, 500]), "1"),
  },
  result: cell("day", "Days from one opening to the next; 0.25 is every six hours"),
  sources: ["andrewsPough", "stubblefield", "standardAtmosphere", "practice"],
  cautions: ["openTheBox", "boxFloor", "quietAnimal", "noVet"],
  examples: [
    { given: [300, 5, 5.3], gives: 1.270284, within: 1e-6 },
    { given: [30, 5, 20], gives: 7, within: 0 },
  ],
  calculate({ mass, temperature, litres, elevation, count: animals }) {
    const air = boxAir.calculate({ mass, temperature, litres, elevation, floor: undefined, count: animals });
    if (air instanceof Problem) return air;
    const [soonest] = air as readonly [number];
    return Math.min(soonest / 24 / MARGIN, MOST_DAYS);
  },
  twin: ({ elevation, count: animals, ...given }) => {
    const [soonest] = boxAirText({ ...given, elevation: elevation("0"), floor: "19", animals: animals("1") });
    return `MIN(${soonest}/24/${MARGIN},${MOST_DAYS})`;
  },
});
