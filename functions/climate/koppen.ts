import { cell, defineFunction, months, optional, quantity } from "../define";
import { notUsable } from "../problem";
import { TEMPERATURE } from "../shared/limits";
import { koppenClass, warmerHalf } from "./shared/koppenClass";
import { MONTHLY_RAIN } from "./shared/rain";

/** Beyond the tropics the sun decides which half of the year is warmer. */
const TROPIC = 23.5;

export const koppen = defineFunction({
  name: "KOPPEN",
  summary: "Köppen-Geiger climate class, such as Cfb, from twelve monthly temperatures and rains.",
  parameters: {
    temperatures: months("celsius", "Monthly mean temperatures, January to December", TEMPERATURE),
    rains: months("millimetre", "Monthly rain, January to December", MONTHLY_RAIN),
    latitude: quantity(
      "degree",
      "Latitude, south negative; says which half is summer where both are equally warm",
      [-90, 90],
      {
        plausibility: false,
      },
    ),
    coldLimit: optional(
      quantity("celsius", "Coldest month that parts C from D: 0, or -3 as in older maps", [-3, 0], {
        plausibility: false,
      }),
      "0",
    ),
  },
  result: cell("text", "Class of two or three letters"),
  sources: ["peel2007"],
  cautions: ["classEdge", "proxy"],
  examples: [
    {
      given: [
        [[-7.4, -7.8, -5.3, -1.9, 0.7, 4.9, 7, 7.4, 4, 1.2, -2.4, -5.8]],
        [[340, 215, 232, 109, 253, 254, 262, 243, 209, 197, 155, 310]],
        47.25,
      ],
      gives: "ET",
      within: 0,
    },
    {
      given: [
        [[12.8, 14, 15.3, 16.8, 16.9, 17, 16.8, 17, 16.7, 15.7, 13.9, 13.9]],
        [[5, 12, 15, 45, 145, 221, 139, 196, 211, 104, 26, 15]],
        16.7,
      ],
      gives: "Cwb",
      within: 0,
    },
  ],
  calculate({ temperatures, rains, latitude, coldLimit = 0 }) {
    const half = warmerHalf(temperatures);
    const hemisphere = latitude < 0 ? "october" : "april";
    if (half !== undefined && half !== hemisphere && Math.abs(latitude) > TROPIC) {
      const wrong =
        half === "october" ? "October to March are the warmer half" : "April to September are the warmer half";
      return notUsable(
        `latitude holds ${latitude}, but ${wrong}: south is negative, and the months run January to December`,
      );
    }
    return koppenClass(temperatures, rains, half ?? hemisphere, coldLimit);
  },
});
