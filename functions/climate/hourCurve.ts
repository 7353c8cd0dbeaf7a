import { column, defineFunction, optional, quantity, table } from "../define";
import { dailyExtremes, lowAboveHigh } from "./shared/dailyExtremes";
import { hourCurve as curve } from "./shared/hourCurve";

export const hourCurve = defineFunction({
  name: "HOURCURVE",
  summary: "Temperature by the hour for a thermostat, from the day's high and low and the hours of daylight.",
  parameters: {
    ...dailyExtremes,
    dayLength: quantity("hour", "Sunrise to sunset, as DAYLENGTH answers it", [2, 22]),
    hours: optional(
      column(
        quantity(
          "hour",
          "Hours wanted; 0 is solar midnight, and sunrise lies as far before 12 as sunset after it",
          [0, 24],
        ),
        {
          blank: "keep",
        },
      ),
      "0 to 23, written beside the temperatures",
    ),
  },
  result: table(
    { name: "hour", unit: "hour", about: "0 to 23; left out where hours are given" },
    { name: "temperature", unit: "celsius", about: "Temperature at that hour" },
  ),
  sources: ["partonLogan1981", "hourScore"],
  cautions: ["modelHours"],
  examples: [{ given: [22, 10, 14, [[6], [12], [18]]], gives: [[12.471], [21.465], [18.664]], within: 0.001 }],
  calculate({ high, low, dayLength, hours }) {
    const problem = lowAboveHigh(high, low, "metric");
    if (problem) return problem;
    const temperature = curve(high, low, dayLength);
    if (hours) return hours.map((hour) => [hour === undefined ? "" : temperature(hour)]);
    return Array.from({ length: 24 }, (_, hour) => [hour, temperature(hour)]);
  },
});
