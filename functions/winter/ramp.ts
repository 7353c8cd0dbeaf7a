import { LAST_DAY, isoOf } from "../dates";
import { count, date, defineFunction, optional, quantity, table, unitsParameter } from "../define";
import { notUsable } from "../problem";
import { figure } from "../shared/figure";
import { TEMPERATURE } from "../shared/limits";
import { between } from "../shared/plan";
import { between as betweenText } from "../twin";

/** Down or up: the first row is exactly `from`, the last exactly `to`, also where the last step is a short one. */
export const ramp = defineFunction({
  name: "RAMP",
  summary: "Dates and set-points of a slow, even change of temperature, first and last day included.",
  parameters: {
    start: date("First day, still at the old temperature"),
    from: quantity("celsius", "Temperature on the first day", TEMPERATURE),
    to: quantity("celsius", "Temperature on the last day", TEMPERATURE),
    days: count("day", "Days from the first day to the last", [1, 1000]),
    step: optional(count("day", "Days between two rows", [1, 1000]), "7"),
    units: unitsParameter,
  },
  result: table(
    { name: "Date", unit: "date", about: "Day on which the thermostat is turned" },
    { name: "Set-point", unit: "celsius", about: "Set-point from that day on" },
  ),
  sources: ["definition"],
  cautions: ["coldKills", "noVet"],
  examples: [
    {
      given: ["2026-10-05", 24, 8, 42],
      gives: [
        ["2026-10-05", 24],
        ["2026-10-12", 21.3333],
        ["2026-10-19", 18.6667],
        ["2026-10-26", 16],
        ["2026-11-02", 13.3333],
        ["2026-11-09", 10.6667],
        ["2026-11-16", 8],
      ],
      within: 1e-4,
    },
  ],
  calculate({ start, from, to, days, step = 7 }) {
    if (start + days > LAST_DAY)
      return notUsable(`days holds ${figure(days, "day")}: give a last day up to ${isoOf(LAST_DAY)}`);
    const rows = Math.ceil(days / step) + 1;
    return Array.from({ length: rows }, (_, row) => {
      const passed = Math.min(row * step, days);
      return [start + passed, between(from, to, passed / days)];
    });
  },
  twin: ({ start, from, to, days, step: given }) => {
    const step = given("7");
    return {
      count: `(1-INT(-${days}/${step}))`,
      row: (i) => {
        const passed = i === 0 ? "0" : `MIN(${i}*${step},${days})`;
        return [`${start}+${passed}`, betweenText(from, to, `${passed}/${days}`)];
      },
    };
  },
});
