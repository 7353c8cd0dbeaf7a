import { isoOf, LAST_DAY } from "../dates";
import { count, date, defineFunction, optional, quantity, table, unitsParameter } from "../define";
import { notUsable } from "../problem";
import { GUT_SLOW, SETTLE_DAYS } from "../rules/limits";
import { TEMPERATURE } from "../shared/limits";
import { between } from "../shared/plan";
import { swapped } from "../shared/swapped";

/** K a day: as fast as practice warms. From 8 to 24 °C it takes 32 days. */
const PACE = 0.5;
/** K. The thermostat is turned by no more than this at a time, unless it is turned daily. */
const STEP = 1;

const FIRST = "Call your reptile vet first, who may want it warmed faster. No food. Fresh water, weigh today.";
const FASTER = "Faster than practice: only if your vet says so.";
const RISING = "No food. Fresh water. Weigh once a week.";
const AWAKE = "No food yet. Light by day, a shallow, lukewarm soak while watched, fresh water.";
const WARM = "Warm again, nights too. No food yet: let it drink, and see how it moves.";
const MEAL =
  "First meal only if it moves well and has drunk: half the usual, one small item. Otherwise ask your vet again.";

/** 16 K at 0.1 K a day are 160 days, whatever is lost in their conversion. */
const exact = (value: number): number => Number(value.toFixed(9));

/**
 * A row for each step of at most one degree, or for each day where a degree takes less; the last step is what is left. The
 * day of the first meal comes `settle` days after the last step.
 */
export const endEarly = defineFunction({
  name: "ENDEARLY",
  summary: "A winter that has to end now: dates, set-points and words, back to warm no faster than a ramp.",
  parameters: {
    from: date("Day on which warming begins"),
    temperature: quantity("celsius", "Temperature of the animal on that day", TEMPERATURE),
    warm: quantity("celsius", "Normal set-point, to be reached", TEMPERATURE),
    kelvinPerDay: optional(
      quantity("kelvin", "Rise per day; more than practice only if your vet says so", [0.05, 5]),
      "0.5 K, practice",
    ),
    settle: optional(count("day", "Days of normal temperature before food", [0, 366]), "7"),
    units: unitsParameter,
  },
  result: table(
    { name: "Date", unit: "date", about: "Day on which the thermostat is turned" },
    { name: "Set-point", unit: "celsius", about: "Set-point from that day on" },
    { name: "Words", unit: "text", about: "What to do, and what not to do" },
  ),
  sources: ["practice"],
  cautions: ["noFoodInTheCold", "noVet"],
  examples: [
    {
      given: ["2027-01-11", 20, 23],
      gives: [
        ["2027-01-11", 20, FIRST],
        ["2027-01-13", 21, AWAKE],
        ["2027-01-15", 22, AWAKE],
        ["2027-01-17", 23, WARM],
        ["2027-01-24", 23, MEAL],
      ],
      within: 1e-9,
    },
  ],
  calculate({ from, temperature, warm, kelvinPerDay = PACE, settle = SETTLE_DAYS, units }) {
    const fault = swapped(["temperature", temperature], ["warm", warm], "celsius", units);
    if (fault) return fault;
    const step = Math.max(1, Math.floor(exact(STEP / kelvinPerDay)));
    const days = Math.ceil(exact((warm - temperature) / kelvinPerDay));
    const first = exact(kelvinPerDay) > PACE ? `${FIRST} ${FASTER}` : FIRST;
    if (from + days + settle > LAST_DAY) {
      return notUsable(`from holds ${isoOf(from)}: give an earlier day, so that it ends by ${isoOf(LAST_DAY)}`);
    }
    const turns = Math.ceil(days / step);
    return [
      ...Array.from({ length: turns + 1 }, (_, turn) => {
        const passed = Math.min(turn * step, days);
        const setPoint = days === 0 ? warm : between(temperature, warm, passed / days);
        const words = turn === 0 ? first : turn === turns ? WARM : setPoint < GUT_SLOW ? RISING : AWAKE;
        return [from + passed, setPoint, words] as const;
      }),
      [from + days + settle, warm, MEAL],
    ];
  },
});
