import { isoOf } from "../dates";
import { choice, column, date, defineFunction, optional, quantity, table, unitsParameter } from "../define";
import { Problem, notAvailable, notUsable } from "../problem";
import { NOTHING, orNothing, sayings, type Measured } from "../rules/rule";
import { winterLogRules, type Measure } from "../rules/winterLog";
import { figure } from "../shared/figure";
import { BODY_MASS, ELEVATION, TEMPERATURE } from "../shared/limits";
import { weighingsOf } from "../shared/weighings";
import { boxAir } from "./boxAir";
import { metabolicLoss } from "./metabolicLoss";
import { MEASURED_MASS, MEASURED_TEMPERATURE } from "./shared/oxygenUse";

/** Days for which a pace of loss is told, and for which it is looked ahead where no end is given. */
const PERIOD = 30;
/** Over fewer days a gram of the scales is a pace of its own. */
const PACE_DAYS = 21;

/** A row of the log. */
interface Row {
  readonly day: number;
  readonly temperature: number | undefined;
  readonly mass: number | undefined;
  readonly humidity: number | undefined;
  readonly opened: boolean;
}

interface Given {
  readonly dates: readonly (number | undefined)[];
  readonly temperatures?: readonly (number | undefined)[] | undefined;
  readonly masses?: readonly (number | undefined)[] | undefined;
  readonly start?: number | undefined;
  readonly tooCold?: number | undefined;
  readonly tooWarm?: number | undefined;
  readonly agreedLoss?: number | undefined;
  readonly humidity?: readonly (number | undefined)[] | undefined;
  readonly opened?: readonly ("yes" | "no" | undefined)[] | undefined;
  readonly litres?: number | "vented" | undefined;
  readonly elevation?: number | undefined;
  readonly end?: number | undefined;
}

/** The rows that have a date, oldest first, or the problem with them. Whoever weighs the animal has opened the box. */
const rowsOf = ({ dates, temperatures, masses, humidity, opened }: Given): readonly Row[] | Problem => {
  for (const [name, list] of Object.entries({ temperatures, masses, humidity, opened })) {
    if (list && list.length !== dates.length) {
      return notUsable(`dates holds ${dates.length} cells and ${name} ${list.length}: give as many of each`);
    }
  }
  const rows: Row[] = [];
  for (const [i, day] of dates.entries()) {
    const row = {
      temperature: temperatures?.[i],
      mass: masses?.[i],
      humidity: humidity?.[i],
      opened: opened?.[i] === "yes" || masses?.[i] !== undefined,
    };
    if (day !== undefined) rows.push({ day, ...row });
    else if (row.opened || row.temperature !== undefined || row.humidity !== undefined) {
      return notAvailable(`row ${i + 1} of dates is blank`);
    }
  }
  return rows.length > 0 ? rows.sort((a, b) => a.day - b.day) : notAvailable("dates holds no day");
};

interface Seen {
  readonly value: number;
  readonly on: number;
}

/** The lowest or the highest figure of the log and the last day on which it was read. */
const extreme = (which: "lowest" | "highest", rows: readonly Row[], key: "temperature" | "humidity"): Partial<Seen> => {
  let found: Seen | undefined;
  for (const { day, [key]: value } of rows) {
    if (value === undefined) continue;
    if (!found || (which === "lowest" ? value <= found.value : value >= found.value)) found = { value, on: day };
  }
  return found ?? {};
};

/** The longest stretch between two days of a list. */
const longest = (days: readonly number[]): Seen =>
  days
    .slice(1)
    .reduce<Seen>(
      (found, day, i) =>
        day - (days[i] as number) > found.value ? { value: day - (days[i] as number), on: day } : found,
      { value: 0, on: days[0] as number },
    );

const percent = (share: number): number => Number((share * 100).toFixed(6));
const told = (value: number): string => figure(value, "percent");
const within = (value: number, [least, most]: readonly [number, number]): number =>
  Math.min(Math.max(value, least), most);

/** The longest time without an opening, in times that the air lasts at the soonest at the warmest of those days. */
const shut = (rows: readonly Row[], given: Given, mass: number | undefined): Measured | Problem => {
  const { litres, elevation } = given;
  if (litres === "vented") return { value: 0, unit: "none" };
  const warmest = extreme("highest", rows, "temperature").value;
  if (litres === undefined || mass === undefined || warmest === undefined) return { value: undefined, unit: "none" };
  const [first, last] = [rows[0] as Row, rows.at(-1) as Row];
  const days = [first.day, ...rows.filter(({ opened }) => opened).map(({ day }) => day), last.day];
  let worst = { value: 0, told: "", on: last.day };
  for (const [i, day] of days.entries()) {
    const from = days[i - 1] ?? day;
    if (day === from) continue;
    const between = rows.filter((row) => row.day >= from && row.day <= day);
    const air = boxAir.calculate({
      mass: within(mass, MEASURED_MASS),
      temperature: within(extreme("highest", between, "temperature").value ?? warmest, MEASURED_TEMPERATURE),
      litres,
      elevation,
      floor: undefined,
      count: undefined,
    });
    if (air instanceof Problem) return air;
    const [soonest] = air as readonly [number];
    const hours = (day - from) * 24;
    const lasts = figure(Number(soonest.toPrecision(2)), "hour");
    const until = `from ${isoOf(from)} to ${isoOf(day)}, ${hours} h, where the air may last only ${lasts}`;
    const times = Number((hours / soonest).toFixed(6));
    if (times > worst.value) worst = { value: times, told: until, on: day };
  }
  return { ...worst, unit: "none" };
};

const measure = (given: Given, rows: readonly Row[]): Record<Measure, Measured> | Problem => {
  const { tooCold, tooWarm, agreedLoss } = given;
  const weighed = rows.flatMap(({ day, mass }) => (mass === undefined ? [] : [{ day, mass }]));
  const last = rows.at(-1) as Row;
  const start = given.start ?? weighed[0]?.mass;
  const air = shut(rows, given, start);
  if (air instanceof Problem) return air;

  const [coldest, warmest] = [extreme("lowest", rows, "temperature"), extreme("highest", rows, "temperature")];
  const own = agreedLoss === undefined ? undefined : percent(agreedLoss);
  const losses = weighed.map(({ day, mass }) => ({ on: day, value: percent(1 - mass / (start as number)) }));
  const lost = losses.reduce<Seen | undefined>((most, one) => (most && most.value > one.value ? most : one), undefined);

  // The trend, from three weighings of several days on.
  const trend = weighed.length >= 3 ? weighingsOf(given.dates, given.masses ?? []) : undefined;
  const line = trend && !(trend instanceof Problem) ? trend : undefined;
  const end = Math.max(given.end ?? last.day + PERIOD, last.day);
  let heading: number | undefined;
  let pace: Measured = { value: undefined, unit: "percent" };
  if (line && lost && start !== undefined) {
    const first = line.dates[0] as number;
    const atEnd = percent(1 - Math.max(0, line.line.intercept + line.line.slope * (end - first)) / start);
    // A loss past the agreed one is told as such; so no forecast is told that is below what is lost.
    if (own === undefined || lost.value <= own) heading = atEnd;
    if ((line.dates.at(-1) as number) - first >= PACE_DAYS) {
      const value = percent((-line.line.slope * PERIOD) / start);
      const read = rows.flatMap(({ temperature }) => (temperature === undefined ? [] : [temperature]));
      const mean = read.reduce((sum, one) => sum + one, 0) / read.length;
      const burnt =
        read.length === 0
          ? undefined
          : (
              metabolicLoss.calculate({
                mass: within(start, MEASURED_MASS),
                temperature: within(mean, MEASURED_TEMPERATURE),
                days: PERIOD,
                units: undefined,
              }) as readonly number[]
            )[2];
      const most = burnt === undefined ? undefined : percent(burnt);
      const cause =
        most === undefined
          ? ""
          : `, of which quiet metabolism explains ${told(most)} at the most${value > 2 * most ? ": mostly water, look at humidity and drinking water first" : ""}`;
      pace = { value, unit: "percent", told: `${told(value)} in ${PERIOD} days${cause}`, on: last.day };
    }
  }

  // From the mass into the cold on: one that was typed too low would hide every loss.
  let lowest = start ?? NaN;
  let gain: Seen = { value: 0, on: last.day };
  for (const { day, mass } of weighed) {
    const value = percent((mass - lowest) / (start as number));
    if (value > gain.value) gain = { value, on: day };
    lowest = Math.min(lowest, mass);
  }

  const hasWeighing = weighed.length > 0;
  const unweighed = longest([(rows[0] as Row).day, ...weighed.map(({ day }) => day), last.day]);
  return {
    coldest: { value: coldest.value, unit: "celsius", on: coldest.on },
    // Where nothing was read the blank is told once.
    tooCold: { value: coldest.value ?? Infinity, unit: "celsius", own: tooCold, on: coldest.on },
    tooWarm: { value: warmest.value ?? -Infinity, unit: "celsius", own: tooWarm, on: warmest.on },
    lost: { value: lost?.value, unit: "percent", own, on: lost?.on },
    unagreed: { value: own === undefined ? lost?.value : undefined, unit: "percent", on: lost?.on },
    agreed: { value: own, unit: "percent" },
    heading: {
      value: heading,
      unit: "percent",
      own,
      on: end,
    },
    pace,
    gain: { ...gain, unit: "percent" },
    unweighed: { value: hasWeighing ? unweighed.value : undefined, unit: "day", on: unweighed.on },
    weighings: { value: hasWeighing ? weighed.length : undefined, unit: "none", on: last.day },
    shut: air,
    dry: { ...extreme("lowest", rows, "humidity"), unit: "percent" } as Measured,
    wet: { ...extreme("highest", rows, "humidity"), unit: "percent" } as Measured,
  };
};

/**
 * The rules stand in rules/winterLog.ts, one line each. A line a sign: the day that it speaks of, its level and the words.
 * Each tells the worst of the whole log. A day of weighing is a day of opening, and so is the first of the log. Without
 * `start` the first weighing stands for the mass into the cold; without `end` the loss is looked ahead for 30 days from the
 * last row.
 */
export const winterSigns = defineFunction({
  name: "WINTERSIGNS",
  summary: "What a winter log says, gravest first: the day, the level, stop, care or note, and the words.",
  parameters: {
    dates: column(date("Days of the rows, in any order"), { blank: "keep" }),
    temperatures: optional(
      column(quantity("celsius", "Box temperature on each; a blank is left out", TEMPERATURE), { blank: "keep" }),
      "not judged",
    ),
    masses: optional(
      column(quantity("gram", "Mass on each, where it was weighed", BODY_MASS), { blank: "keep" }),
      "not judged",
    ),
    start: optional(quantity("gram", "Mass into the cold", BODY_MASS), "the first weighing"),
    tooCold: optional(quantity("celsius", "Your own limit: too cold below", TEMPERATURE), "not judged"),
    tooWarm: optional(quantity("celsius", "Your own limit: too warm above", TEMPERATURE), "not judged"),
    agreedLoss: optional(
      quantity("share", "Loss of mass agreed with your vet", [0.001, 0.5], { hint: "5 % is 0.05" }),
      "not judged, and said so",
    ),
    humidity: optional(
      column(quantity("percent", "Humidity in the box on each", [0, 100], { plausibility: false }), { blank: "keep" }),
      "not judged",
    ),
    opened: optional(
      column(choice('"yes" on days on which the box was opened', ["yes", "no"]), { blank: "keep" }),
      "days of weighing",
    ),
    litres: optional(
      quantity("litre", 'Inside of a shut box, or "vented": its air is not judged', [0.05, 5000], {
        words: ["vented"],
      }),
      "not judged",
    ),
    elevation: optional(quantity("metre", "Elevation of the house", ELEVATION), "0 m"),
    units: unitsParameter,
    end: optional(date("Day to look ahead to, such as the day warming starts"), "30 days after the last row"),
  },
  result: table(
    { name: "Date", unit: "date", about: "The day of which it speaks; blank for what is missing" },
    { name: "Level", unit: "text", about: "stop, care or note" },
    { name: "Words", unit: "text", about: "The sign, and whether its limit is your own or practice" },
  ),
  sources: ["practice", "ownLimit", "theilSen", "andrewsPough", "stubblefield"],
  cautions: ["noLossLimit", "openTheBox", "quietAnimal", "noVet"],
  examples: [
    {
      given: [
        [["2026-11-16"], ["2026-11-30"], ["2026-12-14"], ["2026-12-28"]],
        [[8.1], [8.2], [7.6], [8.3]],
        [[306], [305], [304], [303]],
        306,
        4,
        10,
        0.05,
        [[80], [82], [78], [80]],
        [["yes"], ["yes"], ["yes"], ["yes"]],
        60,
      ],
      gives: [["", "note", NOTHING]],
      within: 0,
    },
    {
      given: [
        [["2026-11-16"], ["2026-11-30"], ["2026-12-14"], ["2026-12-28"]],
        [[8.1], [8.2], [3.5], [8.3]],
        [[306], [305], [304], [303]],
        306,
        4,
        10,
        null,
        [[80], [82], [78], [80]],
        [["yes"], ["yes"], ["yes"], ["yes"]],
        60,
      ],
      gives: [
        ["2026-12-14", "stop", "Box at 3.5 °C: too cold below 4 °C (your own limit)."],
        [
          "",
          "care",
          "No loss agreed with your vet, or no weighing: no loss is judged, and a loss kills silently. Agree a figure.",
        ],
      ],
      within: 0,
    },
  ],
  calculate({ units, ...given }) {
    const rows = rowsOf(given);
    if (rows instanceof Problem) return rows;
    const measured = measure(given, rows);
    if (measured instanceof Problem) return measured;
    return orNothing(sayings(winterLogRules, measured, units)).map(({ on, level, words }) => [on ?? "", level, words]);
  },
});
